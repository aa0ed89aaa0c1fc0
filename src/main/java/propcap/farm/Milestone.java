package propcap.farm;

import java.util.Locale;

/** The moves of a tray that a grower writes in the notebook, in the order in which they come. */
public enum Milestone {
  SOWN,
  OFF_HEAT,
  POTTED_ON,
  MOVED_OUT,
  PLANTED_OUT;

  /** The word used in files and reports, such as {@code off-heat}. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
