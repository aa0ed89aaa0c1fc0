package propcap.report.order;

import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.Csv;
import propcap.report.kit.Json;
import propcap.report.kit.Money;
import propcap.study.Supplies;
import propcap.study.Supplies.ByMoney;
import propcap.study.Supplies.ForLot;
import propcap.study.Supplies.ForSowing;
import propcap.study.Supplies.Item;

/** The order list, for other programs and for a spreadsheet. */
final class OrderFiles {
  private OrderFiles() {}

  static String json(Supplies supplies, String version) {
    Json json =
        new Json()
            .put("scenario", supplies.scenario().name())
            .put("version", version)
            .put("seasons", supplies.seasons())
            .put("seed", supplies.settings().seed())
            .put("chance", supplies.chance());
    Money.of(supplies.scenario()).ifPresent(m -> json.put("currency", m.currency()));
    return json.put("sowings", Json.each(supplies.sowings(), OrderFiles::sowing))
        .put("lots", Json.each(supplies.lots(), OrderFiles::lot))
        .put("items", Json.each(supplies.items(), OrderFiles::item))
        .text();
  }

  private static Json sowing(ForSowing s) {
    return new Json()
        .put("sowing", s.sowing().id())
        .put("crop", s.crop().name())
        .put("needed", s.sowing().plantsNeeded())
        .put("planned", s.sowing().trays())
        .put("trays", number(s.trays()))
        .put("tried", s.tried())
        .put("ordered", s.ordered())
        .put("chanceAsPlanned", s.chanceAsPlanned())
        .put("chanceInHouse", s.chanceInHouse())
        .put("chanceAtMost", s.most())
        .put("plantsPerTray", s.plantsPerTray())
        .put("traysByMean", number(s.traysByMean()))
        .put("chanceByMean", s.chanceByMean())
        .put("cellsBySeed", number(s.cellsBySeed()))
        .put("money", money(s.money()));
  }

  private static @Nullable Json money(@Nullable ByMoney money) {
    return money == null
        ? null
        : new Json()
            .put("lacking", money.costs().lacking())
            .put("surplus", money.costs().surplus())
            .put("criticalRatio", money.costs().criticalRatio())
            .put("trays", number(money.trays()));
  }

  /** JSON knows one kind of number; what there is not stays away. */
  private static @Nullable Double number(@Nullable Integer number) {
    return number == null ? null : Double.valueOf(number);
  }

  private static Json lot(ForLot l) {
    return new Json()
        .put("crop", l.crop().name())
        .put("lot", l.lot())
        .put("trays", l.trays())
        .put("again", l.again())
        .put("seeds", l.seeds())
        .put("grams", l.grams());
  }

  private static Json item(Item i) {
    return new Json()
        .put("kind", i.kind().word())
        .put("what", i.what())
        .put("amount", i.amount())
        .put("unit", i.unit())
        .put("arithmetic", i.arithmetic());
  }

  /** A row for each thing to order. */
  static String csv(Supplies supplies) {
    Csv table = new Csv();
    table.row(List.of("kind", "what", "amount", "unit", "grams", "arithmetic"));
    for (int i = 0; i < supplies.items().size(); i++) {
      Item item = supplies.items().get(i);
      Double grams = i < supplies.lots().size() ? supplies.lots().get(i).grams() : null;
      table.row(
          List.of(item.kind().word(), item.what()),
          Csv.numbers(item.amount()),
          List.of(item.unit(), grams == null ? "" : Csv.number(grams), item.arithmetic()));
    }
    return table.text();
  }
}
