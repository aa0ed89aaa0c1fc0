package propcap.report.shift;

import java.util.List;
import propcap.report.kit.Csv;
import propcap.report.kit.Json;
import propcap.report.kit.Money;
import propcap.study.Shifts;
import propcap.study.Shifts.Group;
import propcap.study.Shifts.Point;

/** What comes of sowing earlier or later, for other programs and for a spreadsheet. */
final class ShiftFiles {
  private ShiftFiles() {}

  static String json(Shifts shifts, String version) {
    Json json =
        new Json()
            .put("scenario", shifts.scenario().name())
            .put("version", version)
            .put("seasons", shifts.seasons())
            .put("seed", shifts.settings().seed())
            .put("confidence", shifts.confidence());
    Money.of(shifts.scenario()).ifPresent(m -> json.put("currency", m.currency()));
    return json.put(
            "verdicts",
            Json.texts(ShiftWords.of(shifts).stream().map(ShiftWords::verdict).toList()))
        .put("groups", Json.each(shifts.groups(), ShiftFiles::group))
        .text();
  }

  private static Json group(Group group) {
    return new Json()
        .put("match", group.match())
        .put("sowings", Json.texts(group.sowings()))
        .put("best", group.best())
        .put("asGood", Json.wholes(group.asGood()))
        .put("points", Json.each(group.points(), ShiftFiles::point));
  }

  private static Json point(Point point) {
    return new Json()
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
    Csv table = new Csv();
    table.row(
        List.of("group", "days", "standing"),
        Csv.statNames("on-time"),
        Csv.statNames("late"),
        Csv.statNames("met"),
        Csv.statNames("all-on-time"),
        Csv.statNames("margin"),
        Csv.differenceNames("to-unshifted"),
        Csv.differenceNames("all-to-unshifted"),
        Csv.differenceNames("margin-to-unshifted"));
    for (Group group : shifts.groups()) {
      for (Point point : group.points()) {
        table.row(
            List.of(group.match(), Csv.whole(point.days()), standing(group, point)),
            Csv.stat(point.onTime()),
            Csv.stat(point.late()),
            Csv.stat(point.met()),
            Csv.stat(point.allOnTime()),
            Csv.stat(point.margin()),
            Csv.difference(point.toUnshifted()),
            Csv.difference(point.allToUnshifted()),
            Csv.difference(point.marginToUnshifted()));
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
