package propcap.study.fill;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.SowingNeed;
import propcap.study.latest.LatestSowing;
import propcap.study.statistics.Counts;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Strata;

/**
 * A sowing of which the day or the trays are to be found, and what has been found of it so far.
 * What is seen of it in a spring is the fewest of its trays, from the first on, that have the
 * plants needed on time.
 */
final class OpenSowing {
  /** Days of the first look over the season, at most. */
  private static final int FEW = 24;

  /** Before the last day that does by itself: in a full house trays wait. Planning default. */
  private static final int SLACK_DAYS = 7;

  final int number;
  final Sowing sowing;
  final SowingNeed need;
  final double goal;

  /** Of the season, on which it may be sown, in order. */
  private final List<Integer> days;

  /** So far. */
  int day;

  /** So far. */
  int trays;

  /** With which they are enough on that day. */
  double chance;

  private OpenSowing(int number, Sowing sowing, SowingNeed need, double goal, List<Integer> days) {
    this.number = number;
    this.sowing = sowing;
    this.need = need;
    this.goal = goal;
    this.days = days;
    trays = sowing.trays();
  }

  /**
   * A sowing of which nothing is found yet.
   *
   * @param goal where the sowing plan says no other
   * @param earliest no day before it is taken
   */
  static OpenSowing of(Scenario scenario, SowingNeed need, double goal, LocalDate earliest) {
    int number = scenario.sowings().stream().map(Sowing::id).toList().indexOf(need.sowing());
    Sowing sowing = scenario.sowings().get(number);
    return new OpenSowing(
        number, sowing, need, sowing.leeway().goalOr(goal), days(scenario, sowing, need, earliest));
  }

  private static List<Integer> days(
      Scenario scenario, Sowing sowing, SowingNeed need, LocalDate earliest) {
    if (!need.isDateOpen()) {
      return List.of(scenario.season().dayOf(sowing.sow()));
    }
    LocalDate from = sowing.leeway().from();
    LocalDate to = sowing.leeway().to();
    return LatestSowing.days(scenario, sowing, earliest).stream()
        .filter(d -> from == null || !scenario.season().date(d).isBefore(from))
        .filter(d -> to == null || !scenario.season().date(d).isAfter(to))
        .toList();
  }

  /** Whether there is a day on which it may be sown. */
  boolean isPossible() {
    return !days.isEmpty();
  }

  /** Days over the whole of those on which it may be sown. */
  List<Integer> fewDays() {
    int stride = (days.size() + FEW - 1) / FEW;
    return IntStream.range(0, days.size())
        .filter(d -> d % stride == 0)
        .mapToObj(days::get)
        .toList();
  }

  /** The days from twice the slack before the one that it has so far. */
  List<Integer> daysFromThere() {
    return days.stream().filter(d -> d >= day - 2 * SLACK_DAYS).toList();
  }

  /** As it is sown on a day in some trays. */
  Sowing sown(Scenario scenario, int onDay, int inTrays) {
    return sowing.sownOn(scenario.season().date(onDay)).withTrays(inTrays);
  }

  /**
   * Takes that of some days on which the fewest trays reach the goal, the last of several.
   *
   * @param enough by day and spring
   * @return whether it is reached on one
   */
  boolean takeBestDay(List<Integer> some, List<int[]> enough) {
    int fewest = Integer.MAX_VALUE;
    double best = -1;
    for (int d = 0; d < some.size(); d++) {
      int here = fewest(enough.get(d));
      double reached = share(enough.get(d), trays);
      if (here < fewest || (here == fewest && reached >= best)) {
        fewest = here;
        best = reached;
        day = some.get(d);
      }
    }
    return fewest <= trays;
  }

  /**
   * Takes the fewest trays that reach the goal beyond the error of the springs; if none do, the
   * fewest that do by the estimate, or at last those with the best chance.
   *
   * @param enough by spring, on its day
   */
  void takeTrays(int[] enough, Strata strata) {
    if (need.areTraysOpen()) {
      int byEstimate = fewest(enough);
      trays =
          IntStream.rangeClosed(byEstimate, trays)
              .filter(t -> isReached(enough, t, strata))
              .findFirst()
              .orElse(byEstimate <= trays ? byEstimate : mostOfUse(enough));
    }
    chance = share(enough, trays);
  }

  private boolean isReached(int[] enough, int inTrays, Strata strata) {
    double[] met = Arrays.stream(enough).mapToDouble(e -> e <= inTrays ? 1 : 0).toArray();
    return MeanLimits.ofChance(met, strata).low() >= goal;
  }

  private int mostOfUse(int[] enough) {
    return Arrays.stream(enough).filter(e -> e <= trays).max().orElse(trays);
  }

  /**
   * Takes the last of some days that reaches the goal at least a week before the last that does; if
   * there is none, it keeps its day.
   *
   * @param chances by day
   */
  void takeLatestDay(List<Integer> some, List<Double> chances) {
    List<Integer> reached =
        IntStream.range(0, chances.size()).filter(d -> chances.get(d) >= goal).boxed().toList();
    if (reached.isEmpty()) {
      return;
    }
    int last = some.get(reached.get(reached.size() - 1)) - SLACK_DAYS;
    for (int d : reached) {
      if (some.get(d) <= last) {
        day = some.get(d);
        chance = chances.get(d);
      }
    }
  }

  /** The fewest trays that are enough in as many springs as the goal asks for. */
  private int fewest(int[] enough) {
    return Counts.of(Arrays.stream(enough)).reached(goal);
  }

  static double share(int[] enough, int trays) {
    return Arrays.stream(enough).filter(e -> e <= trays).count() / (double) enough.length;
  }
}
