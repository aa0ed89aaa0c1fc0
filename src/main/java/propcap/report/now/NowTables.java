package propcap.report.now;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import propcap.farm.LoggedEvent;
import propcap.farm.Season;
import propcap.farm.TrayTask;
import propcap.report.kit.Dates;
import propcap.report.kit.SafetyWords;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Sheet.Column;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.Period;
import propcap.study.forecast.Safety;
import propcap.study.now.SeasonNow;
import propcap.study.now.SeasonNow.Advice;
import propcap.study.now.SeasonNow.Chance;
import propcap.study.now.SeasonNow.SowingNow;
import propcap.study.now.SeasonNow.Standing;
import propcap.study.now.SeasonNow.Trays;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;
import propcap.study.work.WorkCalendar;

/** The tables of a season on a day within it. */
final class NowTables {
  /** So many days of work are told. */
  static final int FORTNIGHT = 14;

  private NowTables() {}

  /** How a sowing stands, by shape and word. */
  private static Cell standing(Standing standing) {
    return switch (standing) {
      case PLANTED -> Cell.of("planted").marked(SafetyWords.mark(Safety.SAFE));
      case SAFE -> of(Safety.SAFE);
      case AT_RISK -> of(Safety.AT_RISK);
      case LOST -> of(Safety.LOST);
    };
  }

  private static Cell of(Safety safety) {
    return Cell.of(SafetyWords.word(safety)).marked(SafetyWords.mark(safety));
  }

  private static String where(Trays trays) {
    List<String> parts =
        Stream.of(
                part(trays.toSow(), "to be sown"),
                part(trays.inHeat(), "in the heat"),
                part(trays.growingOn(), "growing on"),
                part(trays.inPots(), "in pots"),
                part(trays.outside(), "hardening off"),
                part(trays.planted(), "planted out"))
            .filter(p -> !p.isEmpty())
            .toList();
    return parts.isEmpty() ? "none" : String.join(", ", parts);
  }

  private static String part(int trays, String where) {
    return trays == 0 ? "" : trays + " " + where;
  }

  static final Table<SowingNow> SOWINGS =
      new Table<SowingNow>("Sowing", s -> s.sowing().id(), s -> where(s.trays()))
          .file("sowing", s -> s.sowing().id())
          .file("crop", s -> s.sowing().crop())
          .file("standing", s -> s.standing().word())
          .file("plants-needed", s -> s.sowing().plantsNeeded())
          .file("goal", SowingNow::goal)
          .file("chance-now", s -> s.now().chanceMet())
          .file("chance-now-low", s -> s.now().chanceMetLow())
          .file("chance-now-high", s -> s.now().chanceMetHigh())
          .file("chance-in-winter", s -> s.winter().chanceMet())
          .stat("on-time", s -> s.now().onTime())
          .stat("on-time-in-winter", s -> s.winter().onTime())
          .file("ready-by", s -> s.now().readyBy())
          .file("to-sow", s -> s.trays().toSow())
          .file("due-and-not-in-the-log", s -> s.trays().due())
          .file("in-heat", s -> s.trays().inHeat())
          .file("growing-on", s -> s.trays().growingOn())
          .file("in-pots", s -> s.trays().inPots())
          .file("hardening", s -> s.trays().outside())
          .file("planted", s -> s.trays().planted())
          .file("thrown-out", s -> s.trays().gone())
          .cell(Column.words("Standing"), s -> standing(s.standing()))
          .cell(
              "Chance",
              "now",
              s ->
                  chance(s.now().chanceMet(), s.now().chanceMetLow(), s.now().chanceMetHigh())
                      .strongIf(s.isShort()))
          .cell(
              "Chance",
              "in winter",
              s ->
                  chance(
                      s.winter().chanceMet(),
                      s.winter().chanceMetLow(),
                      s.winter().chanceMetHigh()))
          .cell("Plants on time", "now", s -> plants(s.now().onTime()))
          .cell("Plants on time", "in winter", s -> plants(s.winter().onTime()))
          .number("Needed", "plants", s -> Words.count(s.sowing().plantsNeeded()));

