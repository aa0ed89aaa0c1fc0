package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.LongToDoubleFunction;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * A room with Poisson arrivals against the formulas of Erlang (1917) and Crommelin (1932, Post
 * Office Electrical Engineers' Journal 25), which any queueing text has, such as Gross and Harris,
 * Fundamentals of Queueing Theory. The formulas are computed here by recursion or series, and are
 * themselves held to values computed from them apart from this code.
 *
 * <p>Means are of 40 runs apart, and may lie 5 standard errors off: for Student's t of 39 degrees
 * of freedom a false alarm of 1.3e-5 each, 1.2e-4 over the nine here. Beside each, the same check
 * must refuse the value for arrivals 5 % more frequent.
 */
class RoomLawTest {
  private static final double K = 5;
  private static final int RUNS = 40;

  private static Mean runs(LongToDoubleFunction ofSeed) {
    return Mean.of(LongStream.range(0, RUNS).mapToDouble(ofSeed).toArray());
  }

  // Loss: a tray that finds no room is turned away.

  private static double erlangB(double load, int spaces) {
    double blocked = 1;
    for (int n = 1; n <= spaces; n++) {
      blocked = load * blocked / (n + load * blocked);
    }
    return blocked;
  }

  @Test
  void erlangsLossFormulaHasItsKnownValues() {
    assertThat(erlangB(10, 15)).isCloseTo(.03649695, within(5e-9));
    assertThat(erlangB(5, 10)).isCloseTo(.01838457, within(5e-9));
    assertThat(erlangB(25, 30)).isCloseTo(.05260317, within(5e-9));
    // From the table of loads that lose one in a hundred.
    assertThat(erlangB(4.46, 10)).isCloseTo(.01, within(2e-5));
    assertThat(erlangB(12.03, 20)).isCloseTo(.01, within(2e-5));
    assertThat(erlangB(37.90, 50)).isCloseTo(.01, within(2e-5));
  }

  /** The loss hangs on the mean stay alone, not on its law. */
  @ParameterizedTest
  @CsvSource({"10, 15, false", "10, 15, true", "5, 10, false", "5, 10, true"})
  void aFullRoomTurnsAwayErlangsShare(double load, int spaces, boolean sure) {
    Mean turnedAway =
        runs(
            seed ->
                new QueueInRoom(seed, spaces, load / 4, 4, sure, false, 100, 6000)
                    .run()
                    .turnedAway());
    assertThat(turnedAway.errorsFrom(erlangB(load, spaces))).isLessThan(K);
    assertThat(turnedAway.errorsFrom(erlangB(1.05 * load, spaces))).isGreaterThan(K);
  }

  // Delay: a tray that finds no room waits its turn. The mean stay is one day.

  /** Mean wait where stays are exponential. */
  private static double waitOfRandomStays(double load, int spaces) {
    double blocked = erlangB(load, spaces);
    double waits = blocked / (1 - load / spaces * (1 - blocked));
    return waits / (spaces - load);
  }

  /** Mean wait where stays are equal. */
  private static double waitOfEqualStays(double load, int spaces) {
    double wait = 0;
    for (int i = 1; i <= 800; i++) {
      wait += tail(i * load, i * spaces) - spaces / load * tail(i * load, i * spaces + 1);
    }
    return wait;
  }

  /** Chance that a Poisson count reaches a number above its mean. */
  private static double tail(double mean, int number) {
    double term = -mean;
    for (int j = 1; j <= number; j++) {
      term += Math.log(mean / j);
    }
    double chance = Math.exp(term);
    double sum = 0;
    for (int j = number + 1; chance > 1e-18; j++) {
      sum += chance;
      chance *= mean / j;
    }
    return sum;
  }

  @Test
  void theDelayFormulasHaveTheirKnownValues() {
    assertThat(waitOfRandomStays(.75, 1)).isCloseTo(3, within(1e-12));
    assertThat(waitOfRandomStays(.75, 2)).isCloseTo(.163636, within(5e-7));
    assertThat(waitOfRandomStays(8, 10)).isCloseTo(.204590, within(5e-7));
    assertThat(waitOfRandomStays(45, 50)).isCloseTo(.072773, within(5e-7));
    // One server, by Pollaczek and Khinchine.
    assertThat(waitOfEqualStays(.8, 1)).isCloseTo(2, within(1e-6));
    assertThat(waitOfEqualStays(1.6, 2)).isCloseTo(.903284, within(1e-6));
    assertThat(waitOfEqualStays(4, 5)).isCloseTo(.289060, within(1e-6));
    assertThat(waitOfEqualStays(8, 10)).isCloseTo(.109828, within(1e-6));
  }

  @ParameterizedTest
  @CsvSource({".75, 2", "8, 10"})
  void traysOfRandomStaysWaitAsInErlangsDelayFormula(double load, int spaces) {
    Mean wait = runs(seed -> waitInRoom(seed, load, spaces, false));
    assertThat(wait.errorsFrom(waitOfRandomStays(load, spaces))).isLessThan(K);
    assertThat(wait.errorsFrom(waitOfRandomStays(1.05 * load, spaces))).isGreaterThan(K);
  }

  @ParameterizedTest
  @CsvSource({"1.6, 2", "4, 5", "8, 10"})
  void traysOfEqualStaysWaitAsInCrommelinsFormula(double load, int spaces) {
    Mean wait = runs(seed -> waitInRoom(seed, load, spaces, true));
    assertThat(wait.errorsFrom(waitOfEqualStays(load, spaces))).isLessThan(K);
    assertThat(wait.errorsFrom(waitOfEqualStays(1.05 * load, spaces))).isGreaterThan(K);
  }

  private static double waitInRoom(long seed, double load, int spaces, boolean sure) {
    double until = 100 + 20_000 / load;
    return new QueueInRoom(seed, spaces, load, 1, sure, true, 100, until).run().meanWait();
  }
}
