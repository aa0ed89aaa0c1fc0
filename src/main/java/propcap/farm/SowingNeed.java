package propcap.farm;

/**
 * A line of the sowing plan of which it is not written when to sow, or how many trays: that is to
 * be found from the plants needed and the bed's dates.
 *
 * @param sowing its id
 * @param isDateOpen whether the day to sow is to be found
 * @param areTraysOpen whether the trays are
 */
public record SowingNeed(String sowing, boolean isDateOpen, boolean areTraysOpen) {
  public SowingNeed {
    Checks.require(isDateOpen || areTraysOpen, sowing + " has a date and trays");
  }
}
