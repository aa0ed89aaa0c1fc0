package propcap.files.scenario;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import propcap.farm.Place;
import propcap.files.scenario.Amounts.Due;
import propcap.files.text.Fields;
import propcap.files.text.Quantity;

/** What a place costs, as it is written. */
final class CostFields {
  static final List<String> KEYS = List.of("buy", "lasts", "keep", "run");

  private CostFields() {}

  static Optional<Place.Cost> read(Fields fields, Amounts amounts) {
    BigDecimal buy = amounts.read(fields, "buy", Due.ONCE);
    double lastsYears = fields.positive("lasts", Quantity.YEARS);
    BigDecimal keep = amounts.read(fields, "keep", Due.EACH_YEAR, BigDecimal.ZERO);
    BigDecimal run = amounts.read(fields, "run", Due.EACH_DAY, BigDecimal.ZERO);
    return fields.made(() -> new Place.Cost(buy, lastsYears, keep, run));
  }
}
