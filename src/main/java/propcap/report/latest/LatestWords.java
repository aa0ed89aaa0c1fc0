package propcap.report.latest;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import propcap.farm.Season;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;
import propcap.report.latest.LatestRow.Standing;
import propcap.study.latest.Latest;
import propcap.study.latest.Latest.Course;
import propcap.study.latest.Latest.Day;
import propcap.study.latest.Latest.LastDay;

/** Until when to sow, in words. */
final class LatestWords {
  private final LatestRow row;
  private final Season season;

  private LatestWords(LatestRow row) {
    this.row = row;
    this.season = row.season();
  }

  /** What is told of one sowing, verdict first. */
  static List<String> of(LatestRow row) {
    LatestWords words = new LatestWords(row);
    List<String> sentences = new ArrayList<>();
    Optional<LastDay> last = row.inHouse();
    sentences.add(last.map(words::verdict).orElseGet(words::never));
    last.flatMap(words::notBetween).ifPresent(sentences::add);
    words.late().ifPresent(sentences::add);
    words.planned().ifPresent(sentences::add);
    return sentences;
  }

  private String day(LocalDate date) {
    return Dates.day(date, season);
  }

  private String what() {
    return "its %s plants on time in %s"
        .formatted(Words.count(row.sowing().plantsNeeded()), springs(row.answer().goal()));
  }

  /** Such as {@code 9 springs of 10}, or {@code 95 % of springs} where tenths do not say it. */
  static String springs(double chance) {
    double tenths = 10 * chance;
    return Math.abs(tenths - Math.rint(tenths)) < 1e-9
        ? Words.springs(chance)
        : Words.given(chance) + " of springs";
  }

  private String verdict(LastDay last) {
    return row.sowing().id()
        + ": sow by "
        + day(last.day().sow())
        + " to have "
        + what()
        + error(last)
        + alone(last)
        + ".";
  }

  /** What day it may be in truth. */
  private String error(LastDay last) {
    if (last.surely() == null) {
      return " (with 95 % confidence no later than "
          + day(last.perhaps())
          + ", and perhaps on no day)";
    }
    return last.surely().equals(last.perhaps())
        ? ""
        : " (with 95 % confidence " + Dates.range(last.surely(), last.perhaps(), season) + ")";
  }

  /** The same, short. */
  static String between(LastDay last, Season season) {
    LocalDate surely = last.surely();
    if (surely == null) {
      return "at most " + Dates.shortDay(last.perhaps(), season);
    }
    return surely.equals(last.perhaps()) ? "" : Dates.range(surely, last.perhaps(), season);
  }

  private String alone(LastDay last) {
    Optional<LocalDate> alone = row.alone().map(l -> l.day().sow());
    if (alone.isEmpty()) {
      return "; alone in the house it would not, on any day";
    }
    return alone.get().equals(last.day().sow())
        ? "; alone in the house it is the same day"
        : "; alone in the house, by " + day(alone.get());
  }

  private String never() {
    Optional<Day> best = row.answer().inHouse().best();
    if (best.isEmpty()) {
      return "%s: no working day is left before its bed's last, %s."
          .formatted(row.sowing().id(), day(row.sowing().bedBy()));
    }
    boolean isNear =
        row.answer().inHouse().days().stream().anyMatch(d -> d.high() >= row.answer().goal());
    return "%s: on no working day that is left does it have %s; the best is %s, with %s%s; %s."
        .formatted(
            row.sowing().id(),
            what(),
            day(best.get().sow()),
            chance(best.get()),
            isNear ? ", which the springs do not tell from it" : "",
            aloneAtBest());
  }

  private String aloneAtBest() {
    Course alone = row.answer().alone();
    return row.alone()
        .map(l -> "alone in the house it would, sown by " + day(l.day().sow()))
        .orElseGet(
            () ->
                "alone in the house it does not either"
                    + alone.best().map(b -> " (at best " + chance(b) + ")").orElse(""));
  }

  private static String chance(Day day) {
    return Words.chance(day.chance()) + " (" + Words.chances(day.low(), day.high()) + ")";
  }

  /** Days before the last on which it falls short. */
  private Optional<String> notBetween(LastDay last) {
    if (last.holes().isEmpty()) {
      return Optional.empty();
    }
    long before =
        row.answer().inHouse().days().stream().filter(d -> d.sow().isBefore(last.since())).count();
    if (last.holes().size() == before) {
      return Optional.of(
          "Nor too early: on the days tried before " + day(last.since()) + " it falls short.");
    }
    LocalDate first = last.holes().get(0);
    LocalDate end = last.holes().get(last.holes().size() - 1);
    return Optional.of(
        "Not on every day before that: sown "
            + (first.equals(end)
                ? "on " + day(first)
                : "on %s from %s to %s"
                    .formatted(Words.plural(last.holes().size(), "day"), day(first), day(end)))
            + " it falls short.");
  }

