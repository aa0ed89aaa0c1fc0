package propcap.report;

import java.math.BigDecimal;
import java.util.List;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.study.Comparison;
import propcap.study.Comparison.Investment;
import propcap.study.Comparison.Outcome;

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
        .put("investments", Json.each(comparison.investments(), ComparisonFiles::investment))
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

  private static Json investment(Investment investment) {
    return new Json()
        .put("places", Json.each(investment.places(), ComparisonFiles::place))
        .put("buy", investment.buy())
        .put("yearly", investment.yearly())
        .put("gain", investment.gain())
        .put("netPresentValue", investment.netPresentValue())
        .put("netPresentValueHalfWidth", investment.netPresentValueHalfWidth())
        .put("paybackYears", investment.paybackYears())
        .put("chancePays", investment.chancePays());
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

  /** A row for each alternative that money was asked of. */
  static String moneyCsv(Comparison comparison) {
    Csv table = new Csv();
    table.row(
        List.of("alternative", "places", "buy", "yearly"),
        Csv.differenceNames("gain"),
        List.of("net-present-value", "net-present-value-half-width"),
        List.of("payback-years", "chance-pays"));
    for (int a = 0; a < comparison.investments().size(); a++) {
      Investment investment = comparison.investments().get(a);
      Double payback = investment.paybackYears();
      table.row(
          List.of(
              comparison.scenarios().get(a + 1).name(),
              String.join(", ", investment.places().stream().map(Place::name).toList()),
              plain(investment.buy()),
              plain(investment.yearly())),
          Csv.difference(investment.gain()),
          Csv.numbers(investment.netPresentValue(), investment.netPresentValueHalfWidth()),
          List.of(payback == null ? "" : Csv.number(payback)),
          Csv.numbers(investment.chancePays()));
    }
    return table.text();
  }

  private static String plain(BigDecimal amount) {
    return amount.toPlainString();
  }
}
