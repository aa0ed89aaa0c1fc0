package propcap.study.now;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.now.SeasonNow.Advice;
import propcap.study.now.SeasonNow.Kind;
import propcap.study.now.SeasonNow.SowingNow;
import propcap.study.statistics.Difference;

/** Whether it helps to sow one sowing again for the same bed: how many trays, and until when. */
final class SowingAgain {
  /** It has at most so many times the trays that its plan had. */
  private static final int MOST_TIMES = 4;

  /** Trays are tried with so much more than the springs seem to ask for. */
  private static final List<Double> MORE = List.of(1.0, 1.25, 1.6);

  /** Fewer plants on time than this share of the cells of a tray: it is too late. */
  private static final double TOO_FEW = 0.02;

  private final Scenario scenario;
  private final AdviceSprings springs;
  private final SowingNow of;

  /** Its place in the plan; that of the sowing again is behind the plan. */
  private final int sowing;

  private final int again;

  SowingAgain(Scenario scenario, AdviceSprings springs, SowingNow of) {
    this.scenario = scenario;
    this.springs = springs;
    this.of = of;
    sowing = scenario.sowings().indexOf(of.sowing());
    again = scenario.sowings().size();
  }

  /** Advice, where sowing again today makes a difference beyond its error. */
  Optional<Advice> advice() throws InterruptedException {
    boolean isTooLate = !scenario.today().isBefore(of.sowing().bedBy());
    if (isTooLate || !scenario.season().contains(scenario.today())) {
      return Optional.empty();
    }
    int trays = trays();
    if (trays == 0) {
      return Optional.empty();
    }
    int[][] after = springs.telling(on(scenario.today(), trays));
    double[] met = AdviceSprings.of(after, this::met);
    Difference gain = springs.difference(springs.met(springs.beforeTelling(), of, 0), met, 1);
    if (!gain.isMore()) {
      return Optional.empty();
    }
    int byDay = reaches(after) ? lastDay(trays) : Advice.NO_DAY;
    return Optional.of(
        new Advice(
            Kind.SOW_AGAIN,
            of.sowing(),
            List.of(),
            List.of(),
            trays,
            byDay,
            springs.chance(met),
            gain,
            springs.met(after, sowing, 1),
            null));
  }

  private Scenario on(int day, int trays) {
    return on(scenario.season().date(day), trays);
  }

  private Scenario on(LocalDate day, int trays) {
    Sowing first = of.sowing();
    List<Sowing> more = new ArrayList<>(scenario.sowings());
    more.add(
        new Sowing(
            first.id() + " again",
            first.crop(),
            first.lot(),
            day,
            trays,
            0,
            first.bedFrom(),
            first.bedBy(),
            first.bedUntil(),
            null,
            first.germinateIn(),
            Sowing.Leeway.NOT_SAID));
    return scenario.withSowings(more);
  }

  private double met(int[] onTime) {
    return onTime[sowing] + onTime[again] >= of.sowing().plantsNeeded() ? 1 : 0;
  }

  /** The fewest of those tried that reach the goal, or the most of them; 0 where it is too late. */
  private int trays() throws InterruptedException {
    LocalDate today = scenario.today();
    int probe = Math.max(1, of.sowing().trays() / 2);
    int[][] probed = springs.trying(on(today, probe));
    double perTray = AdviceSprings.mean(AdviceSprings.of(probed, o -> o[again])) / probe;
    if (perTray < TOO_FEW * scenario.cropOf(of.sowing()).cells()) {
      return 0;
    }
    int least = (int) Math.ceil(Math.max(1, springs.lacking(of)) / perTray);
    int most = MOST_TIMES * of.sowing().trays();
    List<Integer> numbers =
        MORE.stream().map(m -> (int) Math.min(most, Math.ceil(m * least))).distinct().toList();
    for (int number : numbers) {
      if (reaches(springs.trying(on(today, number)))) {
        return number;
      }
    }
    return numbers.get(numbers.size() - 1);
  }

  /**
   * The last working day on which so many trays still reach the goal, as far as days were tried:
   * those between the last that does and the next that doesn't are halved until none is left; and
   * then back to one that does in the springs that are told from as well.
   */
  private int lastDay(int trays) throws InterruptedException {
    List<Integer> days =
        IntStream.range(scenario.firstDay() + 1, scenario.season().dayOf(of.sowing().bedBy()))
            .filter(d -> scenario.rounds().isWorkingDay(scenario.season().date(d)))
            .boxed()
            .toList();
    int last = lastTried(days, trays);
    while (last >= 0 && !reaches(springs.telling(on(days.get(last), trays)))) {
      last--;
    }
    return last < 0 ? scenario.firstDay() : days.get(last);
  }

  /** The place of the last that reaches it in the springs tried on; -1: none does. */
  private int lastTried(List<Integer> days, int trays) throws InterruptedException {
    int last = -1;
    int fails = days.size();
    while (fails - last > 1) {
      int middle = (last + fails) / 2;
      if (reaches(springs.trying(on(days.get(middle), trays)))) {
        last = middle;
      } else {
        fails = middle;
      }
    }
    return last;
  }

  private boolean reaches(int[][] onTime) {
    return AdviceSprings.mean(AdviceSprings.of(onTime, this::met)) >= of.goal();
  }
}
