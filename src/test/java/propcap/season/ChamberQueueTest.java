package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.Farms;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.TrayMove;

/** A chamber, its trays and the queue before it, as the queueing theory of equal stays has it. */
class ChamberQueueTest {
  private static final int DAYS = 1000;

  static LongStream streams() {
    return LongStream.range(0, 20);
  }

  /**
   * Trays sown on random days, a Poisson number a day, into a chamber where each stays five rounds:
   * the n-th starts when it is due and when the one c before it has left, whichever is later. This
   * holds for a first-come first-served queue with c servers and equal services, for they end in
   * the order in which they start.
   */
  @ParameterizedTest
  @MethodSource("streams")
  void aChamberServesEqualStaysFirstComeFirstServed(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Farms farm = new Farms();
    farm.season = new Season(Farms.START, Farms.day(DAYS - 1));
    farm.mats = random.nextInt(1, 12);
    farm.house = 10_000;
    farm.yard = 10_000;
    farm.minC = filled(8);
    farm.maxC = filled(18);
    // Nine tenths of what the chamber can take, for 150 trays.
    double perDay = 0.9 * farm.mats / 5;
    List<Integer> due = new ArrayList<>();
    double t = 0;
    while (due.size() < 150 && t < DAYS - 200) {
      t += -Math.log(1 - random.nextDouble()) / perDay;
      int day = (int) t;
      due.add(day);
      // Whose bed comes first goes first: here, whoever is due first.
      farm.sowings.add(Farms.sowing("sowing " + due.size(), day, 1, 0, DAYS + due.size()));
    }
    Scenario scenario = farm.make();
    SeasonOutcome season = Runs.of(scenario, seed, 1).get(0);
    int[] start = new int[due.size()];
    long waited = 0;
    for (int n = 0; n < start.length; n++) {
      int free = n < farm.mats ? 0 : start[n - farm.mats] + 5;
      start[n] = Math.max(due.get(n), free);
      assertThat(season.firstDay(n, TrayMove.SOWN)).isEqualTo(start[n]);
      assertThat(season.firstDay(n, TrayMove.OFF_HEAT)).isEqualTo(start[n] + 5);
      assertThat(Runs.waited(season, RoomWait.SOW, n)).isEqualTo(start[n] - due.get(n));
      waited += start[n] - due.get(n);
    }
    assertThat(waited).isPositive();
    // Little's law of the chamber: five days each.
    assertThat(Runs.use(scenario, season, 0).stream().mapToInt(used -> used).sum())
        .isEqualTo(5 * start.length);
  }

  private static double[] filled(double value) {
    double[] days = new double[DAYS];
    Arrays.fill(days, value);
    return days;
  }
}
