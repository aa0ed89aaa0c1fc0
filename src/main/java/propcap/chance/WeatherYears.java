package propcap.chance;

/**
 * Deals the years of a weather record to numbered seasons: of Y years each block of Y seasons holds
 * every year once, in an order drawn from the seed. For one thread; asked in rising order it draws
 * each block once.
 */
public final class WeatherYears {
  private final RandomStream stream;
  private final int[] order;
  private int block = -1;

  /**
   * The years of a record.
   *
   * @param years how many there are, at least one
   */
  public WeatherYears(long seed, int years) {
    stream = new RandomStream(seed, "weather");
    order = new int[years];
  }

  /** The year that a season lives in, by its place in the record, both from 0. */
  public int of(int season) {
    if (season / order.length != block) {
      block = season / order.length;
      deal();
    }
    return order[season % order.length];
  }

  /** Every order is as likely (Fisher and Yates 1938, Statistical Tables, inside out). */
  private void deal() {
    stream.toSeason(block);
    for (int i = 0; i < order.length; i++) {
      int j = (int) (stream.next() * (i + 1));
      order[i] = order[j];
      order[j] = i;
    }
  }
}
