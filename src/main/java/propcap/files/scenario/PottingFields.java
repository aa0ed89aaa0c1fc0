package propcap.files.scenario;

import static propcap.files.text.Quantity.DAYS;
import static propcap.files.text.Quantity.PERCENT;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import propcap.farm.Crop.PottingOn;
import propcap.files.text.Fields;

/** How a crop is potted on, as it is written. */
final class PottingFields {
  static final List<String> KEYS = List.of("when", "pots-per-tray", "takes", "holds", "loss");

  private static final int MOST_POTS = 10_000;

  private PottingFields() {}

  static Optional<PottingOn> read(Fields fields) {
    Optional<PottingOn.When> when =
        fields.choice("when", List.of(PottingOn.When.values()), PottingOn.When::word);
    boolean needed = when.isPresent() && when.get() != PottingOn.When.NEVER;
    List<String> missing = new ArrayList<>(List.of("pots-per-tray", "takes", "holds"));
    missing.removeIf(fields::has);
    if (needed && !missing.isEmpty()) {
      fields.fault(
          fields.spot("when"),
          "potting on " + fields.written("when") + " without " + String.join(", ", missing),
          "pots-per-tray, takes and holds, or when: never");
    }
    int pots = fields.count("pots-per-tray", 1, MOST_POTS, 1);
    double takes = fields.number("takes", DAYS, 0);
    double holds = fields.number("holds", DAYS, 0);
    double loss = fields.number("loss", PERCENT, PottingOn.DEFAULT_LOSS);
    if (!fields.sound() || when.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        needed ? new PottingOn(when.get(), pots, takes, holds, loss) : PottingOn.NEVER);
  }
}
