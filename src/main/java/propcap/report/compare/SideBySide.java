package propcap.report.compare;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import propcap.report.kit.Money;
import propcap.report.kit.Sheet;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Sheet.Column;
import propcap.report.kit.Sheet.Row;
import propcap.report.kit.Words;
import propcap.study.Comparison;
import propcap.study.Comparison.Kind;
import propcap.study.Comparison.Outcome;

/** Scenarios side by side in a small table: a line for each, with what differs from the first. */
final class SideBySide {
  private final Comparison comparison;
  private final Outcome onTime;
  private final Outcome met;
  private final Optional<Outcome> margin;

  SideBySide(Comparison comparison) {
    this.comparison = comparison;
    this.onTime = comparison.total(Kind.ON_TIME);
    this.met = comparison.total(Kind.SOWINGS_MET);
    this.margin = comparison.find(Kind.MARGIN, "");
  }

  Sheet sheet() {
    List<Column> columns =
        new ArrayList<>(
            List.of(
                Column.words("Scenario"),
                Column.number("On time", "plants"),
                Column.number("Difference", "plants"),
                Column.number(
                    "Sowings met", "of " + comparison.scenarios().get(0).sowings().size())));
    String currency = Money.of(comparison.scenarios().get(0)).map(Money::currency).orElse("");
    margin.ifPresent(m -> columns.add(Column.number("Margin, difference", currency + " a season")));
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < comparison.scenarios().size(); i++) {
      rows.add(row(i));
    }
    return new Sheet(
        "Mean of " + Words.plural(comparison.seasons(), "spring") + ".",
        "Each difference is to the first, on the same springs; what is clearly more or less is bold.",
        columns,
        rows);
  }

  private Row row(int scenario) {
    boolean isFirst = scenario == 0;
    List<Cell> cells = new ArrayList<>();
    cells.add(Cell.of(Words.count(onTime.levels().get(scenario).mean())));
    if (isFirst) {
      cells.add(Cell.of("–"));
    } else {
      var difference = onTime.differences().get(scenario - 1);
      cells.add(Cell.of(Words.difference(difference)).strongIf(difference.isClear()));
    }
    cells.add(Cell.of(Words.amount(met.levels().get(scenario).mean())));
    margin.ifPresent(
        m -> {
          if (isFirst) {
            cells.add(Cell.of("–"));
          } else {
            var difference = m.differences().get(scenario - 1);
            cells.add(Cell.of(Money.bare(difference)).strongIf(difference.isClear()));
          }
        });
    return new Row(comparison.scenarios().get(scenario).name(), cells);
  }
}
