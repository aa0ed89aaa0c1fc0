package propcap.report.now;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Prices;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;
import propcap.study.Difference;
import propcap.study.SeasonNow;
import propcap.study.SeasonNow.Advice;
import propcap.study.SeasonNow.Chance;
import propcap.study.SeasonNow.SowingNow;
import propcap.study.SeasonNow.Standing;

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

  /** All that can still be done, and what nothing helps. */
  List<String> all() {
    return Stream.concat(now.advice().stream().map(this::advice), notHelped().stream()).toList();
  }

  private String verdict() {
    long safe = now.safe();
    long planted = now.count(Standing.PLANTED);
    return "On "
        + today()
        + ", "
        + safe
        + " of "
        + Words.plural(now.sowings().size(), "sowing")
        + (safe == 1 ? " is" : " are")
        + " safe"
        + (planted > 0 ? " (" + planted + " of them planted)" : "")
        + than(safe - now.safeInWinter())
        + "; "
        + now.count(Standing.AT_RISK)
        + " at risk, "
        + now.count(Standing.LOST)
        + " lost.";
  }

  private static String than(long more) {
    if (more == 0) {
      return ", as many as in the winter forecast";
    }
    return ", " + Math.abs(more) + (more > 0 ? " more" : " fewer") + " than in the winter forecast";
  }

  private String plants() {
    int needed = now.sowings().stream().mapToInt(s -> s.sowing().plantsNeeded()).sum();
    return Words.count(now.now().onTime().mean())
        + " plants on time in all ("
        + Words.interval(now.now().onTime())
        + "), in winter "
        + Words.count(now.winter().onTime().mean())
        + "; "
        + Words.count(needed)
        + " are needed.";
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
      return Optional.of(from + "no sowing's chance has changed by 5 points or more.");
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
    return NowTables.PlaceNow.of(now).stream()
        .max(Comparator.comparingDouble(NowTables.PlaceNow::fullDays))
        .filter(p -> p.fullDays() >= 1)
        .map(
            p ->
                p.place().name()
                    + " is full on "
                    + Words.count(p.fullDays())
                    + " of the days to come; "
                    + p.stands()
                    + " of its "
                    + p.place().spaces()
                    + " spaces are taken now.");
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
            + Words.list(shortList(due.stream().map(s -> s.sowing().id()).toList()))
            + "): taken as due today. Is a row missing?");
  }

  private static List<String> shortList(List<String> names) {
    if (names.size() <= FEW) {
      return names;
    }
    List<String> few = new ArrayList<>(names.subList(0, FEW));
    few.add((names.size() - FEW) + " more");
    return few;
  }

  // Advice.

  /** The most useful advice, and how much more there is on the page. */
  Optional<String> shortAdvice() {
    List<Advice> all = now.advice();
    if (all.isEmpty()) {
      return Optional.empty();
    }
    String more =
        all.size() == 1 ? "" : " " + (all.size() - 1) + " more that help are on the page.";
    return Optional.of(advice(all.get(0)) + more);
  }

  private String advice(Advice advice) {
    return switch (advice.kind()) {
      case SOW_AGAIN -> sowAgain(advice);
      case GIVE_UP ->
          "Give up "
              + Words.plural(advice.trays(), "tray")
              + " that are not needed ("
              + Words.list(advice.what())
              + "): "
              + several(advice);
      case POT_NOW ->
          "Pot on "
              + Words.list(advice.what())
              + " as soon as the plugs are ready, not only when they have been held: "
              + several(advice);
      case WAIT ->
          "Leave "
              + Words.list(advice.what())
              + " in the cells until they go out, and do not pot them on: "
              + several(advice);
      case BUY_IN -> buyIn(advice);
    };
  }

  private static String several(Advice advice) {
    String helps =
        advice.helps().isEmpty() ? "" : " It helps " + Words.list(shortList(advice.helps())) + ".";
    return sowings(advice.gain()) + "." + helps;
  }

  private static String sowings(Difference gain) {
    return Words.difference(gain) + " sowings with their plants on time";
  }

  private String sowAgain(Advice advice) {
    Sowing sowing = sowing(advice);
    SowingNow of =
        now.sowings().stream().filter(s -> s.sowing().equals(sowing)).findFirst().orElseThrow();
    String told =
        sowing.id()
            + ": sow "
            + Words.plural(advice.trays(), "tray")
            + " again on "
            + today()
            + ", and its plants are on time in "
            + chance(advice.chance())
            + " of springs; without, in "
            + Words.chance(of.now().chanceMet())
            + ".";
    if (advice.lastDay().isEmpty()) {
      told += " That is short of its goal of " + Words.given(of.goal()) + ".";
    } else {
      LocalDate last = season.date(advice.lastDay().getAsInt());
      told +=
          last.equals(now.now().scenario().today())
              ? " Tomorrow is too late for its goal."
              : " Until " + Dates.day(last, season) + " so many still reach its goal.";
    }
    if (advice.others().isLess()) {
      told += " It costs the others room: " + sowings(advice.others()) + ".";
    }
    return told;
  }

  private static Sowing sowing(Advice advice) {
    Sowing sowing = advice.sowing();
    if (sowing == null) {
      throw new IllegalStateException("advice to " + advice.kind() + " is for one sowing");
    }
    return sowing;
  }

  private static String chance(@Nullable Chance chance) {
    return chance == null
        ? "none"
        : Words.chance(chance.chance()) + " (" + Words.chances(chance.low(), chance.high()) + ")";
  }

  private String buyIn(Advice advice) {
    Double cost = advice.cost();
    Prices prices = now.now().scenario().prices();
    return sowing(advice).id()
        + ": buy in "
        + Words.plural(advice.trays(), "plant")
        + ", and it has what it needs in "
        + chance(advice.chance())
        + " of springs"
        + (cost == null || prices == null
            ? ""
            : "; they cost " + Words.count(cost) + " " + prices.currency())
        + ".";
  }

  /** Sowings that nothing helps, and when their plants will be there. */
  Optional<String> notHelped() {
    if (now.notHelped().isEmpty()) {
      return Optional.empty();
    }
    List<String> told =
        now.notHelped().stream()
            .map(
                s -> {
                  LocalDate ready =
                      now.sowings().stream()
                          .filter(n -> n.sowing().equals(s))
                          .findFirst()
                          .orElseThrow()
                          .now()
                          .readyBy();
                  return s.id()
                      + (ready == null
                          ? " (never in 9 springs of 10)"
                          : " (there by " + Dates.day(ready, season) + ")");
                })
            .toList();
    return Optional.of("Nothing that was tried helps " + Words.list(shortList(told)) + ".");
  }
}
