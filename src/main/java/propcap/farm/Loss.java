package propcap.farm;

/** Why a cell that was sown is not a plant in the bed. */
public enum Loss implements Worded {
  /** No seed of the cell came up. */
  NO_SEEDLING,
  /** The cell's seedling showed after the stand was counted. */
  TOO_LATE,
  /** Too little of the tray was up when it was pulled, and all of it was thrown out. */
  FAILED_TRAY,
  /** The seedling grew leggy, waiting to leave the heat. */
  STRETCHED,
  /** Lost on the table, damping-off included. */
  GROWING_ON,
  /** Kept beyond its time in the cell or the pot. */
  OVERHELD,
  /** Lost in the move to pots. */
  POTTING,
  /** Killed by a cold night while hardening off. */
  FROST,
  /** Lost while hardening off, to no one cause. */
  HARDENING,
  /** Thrown out because the bed was no longer to be had. */
  DUMPED,
  /** Still inside when the season ended. */
  UNPLANTED;
}
