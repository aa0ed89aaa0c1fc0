package propcap.farm;

/** The moves of a tray that a grower writes in the notebook, in the order in which they come. */
public enum TrayMove implements Worded {
  SOWN,
  OFF_HEAT,
  POTTED_ON,
  MOVED_OUT,
  PLANTED_OUT;
}
