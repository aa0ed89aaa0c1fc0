package propcap.study.plan;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntFunction;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;
import propcap.farm.Scenario;
import propcap.farm.TrayMove;
import propcap.season.House;
import propcap.season.SeasonPlan;
import propcap.study.plan.Choice.Setting;

/**
 * Each sowing by itself: what it brings with endless room and hands on each of its days, in each of
 * its places and in any number of trays. Sowings and trays do not then get in each other's way, so
 * that one run tells of one day of every sowing, and the first trays of many are what fewer would
 * have been.
 */
final class EndlessRoomSearch {
  /** Days tried at first; where there are more, every second one, or third, and so on. */
  private static final int DAYS = 32;

  /** Springs of the first look. */
  private static final int FIRST_LOOK = 32;

  /** Days on either side of the best that are tried on all springs. */
  private static final int NEAR = 2;

  /** At which each way's chance must lie below the goal for none to reach it: they are many. */
  private static final double CONFIDENCE = 0.998;

  private final Scenario endless;
  private final List<Choice> choices;
  private final PlanObjective objective;
  private final PlanWorth worth;
  private final TrialSprings springs;
  private final SeasonPlan like;

  /** By sowing: what was tried, by its day and place. */
  private final List<Map<Setting, Way>> tried = new ArrayList<>();

  private EndlessRoomSearch(
      Scenario scenario,
      List<Choice> choices,
      PlanObjective objective,
      PlanWorth worth,
      TrialSprings springs) {
    this.endless = scenario.withEndlessRoom().withEndlessHands();
    this.choices = choices;
    this.objective = objective;
    this.worth = worth;
    this.springs = springs;
    this.like = new SeasonPlan(endless);
    choices.forEach(c -> tried.add(new LinkedHashMap<>()));
  }

  /** Tries every sowing's days and places. */
  static EndlessRoomSearch of(
      Scenario scenario,
      List<Choice> choices,
      PlanObjective objective,
      PlanWorth worth,
      TrialSprings springs)
      throws InterruptedException {
    EndlessRoomSearch alone = new EndlessRoomSearch(scenario, choices, objective, worth, springs);
    alone.lookEverywhere();
    alone.lookCloser(Way::score);
    alone.lookCloser(Way::surely);
    return alone;
  }

  /**
   * A day and a place of one sowing.
   *
   * @param all the setting with all the trays that it may have
   * @param best the number of trays with the best score
   * @param score of these
   * @param chance share of the springs in which all the trays have the plants needed on time
   * @param supplied mean share of the plants needed that all the trays have on time
   * @param moved mean day of each move, by {@link TrayMove}; NaN where no tray makes it
   * @param potTrays mean trays of pots that the best number of trays becomes
   */
  private record Way(
      Setting all,
      int best,
      double score,
      double chance,
      double supplied,
      int springs,
      List<Double> moved,
      double potTrays) {
    /** The chance first; where that is the same, such as 0, the plants. */
    double surely() {
      return chance + supplied / (1 + springs);
    }

    Response response() {
      return new Response(new Setting(all.day(), best, all.place()), score, moved, potTrays);
    }
  }

  /**
   * One setting of one sowing, and its way through the places.
   *
   * @param score worth less what missing the goal costs, mean of the springs
   * @param moved mean day of each move, by {@link TrayMove}; NaN where no tray makes it
   * @param potTrays mean trays of pots that its trays become
   */
  record Response(Setting setting, double score, List<Double> moved, double potTrays) {
    double day(TrayMove move) {
      return moved.get(move.ordinal());
    }
  }

  /** By sowing: for each day tried, the best place and trays, in the order of the days. */
  List<List<Response>> byDay() {
    return tried.stream()
        .map(
            ways -> {
              Map<Integer, Way> best = new TreeMap<>();
              ways.values()
                  .forEach(w -> best.merge(w.all.day(), w, (a, b) -> b.score > a.score ? b : a));
              return best.values().stream().map(Way::response).toList();
            })
        .toList();
  }

  /** Each sowing on its best day, with as many trays as do best. */
  TrialPlan best() {
    return trialPlan(s -> best(s, Way::score).response().setting());
  }

  /** Each sowing on its surest day, with all the trays that it may have. */
  TrialPlan surest() {
    return trialPlan(s -> best(s, Way::surely).all);
  }

  /** The chance of each sowing on its surest day. */
  List<Double> chances() {
    return IntStream.range(0, choices.size()).mapToObj(s -> best(s, Way::surely).chance).toList();
  }

