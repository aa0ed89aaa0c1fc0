package propcap.chance;

/** The purposes of a tray's uniforms, one each, in the order of its block. */
public enum DrawPurpose {
  /** The tray's germination rate around its lot's. */
  RATE,
  /** How many cells fill. */
  FILLS,
  /** When as many cells show as it takes to leave the heat. */
  READY,
  /** How many more show after that. */
  LATER,
  /** How many show before that. */
  EARLIER,
  /** How fast the tray grows on. */
  PACE,
  /** Plants lost growing on to no one cause. */
  LOSS,
  /** Whether damping-off breaks out. */
  OUTBREAK,
  /** How bad the outbreak is. */
  SEVERITY,
  /** Plants lost to the outbreak. */
  DAMPED_OFF,
  /** Seedlings lost to stretching. */
  STRETCHED,
  /** Plants lost while the plug was held too long on its table. */
  OVERHELD_PLUG,
  /** Plants lost in the move to pots. */
  POTTING,
  /** Plants lost while the pot was held too long on its table. */
  OVERHELD_POT,
  /** Plants lost to frost. */
  FROST,
  /** Plants lost hardening off to no one cause. */
  HARDENING,
  /** Plants lost while the plug or the pot was held too long outside. */
  OVERHELD_OUTSIDE;

  /** Uniforms a tray. */
  static final int COUNT = values().length;
}
