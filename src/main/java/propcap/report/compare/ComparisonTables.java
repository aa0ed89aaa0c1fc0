package propcap.report.compare;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.report.kit.InvestmentWords;
import propcap.report.kit.Json;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.WorthTable;
import propcap.study.compare.Comparison;
import propcap.study.compare.Comparison.Kind;
import propcap.study.compare.Comparison.Outcome;
import propcap.study.money.Investment.Change;
import propcap.study.money.Investment.Price;
import propcap.study.money.Investment.Worth;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/** A comparison as tables. */
final class ComparisonTables {
  private ComparisonTables() {}

  private record Question(
      String version,
      int seasons,
      long seed,
      double confidence,
      Optional<String> currency,
      Optional<Double> discount) {}

  private record Results(
      List<ScenarioMembers> scenarios,
      List<String> verdicts,
      List<OutcomeMembers> outcomes,
      List<?> investments) {}

  private record ScenarioMembers(String name, int trays, List<PlaceMembers> places) {}

  private record PlaceMembers(String name, PlaceKind kind, int spaces) {
    static PlaceMembers of(Place place) {
      return new PlaceMembers(place.name(), place.kind(), place.spaces());
    }
  }

  private record OutcomeMembers(
      Kind outcome,
      String of,
      boolean moreIsBetter,
      List<Stat> levels,
      List<Difference> differences) {}

  private record ChangeMembers(
      String name, PlaceKind kind, int spaces, int spacesNow, @Nullable Price price) {}

  static String json(Comparison comparison, String version) {
    Optional<Prices> prices = Optional.ofNullable(comparison.scenarios().get(0).prices());
    return Json.text(
        new Question(
            version,
            comparison.seasons(),
            comparison.settings().seed(),
            comparison.confidence(),
            prices.map(Prices::currency),
            prices.map(Prices::discount)),
        new Results(
            comparison.scenarios().stream().map(ComparisonTables::scenario).toList(),
            ComparisonWords.of(comparison).stream().map(ComparisonWords::verdict).toList(),
            comparison.outcomes().stream().map(ComparisonTables::outcome).toList(),
            investments("").objects(InvestmentWords.of(comparison))));
  }

  private static ScenarioMembers scenario(Scenario scenario) {
    return new ScenarioMembers(
        scenario.name(),
        scenario.trays(),
        scenario.places().stream().map(PlaceMembers::of).toList());
  }

  private static OutcomeMembers outcome(Outcome o) {
    return new OutcomeMembers(o.kind(), o.subject(), o.moreIsBetter(), o.levels(), o.differences());
  }

  private static List<?> changes(List<Change> changes) {
    return changes.stream()
        .map(
            c ->
                new ChangeMembers(
                    c.place().name(),
                    c.place().kind(),
                    c.place().spaces(),
                    c.spacesNow(),
                    c.price()))
        .toList();
  }

  /**
   * A row for each alternative. Where nothing is paid or saved, or has no cost, there is nothing
   * under what it is worth.
   */
  static Table<InvestmentWords> investments(String currency) {
    return new Table<>("Alternative", InvestmentWords::name, InvestmentWords::does)
        .file("alternative", InvestmentWords::name)
        .json("verdict", InvestmentWords::verdict)
        .csv("places", w -> String.join(", ", names(w.investment().changes())))
        .json("places", w -> changes(w.investment().changes()))
        .csv("without-cost", w -> String.join(", ", names(w.investment().unpriced())))
        .json("withoutCost", w -> names(w.investment().unpriced()))
        .csv("buy", w -> bought(w, Worth::buy))
        .number("Buying", currency + " once", w -> w.amount(Worth::buy))
        .csv("yearly", w -> bought(w, Worth::yearly))
        .number("Cost", currency + " a year", w -> w.amount(Worth::yearly))
        .difference("gain", w -> w.investment().gain())
        .cell("Margin", currency + " a season", w -> Cell.money(w.investment().gain()))
        .csv("", WorthTable.WORTH, w -> w.investment().worth())
        .json("worth", w -> WorthTable.WORTH.object(w.investment().worth()))
        .number("Net present value", currency, InvestmentWords::value)
        .number("Paid back", "years", InvestmentWords::payback)
        .number("Pays", "chance", InvestmentWords::chance);
  }

  private static List<String> names(List<Change> changes) {
    return changes.stream().map(c -> c.place().name()).toList();
  }

  private static @Nullable BigDecimal bought(
      InvestmentWords words, Function<Worth, BigDecimal> amount) {
    Worth worth = words.investment().worth();
    return worth == null ? null : amount.apply(worth);
  }

  /** A row for each outcome and alternative. */
  static String csv(Comparison comparison) {
    record Row(Outcome outcome, int alternative) {}
    return new Table<Row>()
        .csv("outcome", r -> r.outcome.kind())
        .csv("of", r -> r.outcome.subject())
        .csv("alternative", r -> comparison.scenarios().get(r.alternative + 1).name())
        .stat("first", r -> r.outcome.levels().get(0))
        .stat("level", r -> r.outcome.levels().get(r.alternative + 1))
        .difference("difference", r -> r.outcome.differences().get(r.alternative))
        .csv(
            comparison.outcomes().stream()
                .flatMap(
                    o -> IntStream.range(0, o.differences().size()).mapToObj(a -> new Row(o, a)))
                .toList());
  }
}
