package propcap.report.shift;

import java.util.List;
import java.util.Optional;
import propcap.report.kit.Head;
import propcap.report.kit.Json;
import propcap.report.kit.Money;
import propcap.study.shift.Shifts;
import propcap.study.shift.Shifts.Group;

/** What comes of sowing earlier or later, for other programs and for a spreadsheet. */
final class ShiftFiles {
  private ShiftFiles() {}

  private record Members(
      double confidence, Optional<String> currency, List<String> verdicts, List<Group> groups) {}

  static String json(Shifts shifts, String version) {
    return Json.text(
        Head.of(shifts.scenario(), version, shifts.seasons(), shifts.settings()),
        new Members(
            shifts.confidence(),
            Money.currency(shifts.scenario()),
            ShiftWords.of(shifts).stream().map(ShiftWords::verdict).toList(),
            shifts.groups()));
  }

  /** A row for each group and shift. */
  static String csv(Shifts shifts) {
    return TriedShift.table(Optional.empty())
        .csv(shifts.groups().stream().flatMap(g -> TriedShift.of(g).stream()).toList());
  }
}
