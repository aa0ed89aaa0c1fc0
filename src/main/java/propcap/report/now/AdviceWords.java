package propcap.report.now;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import propcap.farm.Prices;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;
import propcap.study.now.SeasonNow;
import propcap.study.now.SeasonNow.Advice;
import propcap.study.now.SeasonNow.Chance;
import propcap.study.now.SeasonNow.SowingNow;
import propcap.study.statistics.Difference;

/** What can still be done, in words. */
final class AdviceWords {
  /** Fewer sowings than this, on average, are not told in a sentence. */
  private static final double TOLD = 0.05;

  private final SeasonNow now;
  private final Season season;

  AdviceWords(SeasonNow now) {
    this.now = now;
    season = now.now().scenario().season();
  }

  /** The most useful, what nothing helps, and what is not for it. */
  List<String> told() {
    List<String> told = new ArrayList<>();
    if (!now.advice().isEmpty()) {
      boolean isForOne = first().sowing() != null;
      told.add(
          (now.advice().size() == 1
                  ? ""
                  : isForOne ? "The most useful is for " : "The most useful: ")
              + sentence(first()));
    }
    Stream.of(notHelped(), notBegun(), tooLate()).flatMap(Optional::stream).forEach(told::add);
    return told;
  }

  /** The same for a terminal, with how much more there is on the page. */
  List<String> toldInShort() {
    List<String> told = new ArrayList<>(told());
    int more = now.advice().size() - 1;
    if (more > 0) {
      told.set(
          0,
          told.get(0)
              + (more == 1
                  ? " 1 more piece of advice is on the page."
                  : " " + more + " more pieces of advice are on the page."));
    }
    return told;
  }

  private Advice first() {
    return now.advice().get(0);
  }

  /** For which sowing it is. */
  static String whose(Advice advice) {
    Sowing sowing = advice.sowing();
    return sowing == null ? "several" : sowing.id();
  }

  /** What to do, such as {@code sow 2 trays again on 10 April}. */
  String what(Advice advice) {
    return switch (advice.kind()) {
      case SOW_AGAIN -> "sow " + Words.plural(advice.trays(), "tray") + " again on " + today();
      case BUY_IN -> "buy in " + Words.plural(advice.trays(), "plant") + cost(advice);
      case GIVE_UP ->
          "give up %s that are not needed (%s)"
              .formatted(Words.plural(advice.trays(), "tray"), Words.list(advice.what()));
      case POT_NOW ->
          "pot on "
              + Words.list(advice.what())
              + " as soon as the plugs are ready, not only when they have been held";
      case WAIT ->
          "leave "
              + Words.list(advice.what())
              + " in the cells until they go out, and do not pot them on";
    };
  }

  private String cost(Advice advice) {
    Double cost = advice.cost();
    Prices prices = now.now().scenario().prices();
    return cost == null || prices == null
        ? ""
        : " for " + Words.count(cost) + " " + prices.currency();
  }

  /** Until when, or what it lacks; nothing where that is not asked. */
  String until(Advice advice) {
    if (advice.kind() != SeasonNow.Kind.SOW_AGAIN) {
      return advice.helps().isEmpty() ? "" : "it helps " + Words.list(NowWords.few(advice.helps()));
    }
    String trays = Words.plural(advice.trays(), "tray");
    if (advice.lastDay().isEmpty()) {
      return "that is still short of its goal, " + Words.given(of(advice).goal());
    }
    LocalDate last = season.date(advice.lastDay().getAsInt());
    return last.equals(now.now().scenario().today())
        ? "tomorrow " + trays + (advice.trays() == 1 ? " is" : " are") + " no longer enough"
        : "on %s %s %s still enough"
            .formatted(day(last), trays, advice.trays() == 1 ? "is" : "are");
  }

  /** What it does to the other sowings, such as {@code 0.7 fewer}; for several, to all. */
  static String others(Advice advice) {
    double more = advice.sowing() == null ? advice.gain().mean() : advice.others().mean();
    boolean isClear = advice.sowing() == null || advice.others().isClear();
    if (!isClear || Math.abs(more) < TOLD) {
      return "none";
    }
    return Words.amount(Math.abs(more)) + (more > 0 ? " more" : " fewer");
  }

  /** The same with its error. */
  static String othersAndError(Advice advice) {
    String told = others(advice);
    Difference more = advice.sowing() == null ? advice.gain() : advice.others();
    return told.equals("none") || !more.isTold()
        ? told
        : Words.size(more) + (more.mean() > 0 ? " more" : " fewer");
  }

  private String sentence(Advice advice) {
    List<String> told = new ArrayList<>();
    Chance then = advice.chance();
    if (then == null) {
      told.add(
          "%s: on average %s sowings have their plants on time."
              .formatted(Words.capital(what(advice)), others(advice)));
    } else {
      told.add(
          "%s: %s, and its plants are on time in %s; as it stands, in %s."
              .formatted(
                  whose(advice),
                  what(advice),
                  Words.springs(then.chance()),
                  Words.springs(of(advice).now().chanceMet())));
    }
    String until = until(advice);
    if (!until.isEmpty()) {
      told.add(Words.capital(until) + ".");
    }
    if (advice.sowing() != null && !others(advice).equals("none")) {
      told.add(
          "On average %s of the other sowings have their plants on time%s"
              .formatted(others(advice), advice.others().isLess() ? ", for lack of room." : "."));
    }
    return String.join(" ", told);
  }

  /** The sowing that an advice is for. */
  SowingNow of(Advice advice) {
    Sowing sowing = advice.sowing();
    if (sowing == null) {
      throw new IllegalStateException("advice to " + advice.kind() + " is for one sowing");
    }
    return of(sowing);
  }

  private SowingNow of(Sowing sowing) {
    return now.sowings().stream().filter(s -> s.sowing().equals(sowing)).findFirst().orElseThrow();
  }

  private String today() {
    return day(now.now().scenario().today());
  }

  private String day(LocalDate date) {
    return Dates.day(date, season);
  }

  /** Sowings that nothing helps, and when their plants will be there. */
  private Optional<String> notHelped() {
    List<String> told = now.notHelped().stream().map(s -> s.id() + ": " + there(of(s))).toList();
    return told.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "Nothing that was tried helps " + String.join("; ", NowWords.few(told)) + ".");
  }

  /** When its plants are there, and how late that is. */
  private String there(SowingNow of) {
    LocalDate ready = of.now().readyBy();
    if (ready == null) {
      return "its plants are not there in 9 springs of 10 by the end of the season";
    }
    int late = season.dayOf(ready) - season.dayOf(of.sowing().bedBy());
    return "in 9 springs of 10 its plants are there by "
        + day(ready)
        + (late > 0 ? ", " + Words.plural(late, "day") + " late" : "");
  }

  private Optional<String> notBegun() {
    return NowWords.named(now.notBegun())
        .map(names -> "Not sown yet, and short as planned: " + names + ". Ask for a better plan.");
  }

  private Optional<String> tooLate() {
    return NowWords.named(now.tooLate())
        .map(names -> "Their day is past, and they were short: " + names + ".");
  }
}