  /** Whether a sowing misses its goal on each of the days tried, in each place, with all trays. */
  boolean isOutOfReach(int sowing) {
    return tried.get(sowing).values().stream()
        .allMatch(
            w ->
                new WilsonScoreInterval()
                        .createInterval(
                            w.springs, (int) Math.round(w.chance * w.springs), CONFIDENCE)
                        .getUpperBound()
                    < choices.get(sowing).goal());
  }

  // Where to look.

  private void lookEverywhere() throws InterruptedException {
    int places = choices.stream().mapToInt(c -> c.places().size()).max().orElseThrow();
    int days = choices.stream().mapToInt(c -> c.days().size()).max().orElseThrow();
    for (int p = 0; p < places; p++) {
      for (int k = 0; k < Math.min(days, DAYS); k++) {
        int place = p;
        int nth = k;
        look(
            s -> {
              Choice c = choices.get(s);
              return all(c, nth * stride(c), place % c.places().size());
            },
            FIRST_LOOK);
      }
    }
  }

  private static int stride(Choice choice) {
    return (choice.days().size() + DAYS - 1) / DAYS;
  }

  private void lookCloser(ToDoubleFunction<Way> by) throws InterruptedException {
    List<Setting> best = trialPlan(s -> best(s, by).all).settings();
    int near =
        Math.max(
            NEAR, choices.stream().mapToInt(EndlessRoomSearch::stride).max().orElseThrow() - 1);
    for (int k = -near; k <= near; k++) {
      int off = k;
      look(
          s -> {
            Choice c = choices.get(s);
            Setting at = best.get(s);
            return all(c, c.days().indexOf(at.day()) + off, at.place());
          },
          springs.count());
    }
  }

  private static Setting all(Choice choice, int nth, int place) {
    int inside = Math.max(0, Math.min(choice.days().size() - 1, nth));
    return new Setting(choice.days().get(inside), choice.mostTrays(), place);
  }

  /** The best of those that were tried on the most springs. */
  private Way best(int sowing, ToDoubleFunction<Way> by) {
    int most = tried.get(sowing).values().stream().mapToInt(Way::springs).max().orElseThrow();
    return tried.get(sowing).values().stream()
        .filter(w -> w.springs == most)
        .max(Comparator.comparingDouble(by))
        .orElseThrow();
  }

  private TrialPlan trialPlan(IntFunction<Setting> setting) {
    return new TrialPlan(IntStream.range(0, choices.size()).mapToObj(setting).toList());
  }

  // What is seen.

  private void look(IntFunction<Setting> setting, int springsRun) throws InterruptedException {
    TrialPlan trialPlan = trialPlan(setting);
    Scenario sown = trialPlan.sown(endless, choices);
    int n = Math.min(springsRun, springs.count());
    SeasonPlan plan = new SeasonPlan(sown, like);
    List<EndlessRoomSpring> seen =
        springs.run(0, n, luck -> new EndlessRoomSpring(sown, House.seasonWithDiary(plan, luck)));
    for (int s = 0; s < choices.size(); s++) {
      Way way = way(s, trialPlan.settings().get(s), seen);
      tried.get(s).merge(way.all, way, (a, b) -> b.springs > a.springs ? b : a);
    }
  }

  private Way way(int s, Setting all, List<EndlessRoomSpring> seen) {
    int best = 1;
    double score = Double.NEGATIVE_INFINITY;
    double chance = 0;
    double supplied = 0;
    for (int k = 1; k <= all.trays(); k++) {
      int trays = k;
      chance = mean(seen, o -> worth.isMet(s, o.onTime(s, trays)) ? 1 : 0);
      supplied = mean(seen, o -> worth.supplied(s, o.onTime(s, trays)));
      double worths = mean(seen, o -> worth(o, s, trays));
      double now = objective.score(s, worths, chance, supplied);
      if (now > score) {
        score = now;
        best = trays;
      }
    }
    int found = best;
    double potTrays = mean(seen, o -> o.potTrays(s, found));
    return new Way(all, best, score, chance, supplied, seen.size(), moved(s, seen), potTrays);
  }

  private double worth(EndlessRoomSpring o, int s, int trays) {
    return worth.of(
        s, o.onTime(s, trays), o.late(s, trays), trays, o.sown(s, trays), o.potTrays(s, trays));
  }

  private static double mean(
      List<EndlessRoomSpring> seen, ToDoubleFunction<EndlessRoomSpring> number) {
    double sum = 0;
    for (EndlessRoomSpring spring : seen) {
      sum += number.applyAsDouble(spring);
    }
    return sum / seen.size();
  }

  private static List<Double> moved(int s, List<EndlessRoomSpring> seen) {
    return Stream.of(TrayMove.values())
        .map(move -> mean(seen, o -> o.daySum(s, move)) / mean(seen, o -> o.moved(s, move)))
        .toList();
  }
}
