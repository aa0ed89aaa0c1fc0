package propcap.evidence.germination;

import java.util.ArrayList;
import java.util.List;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;

/** Seedlings that showed after one inspection, or the sowing, and by the next. */
record FoundSeedlings(double fromDays, double toDays, int seedlings) {
  /** One for each inspection of a tray. */
  static List<FoundSeedlings> of(CountedTray tray) {
    List<FoundSeedlings> found = new ArrayList<>();
    Inspection before = new Inspection(0, 0);
    for (Inspection look : tray.inspections()) {
      found.add(new FoundSeedlings(before.days(), look.days(), look.emerged() - before.emerged()));
      before = look;
    }
    return found;
  }
}
