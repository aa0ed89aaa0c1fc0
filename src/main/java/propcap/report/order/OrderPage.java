package propcap.report.order;

import java.util.ArrayList;
import java.util.List;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Part;
import propcap.report.kit.Sheet;
import propcap.report.kit.Words;
import propcap.study.order.Supplies;

/** The page of what to order for the season. */
final class OrderPage {
  private final Supplies supplies;
  private final OrderTables tables;
  private final boolean hasMoney;

  private OrderPage(Supplies supplies) {
    this.supplies = supplies;
    this.tables = new OrderTables(supplies);
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
    List<String> verdicts =
        new ArrayList<>(List.of(OrderWords.verdict(supplies), OrderWords.safe(supplies)));
    OrderWords.beyond(supplies).ifPresent(verdicts::add);
    Part list =
        new Part(
            "order",
            "What to order",
            verdicts,
            List.of(OrderWords.changes(supplies)),
            List.of(),
            List.of(tables.seed(), tables.others()));
    Part trays = new Part("trays", "How many trays, and why", List.of(), sowingSheets());
    return new AnswerPage(
        supplies.scenario().name(),
        "The order list",
        facts,
        version,
        List.of(list, trays),
        reading());
  }

  private List<Sheet> sowingSheets() {
    return List.of(
        tables
            .sowings()
            .sheet(
                "Trays of each sowing.",
                "Fewest trays with which the plants needed are out on time with the chance asked"
                    + " for, and the chance with the trays of the plan; if there is room. A line’s"
                    + " seed is ordered for the bold number.",
                supplies.sowings()),
        tables
            .risk()
            .sheet(
                "The seed’s own risk" + (hasMoney ? ", and what money says." : "."),
                "Cells in which as many seedlings come up as plants are needed, with the same"
                    + " chance, by germination alone."
                    + (hasMoney
                        ? " The critical ratio is the chance up to which a tray more pays."
                        : ""),
                supplies.sowings()));
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
