package propcap.files;

import java.nio.file.Path;
import java.util.List;
import propcap.farm.Scenario;
import propcap.files.text.FaultsException;

/** A whole set of files with money, in {@code priced.yaml}, to be changed by a test. */
final class PricedFolder {
  private static final String PRICED =
      """
      extends: scenario.yaml
      money:
        currency: EUR
        plants:
          tomato: {worth: 0.95, late: 0.40, short: 1.20, tray: 6.50}
          default: {worth: 0.30, late: 0.10, short: 0.45}
        tray: 1.10
        pot-tray: 2.40 EUR
        discount: 6 %
        sell-surplus: true
      places:
        - {name: Chamber, cost: {buy: 5200, lasts: 12 years, keep: 150/year, run: 3.60/day}}
      """;

  private final GrowersFolder folder;

  PricedFolder(Path path) {
    folder = new GrowersFolder(path);
    folder.write("priced.yaml", PRICED);
  }

  Scenario read() throws FaultsException {
    return folder.read("priced.yaml");
  }

  /** Reads a scenario that extends the priced one. */
  Scenario extended(String changes) throws FaultsException {
    folder.write("other.yaml", "extends: priced.yaml\n" + changes);
    return folder.read("other.yaml");
  }

  /** As in {@link GrowersFolder}, of the priced scenario. */
  String change(String old, String now) {
    return folder.change("priced.yaml", old, now);
  }

  List<String> faults() {
    return folder.faults("priced.yaml");
  }

  GrowersFolder files() {
    return folder;
  }
}
