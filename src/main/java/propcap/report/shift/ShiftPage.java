package propcap.report.shift;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Fact;
import propcap.report.kit.Money;
import propcap.report.kit.Part;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Sheet;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;
import propcap.study.shift.Shifts;
import propcap.study.shift.Shifts.Group;

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
    return new Table<ShiftWords>(
            "Group",
            w -> w.group().match(),
            w -> Words.plural(w.group().sowings().size(), "sowing"))
        .number("Best", "days later", w -> Words.signed(w.best().days()))
        .number("As good", "days later", ShiftWords::asGood)
        .cell("Plants on time", "of the group", w -> Cell.of(w.best().toUnshifted()))
        .cell("Plants on time", "of all sowings", w -> Cell.of(w.best().allToUnshifted()))
        .when(
            money.isPresent(),
            t ->
                t.cell(
                    "Margin",
                    currency() + " a season",
                    w -> Cell.money(w.best().marginToUnshifted())))
        .sheet(
            "The best shift of each group, against no shift.",
            "What is clearly more or less is bold. Each group was moved by itself.",
            groups);
  }

  private String currency() {
    return money.map(Money::currency).orElse("");
  }

  private Part part(Group group, int number) {
    return new Part(
        "group" + number,
        group.match(),
        List.of(),
        List.of("Moved together: " + Words.list(group.sowings()) + "."),
        List.of(
            new Figure(
                "The response to the shift.",
                "Marks are means, whiskers their 95 % intervals; in the band lie 8 springs of 10.",
                ShiftChart.of(group, currency(), "shift" + number))),
        List.of(
            TriedShift.table(money)
                .sheet(
                    "Shifts of " + group.match() + ".",
                    "Means with half their 95 % interval, below them 8 springs of 10; then differences to"
                        + " no shift, of the group’s plants and of all sowings’. What is clearly more or"
                        + " less is bold.",
                    TriedShift.of(group))));
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
