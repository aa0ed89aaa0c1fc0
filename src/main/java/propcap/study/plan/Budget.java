package propcap.study.plan;

import java.util.function.LongSupplier;

/** How long a search may go on. */
@FunctionalInterface
public interface Budget {
  /**
   * The share that is spent, 1 or more at the end.
   *
   * @param tries plans tried so far
   */
  double spent(int tries);

  /** So many plans, whatever the time: the same answer on any machine. */
  static Budget ofTries(int most) {
    return tries -> tries / (double) most;
  }

  /**
   * So long by a clock, from now on.
   *
   * @param nanos the clock, such as {@code System::nanoTime}
   */
  static Budget ofSeconds(double most, LongSupplier nanos) {
    long start = nanos.getAsLong();
    return tries -> (nanos.getAsLong() - start) / (1e9 * most);
  }
}
