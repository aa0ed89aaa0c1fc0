package propcap.farm;

import java.util.Locale;

/** What a place is for. */
public enum PlaceKind {
  /** An open bench with heat from below: trays germinate on it in the light. */
  HEAT_BENCH,
  /** A closed, warm, damp room with shelves: trays germinate in the dark. */
  CHAMBER,
  /** A table in a house: trays grow on, and may germinate on it. */
  TABLE,
  /** The area outdoors where plants harden off before the beds. */
  HARDENING;

  /** The word used in files and reports, such as {@code heat-bench}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public boolean canGerminate() {
    return this != HARDENING;
  }
}
