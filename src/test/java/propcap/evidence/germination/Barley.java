package propcap.evidence.germination;

import java.util.ArrayList;
import java.util.List;
import propcap.farm.CountedTray;

/**
 * Barley at several temperatures, 3 dishes of 50 seeds together: data set barley of the R package
 * drcSeedGerm (GPL-3), in its tutorial at stats4biology, sections 10 and 11.
 */
final class Barley {
  private Barley() {}

  static CountedTray at3() {
    return Trays.daily(3, "all", 150, 17, 0, 0, 0, 0, 0, 0, 0, 4, 18, 54, 26, 26, 8, 0, 3);
  }

  static CountedTray at15() {
    return Trays.daily(15, "all", 150, 17, 0, 0, 63, 71, 0, 0, 8);
  }

  static CountedTray at25() {
    return Trays.daily(25, "all", 150, 17, 6, 70, 53, 2, 1, 0, 1);
  }

  static List<CountedTray> upTo30() {
    List<CountedTray> trays = new ArrayList<>();
    trays.add(at3());
    trays.add(Trays.daily(7, "all", 150, 17, 0, 0, 0, 0, 0, 37, 29, 67, 2, 6, 1, 0, 0, 0, 0, 0, 1));
    trays.add(Trays.daily(10, "all", 150, 17, 0, 0, 5, 64, 2, 0, 61, 4, 3, 0, 1, 0, 0, 1));
    trays.add(at15());
    trays.add(at25());
    trays.add(Trays.daily(30, "all", 150, 17, 15, 68, 28, 3, 0, 0, 1));
    return trays;
  }
}