  /** A chance with its limits below it, where they differ as they are written. */
  private static Cell chance(double chance, double low, double high) {
    String limits = Words.chances(low, high);
    return Cell.of(
        Words.chance(chance), Math.round(100 * low) == Math.round(100 * high) ? "" : limits);
  }

  private static Cell chances(double now, Chance then) {
    return Cell.of(
        Words.bareChance(now) + " → " + Words.chance(then.chance()),
        chance(then.chance(), then.low(), then.high()).below());
  }

  /** Plants with their error, and below them what 8 springs of 10 have, where springs differ. */
  private static Cell plants(Stat stat) {
    MeanLimits limits = stat.limits();
    if (limits == null) {
      return stat.unlike() == 0 ? Cell.of(Words.count(stat.mean())) : Cell.level(stat);
    }
    // Of a lopsided interval the longer side: whole plants are told, no finer than they come.
    double error = Math.max(limits.high() - stat.mean(), stat.mean() - limits.low());
    return Cell.of(
        Words.count(stat.mean()) + " ± " + Words.count(Math.ceil(error)), Words.range(stat));
  }

  /** A piece of the coming fortnight's work. */
  record Job(LocalDate date, WorkCalendar.Task task, WorkCalendar.Stint stint) {
    static List<Job> of(WorkCalendar work, LocalDate today) {
      Period days = new Period(today, today.plusDays(FORTNIGHT - 1));
      return work.tasks().stream()
          .flatMap(
              t -> t.in(days).stream().filter(s -> s.trays() > 0).map(s -> new Job(s.date(), t, s)))
          .sorted(
              Comparator.comparing(Job::date)
                  .thenComparing(j -> j.task().job())
                  .thenComparing(j -> j.task().sowing().id()))
          .toList();
    }
  }

  /** The word that the log has for it, so that doing and writing down are one thought. */
  private static String event(TrayTask job) {
    return job.logged().map(LoggedEvent::word).orElse(job.word());
  }

  private static String route(WorkCalendar.Stint stint) {
    String from = stint.from();
    String to = stint.to() == null ? "the bed" : stint.to();
    return from == null ? "into " + to : from.equals(to) ? "on " + to : from + " → " + to;
  }

  static Table<Job> work(Season season) {
    return new Table<Job>("Day", j -> Dates.dayOfWeek(j.date(), season))
        .words("What", j -> event(j.task().job()))
        .cell(Column.words("Sowing"), j -> Cell.of(j.task().sowing().id(), route(j.stint())))
        .number("Trays", "", j -> Integer.toString(j.stint().trays()));
  }

  /** What can still be done. */
  static Table<Advice> advice(SeasonNow now) {
    AdviceWords words = new AdviceWords(now);
    Season season = now.now().scenario().season();
    return new Table<Advice>("Sowing", AdviceWords::whose)
        .json("kind", a -> a.kind().word())
        .json("sowing", a -> a.sowing() == null ? null : a.sowing().id())
        .json("what", Advice::what)
        .json("helps", Advice::helps)
        .json("trays", Advice::trays)
        .json("until", a -> a.lastDay().stream().mapToObj(season::date).findFirst().orElse(null))
        .json("chance", a -> a.chance() == null ? null : a.chance().chance())
        .difference("gain", Advice::gain)
        .difference("others", Advice::others)
        .json("cost", Advice::cost)
        .cell(Column.words("What to do"), a -> Cell.of(words.what(a), words.until(a)))
        .cell(
            "Chance",
            "now → then",
            a ->
                a.chance() == null ? Cell.NONE : chances(words.of(a).now().chanceMet(), a.chance()))
        .number("The others", "sowings on time, mean", AdviceWords::othersAndError);
  }
}
