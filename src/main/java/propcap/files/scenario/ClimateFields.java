package propcap.files.scenario;

import java.util.List;
import java.util.Optional;
import propcap.farm.Climate;
import propcap.files.text.Fields;
import propcap.files.text.Quantity;

/** A place's climate as it is written: one of three sorts, never a mixture. */
final class ClimateFields {
  static final List<String> KEYS = List.of("constant", "heat-to", "lift", "vent-at", "outdoor");

  private static final String SORTS =
      "one of {constant: 22 C}, {heat-to: 14 C, lift: 5, vent-at: 26 C}, {outdoor: true}";

  private ClimateFields() {}

  static Optional<Climate> read(Fields fields) {
    List<String> given = KEYS.stream().filter(fields::has).toList();
    if (given.isEmpty()) {
      if (fields.sound()) {
        fields.fault(fields.at(), "a climate that says nothing", SORTS);
      }
      return Optional.empty();
    }
    String first = given.get(0);
    for (String other : given) {
      if (!sort(other).equals(sort(first))) {
        fields.fault(fields.spot(other), other + " beside " + first + " in a climate", SORTS);
      }
    }
    return switch (sort(first)) {
      case "constant" -> constant(fields);
      case "outdoor" -> outdoor(fields);
      default -> heated(fields);
    };
  }

  /** Between 0 and 40 C plants are raised: common practice. */
  private static void doubt(Fields fields, String key, double tempC) {
    if (tempC < 0 || tempC > 40) {
      fields.doubt(
          key, tempC < 0 ? "colder than ice" : "hotter than seedlings bear", "21 C or 70 F");
    }
  }

  private static String sort(String key) {
    return key.equals("lift") || key.equals("vent-at") ? "heat-to" : key;
  }

  private static Optional<Climate> constant(Fields fields) {
    double tempC = fields.number("constant", Quantity.TEMPERATURE);
    doubt(fields, "constant", tempC);
    return fields.made(() -> new Climate.Constant(tempC));
  }

  private static Optional<Climate> outdoor(Fields fields) {
    return fields
        .text(
            "outdoor",
            text -> Optional.of(text).filter(t -> t.text().strip().equals("true")),
            "true, or another climate")
        .flatMap(isTrue -> fields.made(Climate.Outdoor::new));
  }

  private static Optional<Climate> heated(Fields fields) {
    double heatToC = fields.number("heat-to", Quantity.TEMPERATURE);
    doubt(fields, "heat-to", heatToC);
    double liftC = fields.number("lift", Quantity.LIFT, 0);
    double ventAtC =
        fields.number("vent-at", Quantity.TEMPERATURE, Climate.Heated.DEFAULT_VENT_AT_C);
    if (ventAtC < heatToC) {
      fields.wrongPair(
          "vent-at", "heat-to", "below", "vent-at (35 C where not given) at or above heat-to");
    }
    return fields.made(() -> new Climate.Heated(heatToC, liftC, ventAtC));
  }
}
