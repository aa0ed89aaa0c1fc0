package propcap.report.latest;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.report.kit.Dates;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.fill.FirstPlan.Filled;
import propcap.study.latest.Latest;
import propcap.study.latest.Latest.Course;
import propcap.study.latest.Latest.Day;
import propcap.study.latest.Latest.ForSowing;
import propcap.study.latest.Latest.LastDay;

/**
 * A sowing's last days, as a row of the table of them.
 *
 * @param isPlanned whether its day stands in the sowing plan; otherwise it was filled in
 */
record LatestRow(ForSowing answer, Season season, boolean isPlanned) {

  /** How the day on which it is sown stands to its last. */
  enum Standing {
    /** No day will do. */
    NEVER,
    /** Its day was filled in. */
    FILLED_IN,
    /** Beyond doubt after it. */
    LATE,
    /** After it, within the error. */
    NEAR,
    /** Before it, and yet a day that beyond doubt will not do. */
    SHORT,
    IN_TIME
  }

  static List<LatestRow> of(Latest latest, List<Filled> filled) {
    List<String> found =
        filled.stream().filter(Filled::isDateFilled).map(f -> f.sowing().id()).toList();
    return latest.sowings().stream()
        .map(s -> new LatestRow(s, latest.scenario().season(), !found.contains(s.sowing().id())))
        .toList();
  }

  Sowing sowing() {
    return answer.sowing();
  }

  /** In the house as full as it is. */
  Optional<LastDay> inHouse() {
    return answer.inHouse().last(answer.goal());
  }

  Optional<LastDay> alone() {
    return answer.alone().last(answer.goal());
  }

  Optional<LastDay> half() {
    return answer.inHouse().last(Latest.TOO_LATE);
  }

  /**
   * From the plan's day to the last; less than 0 where it is too late; null where there is none.
   */
  @Nullable Integer spareDays() {
    return isPlanned
        ? inHouse()
            .map(last -> season.dayOf(last.day().sow()) - season.dayOf(sowing().sow()))
            .orElse(null)
        : null;
  }

  Standing standing() {
    LocalDate sow = sowing().sow();
    LastDay last = inHouse().orElse(null);
    if (last == null) {
      return Standing.NEVER;
    }
    if (!isPlanned) {
      return Standing.FILLED_IN;
    }
    if (sow.isAfter(last.day().sow())) {
      return sow.isAfter(last.perhaps()) ? Standing.LATE : Standing.NEAR;
    }
    return answer.inHouse().days().stream()
            .anyMatch(d -> d.sow().equals(sow) && d.high() < answer.goal())
        ? Standing.SHORT
        : Standing.IN_TIME;
  }

  private static @Nullable LocalDate sow(Optional<LastDay> last) {
    return last.map(l -> l.day().sow()).orElse(null);
  }

  static final Table<LatestRow> TABLE =
      new Table<LatestRow>(
              "Sowing",
              r -> r.sowing().id(),
              r ->
                  r.sowing().crop()
                      + ", "
                      + Words.plural(r.sowing().trays(), "tray")
                      + " for "
                      + Words.count(r.sowing().plantsNeeded()))
          .csv("sowing", r -> r.sowing().id())
          .csv("crop", r -> r.sowing().crop())
          .csv("trays", r -> r.sowing().trays())
          .csv("plants-needed", r -> r.sowing().plantsNeeded())
          .csv("bed-by", r -> r.sowing().bedBy())
          .csv("goal", r -> r.answer.goal())
          .csv("sow", r -> r.sowing().sow())
          .csv("filled-in", r -> r.isPlanned ? "" : "yes")
          .number("Bed by", "", r -> Dates.shortDay(r.sowing().bedBy(), r.season))
          .number(
              "Sown",
              "",
              r -> Dates.shortDay(r.sowing().sow(), r.season) + (r.isPlanned ? "" : " (filled in)"))
          .csv("latest", r -> sow(r.inHouse()))
          .csv("latest-surely", r -> r.inHouse().map(LastDay::surely).orElse(null))
          .csv("latest-perhaps", r -> r.inHouse().map(LastDay::perhaps).orElse(null))
          .csv("latest-since", r -> r.inHouse().map(LastDay::since).orElse(null))
          .csv("chance", r -> r.inHouse().map(l -> l.day().chance()).orElse(null))
          .csv("chance-low", r -> r.inHouse().map(l -> l.day().low()).orElse(null))
          .csv("chance-high", r -> r.inHouse().map(l -> l.day().high()).orElse(null))
          .csv("latest-alone", r -> sow(r.alone()))
          .csv("half-until", r -> sow(r.half()))
          .csv("best", r -> r.answer.inHouse().best().map(Day::sow).orElse(null))
          .csv("best-chance", r -> r.answer.inHouse().best().map(Day::chance).orElse(null))
          .cell("Latest", "in the house as full as it is", LatestRow::latest)
          .number("Latest", "alone", r -> Dates.shortDay(sow(r.alone()), r.season))
          .number(
              "Too late after", "for 5 springs of 10", r -> Dates.shortDay(sow(r.half()), r.season))
          .cell("To spare", "days", LatestRow::spare)
          .cell("Best day", "its chance", LatestRow::best);

  private Cell latest() {
    return inHouse()
        .map(
            last ->
                Cell.of(
                    Dates.shortDay(last.day().sow(), season), LatestWords.between(last, season)))
        .orElse(Cell.of("none").strongIf(true));
  }

  private Cell spare() {
    Integer days = spareDays();
    return days == null ? Cell.NONE : Cell.of(Words.signed(days)).strongIf(days < 0);
  }

  private Cell best() {
    return answer
        .inHouse()
        .best()
        .map(
            b ->
                Cell.of(
                    Dates.shortDay(b.sow(), season),
                    Words.chance(b.chance()) + " (" + Words.chances(b.low(), b.high()) + ")"))
        .orElse(Cell.NONE);
  }

  /** A day that was tried, in one of the houses. */
  record TriedDay(String sowing, String house, Day day) {
    static List<TriedDay> of(LatestRow row) {
      return Stream.concat(
              of(row, "alone", row.answer.alone()), of(row, "full", row.answer.inHouse()))
          .toList();
    }

    private static Stream<TriedDay> of(LatestRow row, String house, Course course) {
      return course.days().stream().map(d -> new TriedDay(row.sowing().id(), house, d));
    }

    static final Table<TriedDay> TABLE =
        new Table<TriedDay>()
            .csv("sowing", TriedDay::sowing)
            .csv("house", TriedDay::house)
            .csv("sow", t -> t.day.sow())
            .csv("springs", t -> t.day.springs())
            .csv("chance", t -> t.day.chance())
            .csv("low", t -> t.day.low())
            .csv("high", t -> t.day.high());
  }
}
