package propcap.study;

import java.util.Locale;

/** A question whose answer does not fit in memory; its message says what would. */
public final class TooLargeException extends RuntimeException {
  private static final double MIB = 1 << 20;

  /**
   * Part of the heap that may be filled with what is kept; the rest is for the work itself.
   * Planning default: 100,000 springs of the demonstration keep 135 MB and ran in 512 MB.
   */
  private static final double SHARE = 0.7;

  private TooLargeException(String message) {
    super(message);
  }

  /** Memory ran out all the same. */
  public static TooLargeException outOfMemory() {
    return new TooLargeException(
        String.format(
            Locale.ROOT,
            "The memory that Propcap has, %.0f MB, is not enough for this. Nothing was written. Give"
                + " it more, such as PROPCAP_OPTS=-Xmx%dg; or ask for one spring at a time, with"
                + " --threads 1, or for fewer springs",
            heap() / MIB,
            1 + (long) Math.ceil(heap() / MIB / 1024)));
  }

  private static double heap() {
    return Runtime.getRuntime().maxMemory();
  }

  /** How many springs fit of which so many bytes each are kept. */
  public static long fitting(long bytesASeason) {
    return (long) (SHARE * heap() / bytesASeason);
  }

  /**
   * Refuses what does not fit.
   *
   * @param bytesASeason that are kept of each spring
   */
  public static void check(int seasons, long bytesASeason) {
    long fits = fitting(bytesASeason);
    if (seasons > fits) {
      throw new TooLargeException(
          String.format(
              Locale.ROOT,
              "%,d springs take some %,.0f MB of memory, and Propcap has %,.0f MB: %,d fit. Ask for"
                  + " fewer, or give it more, such as PROPCAP_OPTS=-Xmx%dg",
              seasons,
              seasons * (double) bytesASeason / MIB,
              heap() / MIB,
              fits,
              1 + (long) Math.ceil(seasons * (double) bytesASeason / SHARE / MIB / 1024)));
    }
  }
}
