package propcap.chance;

/** The luck of one season: its weather year and its trays. */
public final class SeasonLuck {
  /** The luck of trays that are sown again. */
  @FunctionalInterface
  public interface Again {
    /**
     * The luck of one attempt.
     *
     * @param sowing place in the plan, from 0
     * @param tray number within the sowing, from 0
     * @param attempt 1 for the first time that it is sown again
     */
    TrayLuck of(int sowing, int tray, int attempt);
  }

  private final int weatherYear;
  private final TrayLuck[][] trays;
  private final Again again;

  /**
   * A season's luck, given whole.
   *
   * @param weatherYear place of the year in the scenario's list, from 0
   * @param trays by sowing, in the plan's order, and tray
   */
  public SeasonLuck(int weatherYear, TrayLuck[][] trays, Again again) {
    this.weatherYear = weatherYear;
    this.trays = trays;
    this.again = again;
  }

  public int weatherYear() {
    return weatherYear;
  }

  /** The luck of a tray; attempt 0 is its first sowing. */
  public TrayLuck tray(int sowing, int tray, int attempt) {
    return attempt == 0 ? trays[sowing][tray] : again.of(sowing, tray, attempt);
  }
}
