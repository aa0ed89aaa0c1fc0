package propcap.evidence.germination;

import java.util.Collection;
import propcap.farm.CountedTray;

/** The seeds of some trays together, and those of them that were up by the last inspection. */
record Tally(int up, int seeds) {
  static Tally of(Collection<CountedTray> trays) {
    return new Tally(
        trays.stream().mapToInt(CountedTray::emerged).sum(),
        trays.stream().mapToInt(CountedTray::seeds).sum());
  }

  double share() {
    return (double) up / seeds;
  }

  /** Whether some came up and some did not. */
  boolean isMixed() {
    return up > 0 && up < seeds;
  }
}
