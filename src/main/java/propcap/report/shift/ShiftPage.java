package propcap.report.shift;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Money;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Sheet;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Sheet.Column;
import propcap.report.kit.Sheet.Row;
import propcap.report.kit.Words;
import propcap.study.Difference;
import propcap.study.Shifts;
import propcap.study.Shifts.Group;
import propcap.study.Shifts.Point;
import propcap.study.Stat;

/** The page of what comes of sowing earlier or later. */
final class ShiftPage {
  private final Shifts shifts;
  private final Optional<Money> money;
  private final List<ShiftWords> groups;

  private ShiftPage(Shifts shifts) {
    this.shifts = shifts;
    this.money = Money.of(shifts.scenario());
    this.groups = ShiftWords.of(shifts);
  }

  static AnswerPage of(Shifts shifts, String version) {
    return new ShiftPage(shifts).page(version);
  }

  private AnswerPage page(String version) {
    List<Part> parts = new ArrayList<>();
    parts.add(
        new Part(
            "best",
            "When to sow",
            groups.stream().map(ShiftWords::verdict).toList(),
            List.of(),
            List.of(),
            List.of(overGroups())));
    for (int g = 0; g < shifts.groups().size(); g++) {
      parts.add(part(shifts.groups().get(g), g + 1));
    }
    return new AnswerPage(
        shifts.scenario().name(),
        "What comes of sowing earlier or later",
        Fact.of(
            shifts.scenario(), Words.count(shifts.seasons()) + " of each shift", shifts.settings()),
        version,
        parts,
        reading());
  }

  private Sheet overGroups() {
    List<Column> columns = new ArrayList<>();
    columns.add(Column.words("Group"));
    columns.add(Column.number("Best", "days later"));
    columns.add(Column.number("As good", "days later"));
    columns.add(Column.number("Plants on time", "of the group"));
    columns.add(Column.number("Plants on time", "of all sowings"));
    money.ifPresent(m -> columns.add(Column.number("Margin", m.currency() + " a season")));
    List<Row> rows = new ArrayList<>();
    for (ShiftWords words : groups) {
      Point best = words.best();
      List<Cell> cells = new ArrayList<>();
      cells.add(Cell.of(Words.signed(best.days())));
      cells.add(Cell.of(words.asGood()));
      addDifferences(cells, best);
      rows.add(
          new Row(
              words.group().match(),
              Words.plural(words.group().sowings().size(), "sowing"),
              cells));
    }
    return new Sheet(
        "The best shift of each group, against no shift.",
        "What is clearly more or less is bold. Each group was moved by itself.",
        columns,
        rows);
  }

  private void addDifferences(List<Cell> cells, Point point) {
    cells.add(plants(point.toUnshifted()));
    cells.add(plants(point.allToUnshifted()));
    if (money.isPresent()) {
      Difference margin = point.marginToUnshifted();
      cells.add(
          margin == null ? Cell.of("–") : Cell.of(Money.bare(margin)).strongIf(margin.isClear()));
    }
  }

  private static Cell plants(Difference difference) {
    return Cell.of(Words.difference(difference)).strongIf(difference.isClear());
  }

  private Part part(Group group, int number) {
    String currency = money.map(Money::currency).orElse("");
    List<Column> columns = new ArrayList<>();
    columns.add(Column.words("Days later"));
    columns.add(Column.number("On time", "plants"));
    columns.add(Column.number("Late", "plants"));
    columns.add(Column.number("Met", "sowings"));
    money.ifPresent(m -> columns.add(Column.number("Margin", currency)));
    columns.add(Column.number("On time", "against 0"));
    columns.add(Column.number("All on time", "against 0"));
    money.ifPresent(m -> columns.add(Column.number("Margin", currency + " against 0")));
    return new Part(
        "group" + number,
        group.match(),
        List.of(),
        List.of("Moved together: " + Words.list(group.sowings()) + "."),
        List.of(
            new Figure(
                "The response to the shift.",
                "Marks are means, whiskers their 95 % intervals; in the band lie 8 springs of 10.",
                ShiftChart.of(group, currency, "shift" + number))),
        List.of(
            new Sheet(
                "Shifts of " + group.match() + ".",
                "Means with half their 95 % interval, below them 8 springs of 10; then differences to"
                    + " no shift, of the group’s plants and of all sowings’. What is clearly more or"
                    + " less is bold.",
                columns,
                group.points().stream().map(p -> row(group, p)).toList())));
  }

  private Row row(Group group, Point point) {
    List<Cell> cells = new ArrayList<>();
    cells.add(level(point.onTime()));
    cells.add(level(point.late()));
    cells.add(level(point.met()));
    if (money.isPresent()) {
      cells.add(margin(point.margin()));
    }
    addDifferences(cells, point);
    String standing =
        point.days() == group.best()
            ? "best"
            : group.asGood().contains(point.days()) ? "as good" : "";
    return new Row(Words.signed(point.days()), standing, cells);
  }

  private static Cell level(Stat stat) {
    return Cell.of(Words.estimate(stat), Words.range(stat));
  }

  private static Cell margin(@Nullable Stat stat) {
    return stat == null ? Cell.of("–") : Cell.of(Money.level(stat), Words.range(stat));
  }

  private List<AnswerPage.Term> reading() {
    List<AnswerPage.Term> terms = new ArrayList<>();
    terms.add(AnswerPage.SPRING);
    terms.add(
        new AnswerPage.Term(
            "Days later",
            "count from the day of the plan; less than 0 is earlier. The beds wait as planned."));
    terms.add(
        new AnswerPage.Term(
            "The best",
            "has the highest mean "
                + (money.isPresent() ? "margin of a season" : "of plants on time of all sowings")
                + ". A shift is as good where the springs do not tell it from the best."));
    terms.add(AnswerPage.PLUS_MINUS);
    terms.add(
        new AnswerPage.Term(
            "Intervals",
            "of the differences of one group and outcome hold together with "
                + Words.given(shifts.confidence())
                + " confidence."));
    terms.add(AnswerPage.EIGHT_OF_TEN);
    if (money.isPresent()) {
      terms.add(AnswerPage.MONEY);
    }
    return terms;
  }
}
