package propcap.files.scenario;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import propcap.farm.Prices;
import propcap.farm.Prices.PlantPrices;
import propcap.files.scenario.Amounts.Due;
import propcap.files.text.Fields;
import propcap.files.text.Node;
import propcap.files.text.Quantity;

/** What plants and trays are worth and cost, as it is written. */
final class MoneyFields {
  static final List<String> KEYS =
      List.of("currency", "plants", "tray", "pot-tray", "discount", "sell-surplus", "hour");

  /** Stands for the crops without an entry of their own. */
  private static final String DEFAULT = "default";

  private static final Pattern CURRENCY = Pattern.compile(Amounts.CURRENCY);

  private final Fields fields;
  private final Layers layers;
  private final Node.@Nullable Text currency;
  private final Amounts amounts;

  MoneyFields(Fields fields, Layers layers) {
    this.fields = fields;
    this.layers = layers;
    this.currency = currency(fields);
    this.amounts = new Amounts(currency, layers);
  }

  private static Node.@Nullable Text currency(Fields fields) {
    return fields
        .text(
            "currency",
            text -> Optional.of(text).filter(t -> CURRENCY.matcher(t.text().strip()).matches()),
            "a currency such as EUR")
        .orElse(null);
  }

  /** The reader of all amounts of the scenario. */
  Amounts amounts() {
    return amounts;
  }

  /**
   * Reads the prices.
   *
   * @return empty where any of them could not be read
   */
  Optional<Prices> read(CropList crops, SowingPlan plan) {
    Map<String, PlantPrices> byCrop = new HashMap<>();
    Optional<Fields> plants = fields.map("plants", "the prices", priced(crops));
    if (plants.isPresent()) {
      for (String name : plants.get().known().entries().keySet()) {
        plantPrices(plants.get(), name).ifPresent(prices -> byCrop.put(name, prices));
      }
      sownCropsHavePrices(plants.get(), crops, plan);
    }
    PlantPrices otherwise = byCrop.remove(DEFAULT);
    BigDecimal tray = amounts.read(fields, "tray", Due.ONCE);
    BigDecimal potTray = amounts.read(fields, "pot-tray", Due.ONCE);
    double discount = fields.number("discount", Quantity.PERCENT, 0);
    boolean sellSurplus =
        fields.has("sell-surplus")
            && fields.choice("sell-surplus", List.of(true, false), String::valueOf).orElse(false);
    BigDecimal hour = amounts.read(fields, "hour", Due.ONCE, BigDecimal.ZERO);
    if (currency == null) {
      return Optional.empty();
    }
    String shown = currency.text().strip();
    return fields.made(
        () -> new Prices(shown, byCrop, otherwise, tray, potTray, discount, sellSurplus, hour));
  }

  /** The names that may have prices; where crops could not be read, any may be one of them. */
  private List<String> priced(CropList crops) {
    List<String> names = new ArrayList<>(List.of(DEFAULT));
    names.addAll(crops.byName().keySet());
    if (crops.isOpen()) {
      fields
          .known()
          .entry("plants")
          .ifPresent(
              e -> {
                if (e.value() instanceof Node.Keyed written) {
                  names.addAll(written.entries().keySet());
                }
              });
    }
    return names;
  }

  private Optional<PlantPrices> plantPrices(Fields plants, String name) {
    String owner = name.equals(DEFAULT) ? "the default prices" : name + "'s prices";
    return plants
        .map(name, owner, List.of("worth", "late", "short", "tray"))
        .flatMap(
            one -> {
              BigDecimal worth = amounts.read(one, "worth", Due.ONCE);
              BigDecimal late = amounts.read(one, "late", Due.ONCE);
              BigDecimal lacking = amounts.read(one, "short", Due.ONCE);
              BigDecimal tray = one.has("tray") ? amounts.read(one, "tray", Due.ONCE) : null;
              return one.made(() -> new PlantPrices(worth, late, lacking, tray));
            });
  }

  /**
   * What is sown needs a price. The fault lies with the prices, unless a scenario that changes them
   * sows another crop.
   */
  private void sownCropsHavePrices(Fields plants, CropList crops, SowingPlan plan) {
    if (plants.has(DEFAULT) || plants.known().open()) {
      return;
    }
    Set<String> seen = new HashSet<>();
    for (SowingPlan.Line line : plan.lines()) {
      String crop = line.crop();
      if (!crops.byName().containsKey(crop) || plants.has(crop) || !seen.add(crop)) {
        continue;
      }
      String right = "an entry for " + crop + " in plants, or for default";
      if (layers.isLater(line.fields().spot("crop"), plants.at())) {
        line.fields().wrong("crop", "for which money has no prices", right);
      } else {
        plants.fault(plants.at(), "no prices for " + crop + ", which is sown", right);
      }
    }
  }
}
