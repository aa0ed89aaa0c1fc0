package propcap.report.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Money;
import propcap.report.kit.Part;
import propcap.report.kit.Sheet;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Sheet.Column;
import propcap.report.kit.Sheet.Row;
import propcap.report.kit.Words;
import propcap.study.Supplies;
import propcap.study.Supplies.ByMoney;
import propcap.study.Supplies.ForLot;
import propcap.study.Supplies.ForSowing;
import propcap.study.Supplies.Kind;

/** The page of what to order for the season. */
final class OrderPage {
  private final Supplies supplies;
  private final boolean hasMoney;

  private OrderPage(Supplies supplies) {
    this.supplies = supplies;
    this.hasMoney = supplies.scenario().prices() != null;
  }

  static AnswerPage of(Supplies supplies, String version) {
    return new OrderPage(supplies).page(version);
  }

  private AnswerPage page(String version) {
    List<Fact> facts =
        new ArrayList<>(
            Fact.of(supplies.scenario(), Words.count(supplies.seasons()), supplies.settings()));
    facts.add(new Fact("Chance asked for", Words.given(supplies.chance())));
    List<String> verdicts = new ArrayList<>(List.of(OrderWords.verdict(supplies)));
    OrderWords.beyond(supplies).ifPresent(verdicts::add);
    Part list =
        new Part(
            "order",
            "What to order",
            verdicts,
            List.of(OrderWords.changes(supplies)),
            List.of(),
            List.of(seed(), others()));
    Part trays =
        new Part(
            "trays", "How many trays, and why", List.of(), List.of(), List.of(), sowingSheets());
    return new AnswerPage(
        supplies.scenario().name(),
        "The order list",
        facts,
        version,
        List.of(list, trays),
        reading());
  }

  private Sheet seed() {
    List<Row> rows = new ArrayList<>();
    List<Supplies.Item> items =
        supplies.items().stream().filter(i -> i.kind() == Kind.SEED).toList();
    for (int i = 0; i < items.size(); i++) {
      ForLot lot = supplies.lots().get(i);
      rows.add(
          new Row(
              lot.crop().name(),
              lot.lot().equals(lot.crop().name()) ? "" : "lot " + lot.lot(),
              List.of(
                  Cell.of(Words.count((double) lot.seeds())).strongIf(true),
                  Cell.of(OrderWords.weight(lot.grams())),
                  Cell.of(items.get(i).arithmetic()))));
    }
    return new Sheet(
        "Seed, by lot.",
        "",
        List.of(
            Column.words("Crop"),
            Column.number("Seeds", ""),
            Column.number("Weight", ""),
            Column.words("How")),
        rows);
  }

  private Sheet others() {
    return new Sheet(
        "Trays, pots, mix and labels.",
        "Reuse what you have; the list has what is used.",
        List.of(Column.words("What"), Column.number("Amount", ""), Column.words("How")),
        supplies.items().stream()
            .filter(i -> i.kind() != Kind.SEED)
            .map(
                i ->
                    new Row(
                        i.what(),
                        List.of(
                            Cell.of(OrderWords.amount(i)).strongIf(true), Cell.of(i.arithmetic()))))
            .toList());
  }

  private List<Sheet> sowingSheets() {
    Sheet trays =
        new Sheet(
            "Trays of each sowing.",
            "Fewest trays with which the plants needed are out on time with the chance asked for,"
                + " and the chance with the trays of the plan; if there is room. A line’s seed is"
                + " ordered for the bold number.",
            Stream.of(
                    Column.words("Sowing"),
                    Column.number("Needed", "plants"),
                    Column.number("From a tray", "mean, plants"),
                    Column.number("Trays", "for " + Words.given(supplies.chance())),
                    Column.number("Planned", "trays"),
                    Column.number("Chance", "as planned, with room"),
                    Column.number("Chance", "as planned, in the house"),
                    Column.number("By the mean", "trays, chance"))
                .toList(),
            supplies.sowings().stream().map(this::trays).toList());
    Sheet margin =
        new Sheet(
            "The seed’s own risk" + (hasMoney ? ", and what money says." : "."),
            "Cells in which as many seedlings come up as plants are needed, with the same chance, by"
                + " germination alone."
                + (hasMoney
                    ? " The critical ratio is the chance up to which a tray more pays."
                    : ""),
            Stream.concat(
                    Stream.of(
                        Column.words("Sowing"),
                        Column.number("Cells", "by seed alone"),
                        Column.number("Cells", "ordered")),
                    hasMoney
                        ? Stream.of(
                            Column.number("Lacking", currency() + " a plant"),
                            Column.number("Too many", currency() + " a plant"),
                            Column.number("Critical ratio", ""),
                            Column.number("Trays", "by money"),
                            Column.number("Trays", "for " + Words.given(supplies.chance())))
                        : Stream.of())
                .toList(),
            supplies.sowings().stream().map(this::margin).toList());
    return List.of(trays, margin);
  }

