package propcap.report.germination;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import propcap.evidence.germination.GerminationReport;
import propcap.evidence.germination.GerminationReport.Group;
import propcap.evidence.germination.GerminationReport.Tray;
import propcap.evidence.germination.ReplicateTolerance;
import propcap.report.kit.Json;
import propcap.report.kit.Table;

/** A germination test as a laboratory reports it, for other programs and for a spreadsheet. */
final class GerminationReportTables {
  private static final Table<Tray> TRAY = tray();

  private static final Table<Group> GROUP =
      new Table<Group>()
          .file("crop", Group::crop)
          .file("lot", Group::lot)
          .file("temperature-c", Group::tempC)
          .json("pooledPercent", Group::pooledPercent)
          .json("meanOfTraysPercent", Group::meanPercent)
          .json("range", g -> g.tolerance().range())
          .json("allowedRange", g -> allowed(g.tolerance()))
          .json("verdict", g -> g.tolerance().verdict().name().toLowerCase(Locale.ROOT))
          .json("chanceOfRange", g -> g.tolerance().chanceOfRange())
          .json("trays", g -> TRAY.objects(g.trays()));

  private GerminationReportTables() {}

  private static Table<Tray> tray() {
    Table<Tray> table =
        new Table<Tray>()
            .file("tray", t -> t.counts().tray())
            .file("seeds", t -> t.counts().seeds());
    for (LaboratoryIndex index : LaboratoryIndex.values()) {
      table.csv(index.key(), t -> index.of(t.indices()));
      table.json(index.key(), t -> index.of(t.indices()));
    }
    return table;
  }

  private static @Nullable Double allowed(ReplicateTolerance tolerance) {
    Integer allowed = tolerance.allowed();
    return allowed == null ? null : Double.valueOf(allowed);
  }

  private record Test(String counts, String version, List<?> groups) {}

  static String json(GerminationReport report, String counts, String version) {
    return Json.text(new Test(counts, version, GROUP.objects(report.groups())));
  }

  /** A row for each tray. */
  static String csv(GerminationReport report) {
    record Row(Group group, Tray tray) {}
    return new Table<Row>()
        .csv("", GROUP, Row::group)
        .csv("", TRAY, Row::tray)
        .csv(
            report.groups().stream()
                .flatMap(g -> g.trays().stream().map(t -> new Row(g, t)))
                .toList());
  }
}
