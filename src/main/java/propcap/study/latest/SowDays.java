package propcap.study.latest;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.stream.DoubleStream;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.InterimLooks;
import propcap.study.RunSettings;
import propcap.study.SeasonTotals;
import propcap.study.Seasons;
import propcap.study.latest.Latest.Course;
import propcap.study.latest.Latest.Day;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Strata;

/**
 * The chance of one sowing by the day on which it is sown, on the same springs for all days.
 * Nothing is taken for granted of how days hang together: sown too early plants are held too long,
 * and the house is fuller on one day than on the next. So each day has springs of its own until it
 * is told on which side of what is asked its chance lies, or there are no more. A day far from it
 * takes some tens, one near it all.
 */
final class SowDays {
  /** At which all that is told of a course before its last spring holds together. */
  private static final double TOLD = 0.99;

  /** Days looked at together, from the last on: a week of working days. */
  private static final int TOGETHER = 6;

  /** So many days before the last that will do are looked at as well, to see whether they do. */
  private static final int BACK = 14;

  private final Scenario scenario;
  private final int sowing;

  /** Numbers of the season's days. */
  private final List<Integer> days;

  private final double goal;

  /** Chances of which it is told until when they are reached: the goal, and that of too late. */
  private final List<Double> asked;

  private final RunSettings settings;
  private final InterimLooks looks;
  private final double confidence;

  /** By day: in which springs its plants were on time, as far as it was tried. */
  private final double[][] met;

  /**
   * The days of one sowing.
   *
   * @param sowing its number
   * @param days of the season on which it may be sown, in order
   * @param goal chance of which it is to be told whether a day reaches it
   */
  SowDays(Scenario scenario, int sowing, List<Integer> days, double goal, RunSettings settings) {
    this.scenario = scenario;
    this.sowing = sowing;
    this.days = days;
    this.goal = goal;
    asked = List.of(goal, Latest.TOO_LATE);
    this.settings = settings;
    looks = InterimLooks.upTo(settings.seasons(), scenario.weather().size());
    confidence = looks.ofEach(TOLD, Math.max(1, days.size()));
    met = new double[days.size()][0];
  }

  /** All days. */
  Course whole(DoubleConsumer progress) throws InterruptedException {
    return course(true, progress);
  }

  /** From the last day back until the chances asked for are reached, and a fortnight more. */
  Course fromTheLast(DoubleConsumer progress) throws InterruptedException {
    return course(false, progress);
  }

  private Course course(boolean isWhole, DoubleConsumer progress) throws InterruptedException {
    if (days.isEmpty()) {
      return new Course(List.of(), true);
    }
    try (Seasons seasons = new Seasons(days.stream().map(this::sown).toList(), settings)) {
      int from = days.size();
      while (from > 0 && (isWhole || !isSeen(from))) {
        int to = from;
        from = Math.max(0, to - TOGETHER);
        tell(seasons, from, to);
        progress.accept(1 - from / (double) days.size());
      }
      progress.accept(1);
      return new Course(tried(from), from == 0);
    }
  }

  private Scenario sown(int day) {
    List<Sowing> sowings = new ArrayList<>(scenario.sowings());
    Sowing planned = sowings.get(sowing);
    sowings.set(sowing, planned.shifted(day - scenario.season().dayOf(planned.sow())));
    return scenario.withSowings(sowings);
  }

  /** Whether a day from some on reaches all that is asked, with enough days before it tried. */
  private boolean isSeen(int from) {
    double most = asked.stream().mapToDouble(a -> a).max().orElseThrow();
    int last = last(from, most);
    return last >= 0 && days.get(last) - days.get(from) >= BACK;
  }

  /** The last day, of those from some on, that reaches a chance; -1 where none does. */
  private int last(int from, double chance) {
    for (int d = days.size() - 1; d >= from; d--) {
      if (Samples.mean(met[d]) >= chance) {
        return d;
      }
    }
    return -1;
  }

  /** Runs springs of some days until each is told or has had them all. */
  private void tell(Seasons seasons, int first, int end) throws InterruptedException {
    // Until when the lower chance is reached is told by the last day that does; before it, only the
    // goal matters.
    List<Double> untold = asked.stream().filter(a -> a == goal || last(end, a) < 0).toList();
    List<Integer> open = new ArrayList<>();
    for (int d = first; d < end; d++) {
      open.add(d);
    }
    int from = 0;
    for (int to : looks.after()) {
      if (!open.isEmpty()) {
        List<List<Double>> numbers =
            seasons.run(
                open,
                from,
                to,
                (d, outcome) -> SeasonTotals.isMet(scenario, outcome, sowing) ? 1.0 : 0.0,
                done -> {});
        for (int i = 0; i < open.size(); i++) {
          see(open.get(i), numbers.get(i));
        }
        open.removeIf(d -> isTold(d, untold));
        from = to;
      }
    }
  }

  private void see(int day, List<Double> more) {
    met[day] =
        DoubleStream.concat(Arrays.stream(met[day]), more.stream().mapToDouble(Double::doubleValue))
            .toArray();
  }

  private boolean isTold(int day, List<Double> of) {
    int springs = met[day].length;
    int seen = (int) Math.round(Arrays.stream(met[day]).sum());
    MeanLimits limits = MeanLimits.ofChance(seen, springs, confidence);
    return of.stream().allMatch(a -> limits.high() < a || limits.low() > a);
  }

  private List<Day> tried(int from) {
    List<Day> tried = new ArrayList<>();
    for (int d = from; d < days.size(); d++) {
      int springs = met[d].length;
      MeanLimits limits =
          MeanLimits.ofChance(met[d], Strata.of(scenario, settings.seed(), springs));
      tried.add(
          new Day(
              scenario.season().date(days.get(d)),
              springs,
              Samples.mean(met[d]),
              limits.low(),
              limits.high()));
    }
    return tried;
  }
}
