package propcap.report.order;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.Head;
import propcap.report.kit.Json;
import propcap.report.kit.Money;
import propcap.report.kit.Sheet;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.order.Supplies;
import propcap.study.order.Supplies.ByMoney;
import propcap.study.order.Supplies.ForLot;
import propcap.study.order.Supplies.ForSowing;
import propcap.study.order.Supplies.Item;
import propcap.study.order.Supplies.Kind;

/** The order list as tables. */
record OrderTables(Supplies supplies) {
  /** A thing to order; of seed, for which lot. */
  private record Ordered(Item item, @Nullable ForLot lot) {}

  private static final Table<ByMoney> MONEY =
      new Table<ByMoney>()
          .json("lacking", m -> m.costs().lacking())
          .json("surplus", m -> m.costs().surplus())
          .json("criticalRatio", m -> m.costs().criticalRatio())
          .json("trays", m -> number(m.trays()));

  private static final Table<ForLot> LOT =
      new Table<ForLot>()
          .json("crop", l -> l.crop().name())
          .json("lot", ForLot::lot)
          .json("trays", ForLot::trays)
          .json("again", ForLot::again)
          .json("seeds", ForLot::seeds)
          .json("grams", ForLot::grams);

  private static final Table<Ordered> ITEM =
      new Table<Ordered>("What", o -> o.item.what())
          .file("kind", o -> o.item.kind())
          .file("what", o -> o.item.what())
          .file("amount", o -> o.item.amount())
          .cell("Amount", "", o -> Cell.of(OrderWords.amount(o.item)).strongIf(true))
          .file("unit", o -> o.item.unit())
          .csv("grams", o -> o.lot == null ? null : o.lot.grams())
          .file("arithmetic", o -> o.item.arithmetic())
          .words("How", o -> o.item.arithmetic());

  private record Question(double chance, Optional<String> currency) {}

  private record Safe(int asPlanned, int asOrdered, int withRoom, int lackingRoom) {}

  private record Results(Safe safe, List<?> sowings, List<?> lots, List<?> items) {}

  String json(String version) {
    return Json.text(
        Head.of(supplies.scenario(), version, supplies.seasons(), supplies.settings()),
        new Question(supplies.chance(), Money.currency(supplies.scenario())),
        new Results(
            new Safe(
                supplies.safe(),
                supplies.safeAsOrdered(),
                supplies.safeWithRoom(),
                supplies.lackingRoom()),
            sowings().objects(supplies.sowings()),
            LOT.objects(supplies.lots()),
            ITEM.objects(items())));
  }

  /** JSON knows one kind of number; what there is not stays away. */
  private static @Nullable Double number(@Nullable Integer number) {
    return number == null ? null : Double.valueOf(number);
  }

  private List<Ordered> items() {
    List<ForLot> lots = supplies.lots();
    return IntStream.range(0, supplies.items().size())
        .mapToObj(i -> new Ordered(supplies.items().get(i), i < lots.size() ? lots.get(i) : null))
        .toList();
  }

  /** A row for each thing to order. */
  String csv() {
    return ITEM.csv(items());
  }

  Sheet seed() {
    return new Table<ForLot>(
            "Crop",
            l -> l.crop().name(),
            l -> l.lot().equals(l.crop().name()) ? "" : "lot " + l.lot())
        .cell("Seeds", "", l -> Cell.of(Words.count((double) l.seeds())).strongIf(true))
        .number("Weight", "", l -> OrderWords.weight(l.grams()))
        .words("How", l -> supplies.items().get(supplies.lots().indexOf(l)).arithmetic())
        .sheet("Seed, by lot.", "", supplies.lots());
  }

  Sheet others() {
    return ITEM.sheet(
        "Trays, pots, mix and labels.",
        "Reuse what you have; the list has what is used.",
        items().stream().filter(o -> o.item.kind() != Kind.SEED).toList());
  }

  /** How many trays each sowing takes, and with what chance. */
  Table<ForSowing> sowings() {
    return new Table<ForSowing>("Sowing", s -> s.sowing().id())
        .json("sowing", s -> s.sowing().id())
        .json("crop", s -> s.crop().name())
        .json("needed", s -> s.sowing().plantsNeeded())
        .number("Needed", "plants", s -> Words.count(s.sowing().plantsNeeded()))
        .json("planned", s -> s.sowing().trays())
        .number("From a tray", "mean, plants", s -> Words.amount(s.plantsPerTray()))
        .json("trays", s -> number(s.trays()))
        .cell("Trays", "for " + Words.given(supplies.chance()), OrderTables::trays)
        .json("tried", ForSowing::tried)
        .json("ordered", ForSowing::ordered)
        .cell(
            "Planned",
            "trays",
            s -> Cell.of(Words.count(s.sowing().trays())).strongIf(s.trays() == null))
        .json("chanceAsPlanned", ForSowing::chanceAsPlanned)
        .number("Chance", "as planned, with room", s -> Words.chance(s.chanceAsPlanned()))
        .json("chanceInHouse", ForSowing::chanceInHouse)
        .number("Chance", "as planned, in the house", s -> Words.chance(s.chanceInHouse()))
        .json("chanceAtMost", ForSowing::most)
        .json("plantsPerTray", ForSowing::plantsPerTray)
        .json("traysByMean", s -> number(s.traysByMean()))
        .json("chanceByMean", ForSowing::chanceByMean)
        .cell("By the mean", "trays, chance", OrderTables::byMean)
        .json("cellsBySeed", s -> number(s.cellsBySeed()))
        .json("money", s -> MONEY.object(s.money()));
  }

  private static Cell trays(ForSowing s) {
    return s.trays() == null
        ? Cell.of("–", "at most " + Words.chance(s.most()))
        : Cell.of(Words.count(s.trays())).strongIf(true);
  }

  private static Cell byMean(ForSowing s) {
    Double chance = s.chanceByMean();
    return chance == null
        ? Cell.NONE
        : Cell.of(OrderWords.orNone(s.traysByMean()), Words.chance(chance));
  }

  /** What the seed alone asks for, and what money says. */
  Table<ForSowing> risk() {
    Optional<String> currency = Money.currency(supplies.scenario());
    String aPlant = currency.orElse("") + " a plant";
    return new Table<ForSowing>("Sowing", s -> s.sowing().id())
        .number("Cells", "by seed alone", s -> OrderWords.orNone(s.cellsBySeed()))
        .number("Cells", "ordered", s -> Words.count((double) s.ordered() * s.crop().cells()))
        .when(
            currency.isPresent(),
            t ->
                t.number("Lacking", aPlant, s -> of(s, m -> cents(m.costs().lacking())))
                    .number("Too many", aPlant, s -> of(s, m -> cents(m.costs().surplus())))
                    .number(
                        "Critical ratio",
                        "",
                        s -> of(s, m -> Words.percent(m.costs().criticalRatio())))
                    .number("Trays", "by money", s -> of(s, OrderWords::byMoney))
                    .number(
                        "Trays",
                        "for " + Words.given(supplies.chance()),
                        s -> OrderWords.orNone(s.trays())));
  }

  private static String of(ForSowing sowing, Function<ByMoney, String> text) {
    return sowing.money() == null ? "–" : text.apply(sowing.money());
  }

  private static String cents(double amount) {
    return String.format(Locale.ENGLISH, "%.2f", Words.finite(amount));
  }
}
