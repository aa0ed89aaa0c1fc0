package propcap.season;

/** What comes first of things that happen at the same time. */
enum EventPriority {
  /** The people's round. */
  ROUND,
  /** The season ends after everything that happens on its last instant. */
  END;

  /** The priority of such an event in the event list: the lowest is taken first. */
  double priority() {
    return ordinal();
  }
}
