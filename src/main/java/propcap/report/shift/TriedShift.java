package propcap.report.shift;

import java.util.List;
import java.util.Optional;
import propcap.report.chart.Marks;
import propcap.report.kit.Csv;
import propcap.report.kit.Money;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.shift.Shifts.Group;
import propcap.study.shift.Shifts.Point;

/** One shift of a group, as a row of the table of shifts. */
record TriedShift(Group group, Point point) {
  /** How a shift stands to the best. */
  enum Standing {
    BEST("best", "best", Marks.Fill.FILLED),
    AS_GOOD("as good", "not told from it", Marks.Fill.HALF),
    LESS("", "less good", Marks.Fill.HOLLOW);

    final String words;
    final String key;
    final Marks.Fill fill;

    Standing(String words, String key, Marks.Fill fill) {
      this.words = words;
      this.key = key;
      this.fill = fill;
    }
  }

  static List<TriedShift> of(Group group) {
    return group.points().stream().map(p -> new TriedShift(group, p)).toList();
  }

  Standing standing() {
    return point.days() == group.best()
        ? Standing.BEST
        : group.asGood().contains(point.days()) ? Standing.AS_GOOD : Standing.LESS;
  }

  static Table<TriedShift> table(Optional<Money> money) {
    String currency = money.map(Money::currency).orElse("");
    return new Table<TriedShift>(
            "Days later", t -> Words.signed(t.point.days()), t -> t.standing().words)
        .csv("group", t -> t.group.match())
        .csv("days", t -> t.point.days())
        .csv("standing", t -> t.standing() == Standing.LESS ? "" : Csv.word(t.standing()))
        .stat("on-time", t -> t.point.onTime())
        .cell("On time", "plants", t -> Cell.level(t.point.onTime()))
        .stat("late", t -> t.point.late())
        .cell("Late", "plants", t -> Cell.level(t.point.late()))
        .stat("met", t -> t.point.met())
        .cell("Met", "sowings", t -> Cell.level(t.point.met()))
        .stat("all-on-time", t -> t.point.allOnTime())
        .stat("margin", t -> t.point.margin())
        .when(
            money.isPresent(),
            table -> table.cell("Margin", currency, t -> Cell.money(t.point.margin())))
        .difference("to-unshifted", t -> t.point.toUnshifted())
        .cell("On time", "against 0", t -> Cell.of(t.point.toUnshifted()))
        .difference("all-to-unshifted", t -> t.point.allToUnshifted())
        .cell("All on time", "against 0", t -> Cell.of(t.point.allToUnshifted()))
        .difference("margin-to-unshifted", t -> t.point.marginToUnshifted())
        .when(
            money.isPresent(),
            table ->
                table.cell(
                    "Margin",
                    currency + " against 0",
                    t -> Cell.money(t.point.marginToUnshifted())));
  }
}
