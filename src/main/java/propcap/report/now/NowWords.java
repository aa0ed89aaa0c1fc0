package propcap.report.now;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.report.kit.Dates;
import propcap.report.kit.LogDoubts;
import propcap.report.kit.Words;
import propcap.study.now.CheckingLog;
import propcap.study.now.SeasonNow;
import propcap.study.now.SeasonNow.SowingNow;
import propcap.study.now.SeasonNow.Standing;

/** A season on a day within it, in words. */
final class NowWords {
  /** A chance that changed by less is as it was. */
  private static final double CHANGED = 0.05;

  private static final int FEW = 3;

  private final SeasonNow now;
  private final Season season;

  NowWords(SeasonNow now) {
    this.now = now;
    season = now.now().scenario().season();
  }

  private String today() {
    return Dates.day(now.now().scenario().today(), season);
  }

  /** How the season stands, and what changed since it was asked before. */
  List<String> told(@Nullable LastTime last) {
    return Stream.of(Stream.of(verdict(), plants()), since(last).stream()).flatMap(s -> s).toList();
  }

  /** What else is to be known of the day. */
  List<String> around() {
    return Stream.of(forgotten(), room()).flatMap(Optional::stream).toList();
  }

  /** Rows of the log that may be missing or wrong; commands tell them when they read the log. */
  List<String> doubts() {
    return LogDoubts.told(CheckingLog.unlikely(now.now().scenario()));
  }

  private String verdict() {
    long safe = now.safe();
    long risk = now.count(Standing.AT_RISK);
    long lost = now.count(Standing.LOST);
    return "On %s %s of %s %s safe, %s%s."
        .formatted(
            today(),
            safe,
            Words.plural(now.sowings().size(), "sowing"),
            safe == 1 ? "is" : "are",
            than(safe - now.safeInWinter()),
            risk + lost == 0 ? ": none is at risk" : "; " + risk + " at risk, " + lost + " lost");
  }

  private static String than(long more) {
    return more == 0
        ? "as many as in winter"
        : Math.abs(more) + (more > 0 ? " more" : " fewer") + " than in winter";
  }

  /** Of those needed: what one sowing has over makes up for no other. */
  private String plants() {
    return "On average %s of the %s plants needed will be on time, in winter %s."
        .formatted(
            Words.estimate(now.now().balance().supplied()),
            Words.count((double) now.now().scenario().plantsNeeded()),
            Words.estimate(now.winter().balance().supplied()));
  }

  /** What changed since it was asked before. */
  private Optional<String> since(@Nullable LastTime last) {
    if (last == null) {
      return Optional.empty();
    }
    List<SowingNow> changed =
        now.sowings().stream()
            .filter(s -> Math.abs(change(s, last)) >= CHANGED)
            .sorted(Comparator.comparingDouble((SowingNow s) -> -Math.abs(change(s, last))))
            .toList();
    String from = "Since it was asked for " + Dates.day(last.today(), season) + ": ";
    if (changed.isEmpty()) {
      // Asked twice in a day nothing is to be expected.
      return last.today().equals(now.now().scenario().today())
          ? Optional.empty()
          : Optional.of(from + "no sowing's chance has changed by 5 points or more.");
    }
    List<String> told =
        new ArrayList<>(
            changed.stream()
                .limit(FEW)
                .map(
                    s ->
                        s.sowing().id()
                            + " from "
                            + Words.chance(last.chances().getOrDefault(s.sowing().id(), 0.0))
                            + " to "
                            + Words.chance(s.now().chanceMet()))
                .toList());
    if (changed.size() > FEW) {
      told.add(Words.plural(changed.size() - FEW, "more sowing"));
    }
    return Optional.of(from + Words.list(told) + ".");
  }

  private static double change(SowingNow sowing, LastTime last) {
    Double before = last.chances().get(sowing.sowing().id());
    return before == null ? 0 : sowing.now().chanceMet() - before;
  }

  /** Which place is full for longest from today on. */
  private Optional<String> room() {
    return PlaceNow.of(now).stream()
        .max(Comparator.comparingDouble(PlaceNow::fullDays))
        .filter(p -> p.fullDays() >= 1)
        .map(
            p ->
                "%s is full on %s of the days to come; %s of its %s spaces are taken now."
                    .formatted(
                        p.place().name(),
                        Words.count(p.fullDays()),
                        p.stands(),
                        p.place().spaces()));
  }

  /** Trays that should have been sown by now and are not in the log. */
  private Optional<String> forgotten() {
    List<SowingNow> due = now.sowings().stream().filter(s -> s.trays().due() > 0).toList();
    if (due.isEmpty()) {
      return Optional.empty();
    }
    int trays = due.stream().mapToInt(s -> s.trays().due()).sum();
    return Optional.of(
        Words.plural(trays, "tray")
            + " should have been sown by now and "
            + (trays == 1 ? "is" : "are")
            + " not in the log ("
            + Words.list(few(due.stream().map(s -> s.sowing().id()).toList()))
            + "): taken as due today. Is a row missing?");
  }

  /** The first of some names, and how many more. */
  static List<String> few(List<String> names) {
    if (names.size() <= FEW + 1) {
      return names;
    }
    List<String> few = new ArrayList<>(names.subList(0, FEW));
    few.add((names.size() - FEW) + " more");
    return few;
  }

  /** Sowings by name; empty where there are none. */
  static Optional<String> named(List<Sowing> sowings) {
    return sowings.isEmpty()
        ? Optional.empty()
        : Optional.of(Words.list(few(sowings.stream().map(Sowing::id).toList())));
  }
}
