package propcap.report.compare;

import java.math.BigDecimal;
import java.util.List;
import java.util.stream.IntStream;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.report.kit.Csv;
import propcap.report.kit.Json;
import propcap.report.kit.WorthWords;
import propcap.study.Comparison;
import propcap.study.Comparison.Change;
import propcap.study.Comparison.Investment;
import propcap.study.Comparison.Outcome;
import propcap.study.Comparison.Price;
import propcap.study.Comparison.Worth;

/** A comparison for other programs and for a spreadsheet. */
final class ComparisonFiles {
  private ComparisonFiles() {}

  static String json(Comparison comparison, String version) {
    Prices prices = comparison.scenarios().get(0).prices();
    Json json =
        new Json()
            .put("version", version)
            .put("seasons", comparison.seasons())
            .put("seed", comparison.settings().seed())
            .put("confidence", comparison.confidence());
    if (prices != null) {
      json.put("currency", prices.currency()).put("discount", prices.discount());
    }
    return json.put("scenarios", Json.each(comparison.scenarios(), ComparisonFiles::scenario))
        .put(
            "verdicts",
            Json.texts(
                ComparisonWords.of(comparison).stream().map(ComparisonWords::verdict).toList()))
        .put("outcomes", Json.each(comparison.outcomes(), ComparisonFiles::outcome))
        .put(
            "investments",
            Json.each(
                IntStream.range(0, comparison.investments().size()).boxed().toList(),
                a -> investment(comparison, a)))
        .text();
  }

  static Json scenario(Scenario scenario) {
    return new Json()
        .put("name", scenario.name())
        .put("trays", scenario.trays())
        .put("places", Json.each(scenario.places(), ComparisonFiles::place));
  }

  private static Json place(Place place) {
    return new Json()
        .put("name", place.name())
        .put("kind", place.kind().word())
        .put("spaces", place.spaces());
  }

  private static Json outcome(Outcome outcome) {
    return new Json()
        .put("outcome", word(outcome))
        .put("of", outcome.subject())
        .put("moreIsBetter", outcome.moreIsBetter())
        .put("levels", Json.each(outcome.levels(), Json::of))
        .put("differences", Json.each(outcome.differences(), Json::of));
  }

  private static Json investment(Comparison comparison, int alternative) {
    Investment investment = comparison.investments().get(alternative);
    Worth worth = investment.worth();
    return new Json()
        .put("alternative", comparison.scenarios().get(alternative + 1).name())
        .put(
            "verdict",
            InvestmentWords.of(comparison, alternative).map(InvestmentWords::verdict).orElse(""))
        .put("places", Json.each(investment.changes(), ComparisonFiles::change))
        .put("withoutCost", Json.texts(names(investment.unpriced())))
        .put("gain", investment.gain())
        .put("worth", worth == null ? null : WorthWords.worth(worth));
  }

  private static Json change(Change change) {
    Price price = change.price();
    return place(change.place())
        .put("spacesNow", change.spacesNow())
        .put("price", price == null ? null : price(price));
  }

  private static Json price(Price price) {
    return new Json()
        .put("buy", price.buy())
        .put("isShare", price.isShare())
        .put("lastsYears", price.lastsYears())
        .put("keepPerYear", price.keepPerYear());
  }

  private static List<String> names(List<Change> changes) {
    return changes.stream().map(c -> c.place().name()).toList();
  }

  /** What an outcome is called in files, such as {@code on-time}. */
  private static String word(Outcome outcome) {
    return switch (outcome.kind()) {
      case ON_TIME -> "on-time";
      case ON_TIME_OF_CROP -> "on-time-of-crop";
      case LATE -> "late";
      case SOWINGS_MET -> "sowings-met";
      case WAITING -> "waiting";
      case LOST -> "lost";
      case MARGIN -> "margin";
    };
  }

  /** A row for each outcome and alternative. */
  static String csv(Comparison comparison) {
    Csv table = new Csv();
    table.row(
        List.of("outcome", "of", "alternative"),
        Csv.statNames("first"),
        Csv.statNames("level"),
        Csv.differenceNames("difference"));
    for (Outcome outcome : comparison.outcomes()) {
      for (int a = 0; a < outcome.differences().size(); a++) {
        table.row(
            List.of(word(outcome), outcome.subject(), comparison.scenarios().get(a + 1).name()),
            Csv.stat(outcome.levels().get(0)),
            Csv.stat(outcome.levels().get(a + 1)),
            Csv.difference(outcome.differences().get(a)));
      }
    }
    return table.text();
  }

  /**
   * A row for each alternative that money was asked of. Where nothing is paid or saved, or has no
   * cost, there is nothing under what it is worth.
   */
  static String moneyCsv(Comparison comparison) {
    Csv table = new Csv();
    table.row(
        List.of("alternative", "places", "without-cost", "buy", "yearly"),
        Csv.differenceNames("gain"),
        List.of("net-present-value", "net-present-value-half-width"),
        List.of("pays", "payback-years", "chance-pays"));
    for (int a = 0; a < comparison.investments().size(); a++) {
      Investment investment = comparison.investments().get(a);
      Worth worth = investment.worth();
      table.row(
          List.of(
              comparison.scenarios().get(a + 1).name(),
              String.join(", ", names(investment.changes())),
              String.join(", ", names(investment.unpriced()))),
          worth == null ? List.of("", "") : List.of(plain(worth.buy()), plain(worth.yearly())),
          Csv.difference(investment.gain()),
          worth == null ? List.of("", "", "", "", "") : overItsLife(worth));
    }
    return table.text();
  }

  private static List<String> overItsLife(Worth worth) {
    Double payback = worth.paybackYears();
    return List.of(
        Csv.number(worth.netPresentValue()),
        Csv.number(worth.netPresentValueHalfWidth()),
        worth.pays().word(),
        payback == null ? "never" : Csv.number(payback),
        Csv.number(worth.chancePays()));
  }

  private static String plain(BigDecimal amount) {
    return amount.toPlainString();
  }
}
