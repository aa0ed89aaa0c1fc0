package propcap.report.shift;

import java.util.List;
import propcap.report.kit.Money;
import propcap.report.kit.PutJson;
import propcap.report.kit.RowCsv;
import propcap.study.Shifts;
import propcap.study.Shifts.Group;
import propcap.study.Shifts.Point;

/** What comes of sowing earlier or later, for other programs and for a spreadsheet. */
final class ShiftFiles {
  private ShiftFiles() {}

  static String json(Shifts shifts, String version) {
    PutJson json =
        new PutJson()
            .put("scenario", shifts.scenario().name())
            .put("version", version)
            .put("seasons", shifts.seasons())
            .put("seed", shifts.settings().seed())
            .put("confidence", shifts.confidence());
    Money.of(shifts.scenario()).ifPresent(m -> json.put("currency", m.currency()));
    return json.put(
            "verdicts",
            PutJson.texts(ShiftWords.of(shifts).stream().map(ShiftWords::verdict).toList()))
        .put("groups", PutJson.each(shifts.groups(), ShiftFiles::group))
        .text();
  }

  private static PutJson group(Group group) {
    return new PutJson()
        .put("match", group.match())
        .put("sowings", PutJson.texts(group.sowings()))
        .put("best", group.best())
        .put("asGood", PutJson.wholes(group.asGood()))
        .put("points", PutJson.each(group.points(), ShiftFiles::point));
  }

  private static PutJson point(Point point) {
    return new PutJson()
        .put("days", point.days())
        .put("onTime", point.onTime())
        .put("late", point.late())
        .put("met", point.met())
        .put("allOnTime", point.allOnTime())
        .put("margin", point.margin())
        .put("toUnshifted", point.toUnshifted())
        .put("allToUnshifted", point.allToUnshifted())
        .put("marginToUnshifted", point.marginToUnshifted());
  }

  /** A row for each group and shift. */
  static String csv(Shifts shifts) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("group", "days", "standing"),
        RowCsv.statNames("on-time"),
        RowCsv.statNames("late"),
        RowCsv.statNames("met"),
        RowCsv.statNames("all-on-time"),
        RowCsv.statNames("margin"),
        RowCsv.differenceNames("to-unshifted"),
        RowCsv.differenceNames("all-to-unshifted"),
        RowCsv.differenceNames("margin-to-unshifted"));
    for (Group group : shifts.groups()) {
      for (Point point : group.points()) {
        table.row(
            List.of(group.match(), RowCsv.whole(point.days()), standing(group, point)),
            RowCsv.stat(point.onTime()),
            RowCsv.stat(point.late()),
            RowCsv.stat(point.met()),
            RowCsv.stat(point.allOnTime()),
            RowCsv.stat(point.margin()),
            RowCsv.difference(point.toUnshifted()),
            RowCsv.difference(point.allToUnshifted()),
            RowCsv.difference(point.marginToUnshifted()));
      }
    }
    return table.text();
  }

  private static String standing(Group group, Point point) {
    return point.days() == group.best()
        ? "best"
        : group.asGood().contains(point.days()) ? "as-good" : "";
  }
}