  /** Whether the first days tried fall short of a chance that later ones reach. */
  static boolean isTooEarly(Course course, double chance) {
    return course
        .last(chance)
        .filter(l -> l.holes().contains(course.days().get(0).sow()))
        .isPresent();
  }

  private Optional<String> late() {
    return row.half()
        .map(l -> "After " + day(l.day().sow()) + " it is too late for 5 springs of 10.");
  }

  private Optional<String> planned() {
    Integer spare = row.spareDays();
    if (spare == null) {
      return Optional.empty();
    }
    String planned = "The plan's " + day(row.sowing().sow());
    String days = Words.plural(Math.abs(spare), "day");
    return Optional.of(
        switch (row.standing()) {
          case LATE -> planned + " is " + days + " too late.";
          case NEAR -> planned + " is " + days + " later, within the error.";
          case SHORT -> planned + " is in time, and yet it falls short on it.";
          default ->
              spare == 0
                  ? planned + " is that very day."
                  : planned + " leaves " + days + " to spare.";
        });
  }

  /** Of many sowings, how they stand. */
  static List<String> together(List<LatestRow> rows) {
    List<String> sentences = new ArrayList<>();
    List<LatestRow> inTime = standing(rows, Standing.IN_TIME);
    if (rows.stream().anyMatch(LatestRow::isPlanned)) {
      sentences.add(
          "%s of %s are sown by their last day as planned."
              .formatted(
                  inTime.size(),
                  Words.plural(
                      (double) rows.stream().filter(LatestRow::isPlanned).count(), "sowing")));
    }
    add(sentences, "Too late as planned: ", standing(rows, Standing.LATE), LatestWords::byDays);
    add(sentences, "After it, within the error: ", standing(rows, Standing.NEAR), LatestWords::id);
    add(
        sentences,
        "Before it, and yet short of the goal on their day: ",
        standing(rows, Standing.SHORT),
        LatestWords::id);
    add(
        sentences,
        "Not in time often enough on any day that is left: ",
        standing(rows, Standing.NEVER),
        LatestWords::atBest);
    inTime.stream()
        .min(Comparator.comparingInt(LatestWords::spare))
        .ifPresent(
            r ->
                sentences.add(
                    "%s has the least to spare: %s, to %s."
                        .formatted(id(r), Words.plural(spare(r), "day"), sowBy(r))));
    standing(rows, Standing.FILLED_IN).stream()
        .min(Comparator.comparing(r -> r.inHouse().orElseThrow().day().sow()))
        .ifPresent(
            r ->
                sentences.add(
                    "Of those filled in the first last day is %s, of %s."
                        .formatted(sowBy(r), id(r))));
    return sentences;
  }

  /** What was left out, as it is sown. */
  static Optional<String> begun(Latest latest) {
    int begun = latest.begun().size();
    return begun == 0
        ? Optional.empty()
        : Optional.of(
            "Left out, as %s sown already: %s. The question “now” tells whether to sow again."
                .formatted(
                    begun == 1 ? "it is" : "they are",
                    begun == 1 ? latest.begun().get(0) : Words.plural(begun, "sowing")));
  }

  private static List<LatestRow> standing(List<LatestRow> rows, Standing standing) {
    return rows.stream().filter(r -> r.standing() == standing).toList();
  }

  private static void add(
      List<String> sentences, String what, List<LatestRow> of, Function<LatestRow, String> told) {
    if (!of.isEmpty()) {
      sentences.add(what + Words.list(of.stream().map(told).toList()) + ".");
    }
  }

  private static String id(LatestRow row) {
    return row.sowing().id();
  }

  private static int spare(LatestRow row) {
    Integer days = row.spareDays();
    return days == null ? 0 : days;
  }

  private static String sowBy(LatestRow row) {
    return Dates.day(row.inHouse().orElseThrow().day().sow(), row.season());
  }

  private static String byDays(LatestRow row) {
    return id(row) + " (by " + Words.plural(-spare(row), "day") + "; sow by " + sowBy(row) + ")";
  }

  private static String atBest(LatestRow row) {
    return id(row)
        + row.answer()
            .inHouse()
            .best()
            .map(b -> " (at best " + Words.chance(b.chance()) + ")")
            .orElse("");
  }
}
