package propcap.farm;

/** What a place is for. */
public enum PlaceKind implements Worded {
  /** An open bench with heat from below: trays germinate on it in the light. */
  HEAT_BENCH,
  /** A closed, warm, damp room with shelves: trays germinate in the dark. */
  CHAMBER,
  /** A table in a house: trays grow on, and may germinate on it. */
  TABLE,
  /** The area outdoors where plants harden off before the beds. */
  HARDENING;

  public boolean canGerminate() {
    return this != HARDENING;
  }
}
