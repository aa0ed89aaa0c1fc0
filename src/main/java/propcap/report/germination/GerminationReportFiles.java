package propcap.report.germination;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import propcap.evidence.GerminationReport;
import propcap.evidence.GerminationReport.Group;
import propcap.evidence.GerminationReport.Tray;
import propcap.evidence.ReplicateTolerance;
import propcap.report.kit.PutJson;
import propcap.report.kit.RowCsv;

/** A germination test as a laboratory reports it, for other programs and for a spreadsheet. */
final class GerminationReportFiles {
  private GerminationReportFiles() {}

  static String json(GerminationReport report, String counts, String version) {
    return new PutJson()
        .put("counts", counts)
        .put("version", version)
        .put("groups", PutJson.each(report.groups(), GerminationReportFiles::group))
        .text();
  }

  private static PutJson group(Group group) {
    ReplicateTolerance t = group.tolerance();
    Integer allowed = t.allowed();
    return new PutJson()
        .put("crop", group.crop())
        .put("lot", group.lot())
        .put("temperatureC", group.tempC())
        .put("pooledPercent", group.pooledPercent())
        .put("meanOfTraysPercent", group.meanPercent())
        .put("range", t.range())
        .put("allowedRange", allowed == null ? null : Double.valueOf(allowed))
        .put("verdict", t.verdict().name().toLowerCase(Locale.ROOT))
        .put("chanceOfRange", t.chanceOfRange())
        .put("trays", PutJson.each(group.trays(), GerminationReportFiles::tray));
  }

  private static PutJson tray(Tray tray) {
    PutJson json =
        new PutJson().put("tray", tray.counts().tray()).put("seeds", (long) tray.counts().seeds());
    for (LaboratoryIndex index : LaboratoryIndex.values()) {
      json.put(index.key(), index.of(tray.indices()));
    }
    return json;
  }

  /** A row for each tray. */
  static String csv(GerminationReport report) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("crop", "lot", "temperature-c", "tray", "seeds"),
        Stream.of(LaboratoryIndex.values()).map(LaboratoryIndex::key).toList());
    for (Group group : report.groups()) {
      for (Tray tray : group.trays()) {
        List<String> cells = new ArrayList<>();
        for (LaboratoryIndex index : LaboratoryIndex.values()) {
          Double value = index.of(tray.indices());
          cells.add(value == null ? "" : RowCsv.number(value));
        }
        table.row(
            List.of(group.crop(), group.lot(), RowCsv.number(group.tempC()), tray.counts().tray()),
            RowCsv.wholes(tray.counts().seeds()),
            cells);
      }
    }
    return table.text();
  }
}
