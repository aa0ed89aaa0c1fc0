package propcap.study.bottleneck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.Capacity;
import propcap.study.RunSettings;
import propcap.study.statistics.MeanLimits;

/** Which place holds the spring up, and what helps most, step by step? */
public final class Bottlenecking {

  /** Ten times as wide, a tenth at a time, is some 25; nobody builds on in more. */
  private static final int MOST_STEPS = 100;

  private final Scenario start;
  private final RunSettings settings;
  private final DoubleConsumer progress;
  private final int rounds;
  private final int intervals;
  private int round;

  private Bottlenecking(Scenario start, RunSettings settings, int steps, DoubleConsumer progress) {
    this.start = start;
    this.settings = settings;
    this.progress = progress;
    rounds = Math.max(1, steps);
    intervals = intervals(start, steps);
  }

  /**
   * Tries a tenth more and a tenth less of each place, then takes the best tenth, step by step.
   *
   * @param steps the most steps of the stair
   * @throws BadQuestionException where steps are out of bounds, or there is but one season
   */
  public static Bottlenecks bottlenecks(
      Scenario scenario, RunSettings settings, int steps, DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    if (steps < 0 || steps > MOST_STEPS) {
      throw new BadQuestionException("steps must be from 0 to " + MOST_STEPS + ", was " + steps);
    }
    settings.forDifferences();
    return new Bottlenecking(scenario, settings, steps, progress).answer(steps);
  }

  /**
   * Intervals of an answer that has all its steps, each of which picks from all places. The first
   * table has plants and margins of more and of fewer, and waiting; each later one plants and
   * margins of a step and plants of all steps so far.
   */
  private static int intervals(Scenario scenario, int steps) {
    List<Capacity> open = Capacity.allOf(scenario);
    int more = open.size();
    int fewer = (int) open.stream().filter(place -> TenthChanges.tenthLess(place) > 0).count();
    int measures = scenario.prices() == null ? 1 : 2;
    int first = measures * (more + fewer) + RoomWait.values().length * more;
    return first + Math.max(0, steps - 1) * (measures + 1) * more;
  }

  private Bottlenecks answer(int steps) throws InterruptedException {
    TenthChanges first = run(start);
    List<Bottlenecks.Step> stair = new ArrayList<>();
    TenthChanges tenths = first;
    int added = 0;
    for (int i = 0; i < steps; i++) {
      Optional<Capacity> best = tenths.best();
      if (best.isEmpty()) {
        break;
      }
      Capacity place = best.get();
      added += TenthChanges.tenth(place);
      stair.add(tenths.step(place, added));
      if (i + 1 < steps) {
        tenths = run(tenths.with(place, TenthChanges.tenth(place)));
      }
    }
    progress.accept(1);
    return new Bottlenecks(
        start,
        settings,
        settings.seasons(),
        MeanLimits.CONFIDENCE,
        intervals,
        first.onTime(),
        first.safe(0),
        first.worths(),
        List.copyOf(stair),
        stair.size() < steps);
  }

  private TenthChanges run(Scenario current) throws InterruptedException {
    TenthChanges tenths = new TenthChanges(start, current, settings, intervals);
    tenths.run(share -> progress.accept((round + share) / rounds));
    round++;
    return tenths;
  }
}
