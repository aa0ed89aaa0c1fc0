package propcap.report.compare;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.report.kit.Money;
import propcap.report.kit.Sheet;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.compare.Comparison;
import propcap.study.compare.Comparison.Kind;
import propcap.study.compare.Comparison.Outcome;
import propcap.study.statistics.Difference;

/** Scenarios side by side in a small table: a line for each, with what differs from the first. */
final class SideBySide {
  private final Comparison comparison;
  private final Outcome onTime;
  private final Optional<Outcome> margin;

  SideBySide(Comparison comparison) {
    this.comparison = comparison;
    this.onTime = comparison.total(Kind.ON_TIME);
    this.margin = comparison.find(Kind.MARGIN, "");
  }

  Sheet sheet() {
    List<Scenario> scenarios = comparison.scenarios();
    String currency = Money.currency(scenarios.get(0)).orElse("");
    Table<Integer> table =
        new Table<Integer>("Scenario", s -> scenarios.get(s).name())
            .number("All on time", "plants", s -> Words.count(onTime.levels().get(s).mean()))
            .cell("Difference", "plants", s -> s == 0 ? Cell.NONE : Cell.of(difference(onTime, s)))
            .number(
                "Sowings safe",
                "",
                s -> comparison.safe().get(s) + " of " + scenarios.get(s).sowings().size());
    margin.ifPresent(
        m ->
            table.cell(
                "Margin, difference",
                currency + " a season",
                s -> s == 0 ? Cell.NONE : Cell.money(difference(m, s))));
    return table.sheet(
        "Mean of " + Words.plural(comparison.seasons(), "spring") + ".",
        "Plants beyond what a sowing needs are counted too. Each difference is to the first, on the same springs; what is clearly more or less is bold.",
        IntStream.range(0, scenarios.size()).boxed().toList());
  }

  private static Difference difference(Outcome outcome, int scenario) {
    return outcome.differences().get(scenario - 1);
  }
}
