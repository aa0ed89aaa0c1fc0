package propcap.study.order;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntUnaryOperator;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.study.order.Supplies.ForLot;
import propcap.study.order.Supplies.ForSowing;
import propcap.study.order.Supplies.Item;
import propcap.study.order.Supplies.Kind;
import propcap.study.statistics.Counts;

/** From trays to what is ordered for them: seed by lot, trays by cells, pots, mix, labels. */
final class SupplyList {
  private static final double LITRES_PER_M3 = 1000;

  private final double chance;
  private final List<ForSowing> sowings;
  private final List<TrayYields> yields;
  private final List<HouseUse> uses;
  private final List<ForLot> lots = new ArrayList<>();
  private final List<Item> items = new ArrayList<>();

  /**
   * Makes the list.
   *
   * @param yields of each season, if there is room
   * @param uses of each season in the house as it is, with the trays that are ordered
   */
  SupplyList(double chance, List<ForSowing> sowings, List<TrayYields> yields, List<HouseUse> uses) {
    this.chance = chance;
    this.sowings = sowings;
    this.yields = yields;
    this.uses = uses;
    byLot().values().forEach(this::addSeed);
    int trays = addTrays();
    Map<String, Integer> potTrays = addPots();
    addMix(potTrays);
    int ofPots = potTrays.values().stream().mapToInt(t -> t).sum();
    items.add(
        new Item(
            Kind.LABELS,
            "tray labels",
            trays + ofPots,
            "labels",
            text(
                "%,d trays sown + %,d trays of pots = %,d labels.",
                trays, ofPots, trays + ofPots)));
  }

  List<ForLot> lots() {
    return lots;
  }

  List<Item> items() {
    return items;
  }

  private Map<List<String>, List<Integer>> byLot() {
    return IntStream.range(0, sowings.size())
        .boxed()
        .collect(
            groupingBy(
                s -> List.of(sowings.get(s).crop().name(), sowings.get(s).sowing().lot()),
                LinkedHashMap::new,
                toList()));
  }

  private void addSeed(List<Integer> ofLot) {
    Crop crop = sowings.get(ofLot.get(0)).crop();
    String lot = sowings.get(ofLot.get(0)).sowing().lot();
    int trays = ofLot.stream().mapToInt(s -> sowings.get(s).ordered()).sum();
    int again = quantile(uses.stream().mapToInt(u -> sum(ofLot, u::again)));
    long perTray = (long) crop.cells() * crop.seedsPerCell();
    long seeds = (trays + again) * perTray;
    Double weight = crop.materials().gramsPer1000Seeds();
    Double grams = weight == null ? null : (Double) (seeds * weight / 1000);
    ForLot found = new ForLot(crop, lot, trays, again, seeds, grams);
    lots.add(found);
    String name = lot.equals(crop.name()) ? crop.name() : crop.name() + ", lot " + lot;
    items.add(new Item(Kind.SEED, name, seeds, "seeds", seedArithmetic(found, weight)));
  }

  private String seedArithmetic(ForLot lot, @Nullable Double weight) {
    String sown =
        text(
            "%s x %,d cells x %s = %,d seeds.",
            lot.again() == 0
                ? text("%,d trays", lot.trays())
                : text("(%,d trays + %,d sown again)", lot.trays(), lot.again()),
            lot.crop().cells(),
            lot.crop().seedsPerCell() == 1 ? "1 seed" : lot.crop().seedsPerCell() + " seeds",
            lot.seeds());
    return weight == null || lot.grams() == null
        ? sown
        : sown + text(" At %s g a thousand: %s g.", plain(weight), amount(lot.grams()));
  }

  /** Trays by how many cells they have, those sown again included. */
  private int addTrays() {
    Map<Integer, List<ForLot>> byCells =
        lots.stream().collect(groupingBy(l -> l.crop().cells(), TreeMap::new, toList()));
    byCells.forEach(
        (cells, those) -> {
          Map<String, Integer> byCrop = new LinkedHashMap<>();
          those.forEach(l -> byCrop.merge(l.crop().name(), l.trays() + l.again(), Integer::sum));
          int trays = byCrop.values().stream().mapToInt(t -> t).sum();
          items.add(
              new Item(
                  Kind.TRAYS,
                  "trays of " + cells + " cells",
                  trays,
                  "trays",
                  sumOf(byCrop, trays, "trays") + " Those that come back clean can go out again."));
        });
    return lots.stream().mapToInt(l -> l.trays() + l.again()).sum();
  }

