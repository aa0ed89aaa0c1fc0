package propcap.report.latest;

import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.Head;
import propcap.report.kit.Json;
import propcap.study.fill.FirstPlan.Filled;
import propcap.study.latest.Latest;
import propcap.study.latest.Latest.ForSowing;
import propcap.study.latest.Latest.LastDay;

/** The last days to sow, for other programs and for a spreadsheet. */
final class LatestFiles {
  private LatestFiles() {}

  private record Members(
      double goal,
      double tooLate,
      List<String> verdicts,
      List<Answer> sowings,
      List<String> withoutNeed,
      List<String> begun,
      List<Filled> filled) {}

  /** A null is a day that there is not. */
  private record Answer(
      ForSowing tried,
      @Nullable LastDay inHouse,
      @Nullable LastDay alone,
      @Nullable LastDay halfInHouse) {
    static Answer of(LatestRow row) {
      return new Answer(
          row.answer(),
          row.inHouse().orElse(null),
          row.alone().orElse(null),
          row.half().orElse(null));
    }
  }

  static String json(Latest latest, List<Filled> filled, String version) {
    List<LatestRow> rows = LatestRow.of(latest, filled);
    return Json.text(
        Head.of(latest.scenario(), version, latest.seasons(), latest.settings()),
        new Members(
            latest.question().goal(),
            Latest.TOO_LATE,
            rows.stream().map(r -> String.join(" ", LatestWords.of(r))).toList(),
            rows.stream().map(Answer::of).toList(),
            latest.withoutNeed(),
            latest.begun(),
            filled));
  }

  /** A row for each sowing. */
  static String csv(Latest latest, List<Filled> filled) {
    return LatestRow.TABLE.csv(LatestRow.of(latest, filled));
  }

  /** A row for each day that was tried. */
  static String days(Latest latest, List<Filled> filled) {
    return LatestRow.TriedDay.TABLE.csv(
        LatestRow.of(latest, filled).stream()
            .flatMap(r -> LatestRow.TriedDay.of(r).stream())
            .toList());
  }
}
