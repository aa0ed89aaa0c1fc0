package propcap.farm;

/**
 * A tray that did by the log what by the plan's figures next to no tray does: a row is missing or
 * wrong, or the figures are.
 *
 * @param sowing its sowing's id
 * @param days that it stood where it was, up to the move or to today
 * @param usual days after which every other such tray is due to leave
 */
public record UnlikelyTray(String sowing, String tray, Kind kind, int days, int usual) {
  /** What is unlikely. */
  public enum Kind {
    /** It is in the heat still, where there was room to leave. */
    STILL_IN_HEAT,
    /** It left the heat, though there was room long before. */
    LATE_OFF_HEAT,
    /** It left the heat before enough seedlings can have shown. */
    EARLY_OFF_HEAT,
    /** It has not moved on from its table, though there was room to. */
    STILL_ON_TABLE,
    /** It moved on from its table, though there was room long before. */
    LATE_FROM_TABLE,
    /** It moved on from its table before it can have been ready. */
    EARLY_FROM_TABLE
  }
}