  private String currency() {
    return Money.of(supplies.scenario()).map(Money::currency).orElse("");
  }

  private Row trays(ForSowing s) {
    Double byMean = s.chanceByMean();
    return new Row(
        s.sowing().id(),
        List.of(
            Cell.of(Words.count(s.sowing().plantsNeeded())),
            Cell.of(Words.amount(s.plantsPerTray())),
            s.trays() == null
                ? Cell.of("–", "at most " + Words.chance(s.most()))
                : Cell.of(Words.count(s.trays())).strongIf(true),
            Cell.of(Words.count(s.sowing().trays())).strongIf(s.trays() == null),
            Cell.of(Words.chance(s.chanceAsPlanned())),
            Cell.of(Words.chance(s.chanceInHouse())),
            byMean == null
                ? Cell.of("–")
                : Cell.of(OrderWords.orNone(s.traysByMean()), Words.chance(byMean))));
  }

  private Row margin(ForSowing s) {
    List<Cell> cells = new ArrayList<>();
    cells.add(Cell.of(OrderWords.orNone(s.cellsBySeed())));
    cells.add(Cell.of(Words.count((double) s.ordered() * s.crop().cells())));
    ByMoney money = s.money();
    if (hasMoney) {
      cells.add(Cell.of(money == null ? "–" : cents(money.costs().lacking())));
      cells.add(Cell.of(money == null ? "–" : cents(money.costs().surplus())));
      cells.add(Cell.of(money == null ? "–" : Words.percent(money.costs().criticalRatio())));
      cells.add(Cell.of(OrderWords.byMoney(money)));
      cells.add(Cell.of(OrderWords.orNone(s.trays())));
    }
    return new Row(s.sowing().id(), cells);
  }

  private static String cents(double amount) {
    return String.format(Locale.ENGLISH, "%.2f", Words.finite(amount));
  }

  private List<AnswerPage.Term> reading() {
    List<AnswerPage.Term> terms = new ArrayList<>();
    terms.add(
        new AnswerPage.Term(
            "If there is room",
            "every tray is sown, moved and planted when it is due. More trays than the house holds"
                + " help nobody: try the new numbers in the plan before you order. “In the house” is"
                + " the plan’s trays in the places as they are."));
    terms.add(
        new AnswerPage.Term(
            "In the house as it is",
            "the ordered trays are raised once more, in the places and with the hands that there"
                + " are: trays that wait are potted on where they would have gone out, or find no"
                + " room to be, and more fail where they are set into the cold. Pots, and seed for"
                + " what is sown again, are ordered for that."));
    terms.add(
        new AnswerPage.Term(
            "The margin",
            "is not a flat percentage. It covers what the seed test does not know, trays that fail,"
                + " losses on the table, frost and slow springs, each as the crop list has it, until"
                + " the plants needed are there in so many springs of a hundred as was asked. “By the"
                + " mean” is what the plants needed, divided by what a tray brings on average, would"
                + " order, and how often that is enough."));
    terms.add(
        new AnswerPage.Term(
            "By seed alone",
            "takes the lot’s rate as the seed test leaves it open and the cells as they fill, and"
                + " nothing else: the exact sum, not simulated."));
    if (hasMoney) {
      terms.add(
          new AnswerPage.Term(
              "By money",
              "is the newsvendor’s rule: the critical ratio is the cost of a plant lacking, over"
                  + " that and the cost of one too many together. A plant lacking costs what it"
                  + " would have been worth and what it takes to buy one in, less what it would have"
                  + " cost to raise; one too many costs its share of seed, mix and pots, less what"
                  + " it is sold for if the surplus is. Room has no price in it."));
    }
    terms.add(
        new AnswerPage.Term(
            "Cautions.",
            "Dry mix and dressed seed: wear a mask and gloves, follow the label, keep dressed seed"
                + " from children and animals. Bags of mix are heavy: share the load."));
    return terms;
  }
}