  /** Trays of pots by crop. */
  private Map<String, Integer> addPots() {
    Map<String, Integer> potTrays = new LinkedHashMap<>();
    for (Crop crop : crops()) {
      List<Integer> ofCrop =
          IntStream.range(0, sowings.size())
              .filter(s -> sowings.get(s).crop().equals(crop))
              .boxed()
              .toList();
      int trays = quantile(uses.stream().mapToInt(u -> sum(ofCrop, u::potTrays)));
      int withRoom =
          quantile(
              yields.stream()
                  .mapToInt(y -> sum(ofCrop, s -> y.potTrays(s, sowings.get(s).ordered()))));
      if (trays > 0 || withRoom > 0) {
        potTrays.put(crop.name(), trays);
        items.add(pots(crop, trays, withRoom));
      }
    }
    return potTrays;
  }

  private Item pots(Crop crop, int trays, int withRoom) {
    int each = crop.pottingOn().potsPerTray();
    long pots = trays * (long) each;
    String used =
        trays == 0
            ? text("The house as it is uses none in %s of the springs.", percent(chance))
            : text(
                "%,d trays of pots x %d pots = %,d pots: the house as it is uses no more in %s of"
                    + " the springs.",
                trays, each, pots, percent(chance));
    String roomy =
        withRoom == trays ? "" : text(" If there were room for all, %,d.", withRoom * (long) each);
    return new Item(Kind.POTS, "pots for " + crop.name(), pots, "pots", used + roomy);
  }

  private void addMix(Map<String, Integer> potTrays) {
    double all = 0;
    for (Crop crop : crops()) {
      int trays =
          lots.stream()
              .filter(l -> l.crop().equals(crop))
              .mapToInt(l -> l.trays() + l.again())
              .sum();
      PottingMix tray = PottingMix.ofTray(crop);
      double litres = trays * tray.litres();
      String arithmetic = text("%,d trays x %s", trays, tray.words());
      int pots = potTrays.getOrDefault(crop.name(), 0) * crop.pottingOn().potsPerTray();
      if (pots > 0) {
        PottingMix pot = PottingMix.ofPot(crop);
        litres += pots * pot.litres();
        arithmetic += text(" + %,d pots x %s", pots, pot.words());
      }
      all += litres;
      items.add(
          new Item(
              Kind.MIX,
              "mix for " + crop.name(),
              litres,
              "l",
              arithmetic + text(" = %s l.", amount(litres))));
    }
    items.add(
        new Item(
            Kind.MIX,
            "mix in all",
            all,
            "l",
            text(
                "%s l = %.2f m3, loose as it fills the cells; bags are pressed, see theirs.",
                amount(all), all / LITRES_PER_M3)));
  }

  private List<Crop> crops() {
    return sowings.stream().map(ForSowing::crop).distinct().toList();
  }

  private static int sum(List<Integer> sowings, IntUnaryOperator count) {
    return sowings.stream().mapToInt(s -> count.applyAsInt(s)).sum();
  }

  /** The number that is not exceeded in so large a share of the seasons as the chance. */
  private int quantile(IntStream counts) {
    Counts counted = Counts.of(counts);
    return counted.size() == 0 ? 0 : counted.reached(chance);
  }

  private static String sumOf(Map<String, Integer> parts, int sum, String unit) {
    List<String> terms = new ArrayList<>();
    parts.forEach((name, count) -> terms.add(text("%s %,d", name, count)));
    return String.join(" + ", terms) + text(" = %,d %s.", sum, unit);
  }

  private static String amount(double amount) {
    return amount >= 10 ? text("%,.0f", amount) : text("%.1f", amount);
  }

  static String plain(double number) {
    return BigDecimal.valueOf(number).stripTrailingZeros().toPlainString();
  }

  private static String percent(double share) {
    return plain(Math.round(share * 10_000) / 100.0) + " %";
  }

  private static String text(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }
}
