package propcap.report.stages;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
import propcap.evidence.stages.CropStages;
import propcap.evidence.stages.Stages;
import propcap.evidence.stages.TrayEvidence;
import propcap.evidence.stages.TrayEvidence.Count;
import propcap.evidence.stages.TrayEvidence.Readiness;
import propcap.evidence.stages.TrayEvidence.Untold;
import propcap.farm.Loss;
import propcap.report.kit.Csv;
import propcap.report.kit.Json;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.Words;

/** What a log of trays says, as tables. */
final class StagesTables {
  static final Table<StagesFigure> FIGURE =
      new Table<StagesFigure>("Figure", StagesFigure::title)
          .file("trays", f -> f.learned().trays())
          .number("Trays", "that tell", f -> Words.count(f.learned().trays()))
          .file("listed", Table.ESTIMATE, f -> f.learned().listed())
          .cell("Crop list", "as listed", f -> cell(f, f.learned().listed()))
          .file("alone", Table.ESTIMATE, f -> f.learned().alone())
          .cell("Log alone", "without the list", f -> cell(f, f.learned().alone()))
          .file("learned", Table.ESTIMATE, f -> f.learned().learned())
          .cell(
              "Both",
              "to be written",
              f -> cell(f, f.learned().learned()).strongIf(f.learned().trays() > 0));

  private static final Table<CropStages> CROP =
      new Table<CropStages>()
          .json("crop", c -> c.crop().name())
          .json("trays", c -> c.trays().size())
          .json("lastDay", CropStages::lastDay)
          .json("readiness", c -> counts(Readiness.values(), c::count))
          .json("untold", c -> counts(Untold.values(), c::count));

  /** No upper end where it was not ready yet. */
  private static final Table<TrayEvidence.Ripening> RIPENING =
      new Table<TrayEvidence.Ripening>()
          .csv("ready-above-degree-days", r -> r.above())
          .csv("ready-up-to-degree-days", r -> Double.isInfinite(r.upTo()) ? null : r.upTo());

  private StagesTables() {}

  private static Cell cell(StagesFigure figure, @Nullable Estimate estimate) {
    return estimate == null
        ? Cell.NONE
        : Cell.of(figure.text(estimate.value()), figure.interval(estimate));
  }

  private record Log(
      String scenario, String version, double listedTrays, boolean allRecorded, List<?> crops) {}

  static String json(Stages stages, String version) {
    return Json.text(
        new Log(
            stages.scenario().name(),
            version,
            stages.listedTrays(),
            stages.allRecorded(),
            stages.crops().stream().map(StagesTables::crop).toList()));
  }

  private static Map<String, @Nullable Object> crop(CropStages crop) {
    Map<String, @Nullable Object> members = CROP.members(crop);
    StagesFigure.of(crop).forEach(f -> members.put(f.key(), FIGURE.members(f)));
    members.put("expectedOutbreaks", crop.expectedOutbreaks());
    members.put("waitedDays", crop.waitedDays());
    return members;
  }

  private static <E extends Enum<E>> Map<String, Integer> counts(E[] kinds, ToIntFunction<E> of) {
    Map<String, Integer> counts = new LinkedHashMap<>();
    for (E kind : kinds) {
      counts.put(Table.camel(Csv.word(kind)), of.applyAsInt(kind));
    }
    return counts;
  }

  /** A row for each crop and figure: days, and shares from 0 to 1. */
  static String csv(Stages stages) {
    record Row(CropStages crop, StagesFigure figure) {}
    return new Table<Row>()
        .csv("crop", r -> r.crop.crop().name())
        .csv("figure", r -> r.figure.word())
        .csv("", FIGURE, Row::figure)
        .csv(
            stages.crops().stream()
                .flatMap(c -> StagesFigure.of(c).stream().map(f -> new Row(c, f)))
                .toList());
  }

  /** A tray, and the chance that its losses on the table were an outbreak, where they tell. */
  private record OfTray(CropStages crop, TrayEvidence tray, @Nullable Double outbreak) {
    @Nullable Integer plants(Loss loss) {
      return tray.of(loss).map(Count::plants).orElse(null);
    }

    @Nullable Integer lost(Loss loss) {
      return tray.of(loss).map(Count::lost).orElse(null);
    }
  }

  /** A row for each tray: what was read out of its lines. Empty where it does not tell. */
  static String traysCsv(Stages stages) {
    return new Table<OfTray>()
        .csv("crop", r -> r.crop.crop().name())
        .csv("sowing", r -> r.tray.tray().sowing())
        .csv("tray", r -> r.tray.tray().tray())
        .csv("place", r -> r.tray.tray().table().name())
        .csv("readiness", r -> r.tray.readiness())
        .csv("", RIPENING, r -> r.tray.ripening())
        .csv("stand", r -> r.plants(Loss.GROWING_ON))
        .csv("lost-on-table", r -> r.lost(Loss.GROWING_ON))
        .csv("outbreak-chance", OfTray::outbreak)
        .csv("potted", r -> r.plants(Loss.POTTING))
        .csv("lost-in-potting", r -> r.lost(Loss.POTTING))
        .csv("hardened", r -> r.plants(Loss.HARDENING))
        .csv("lost-in-hardening", r -> r.lost(Loss.HARDENING))
        .csv("waited-days", r -> r.tray.waitedDays())
        .csv(stages.crops().stream().flatMap(c -> rows(c).stream()).toList());
  }

  private static List<OfTray> rows(CropStages crop) {
    List<OfTray> rows = new ArrayList<>();
    int counted = 0;
    for (TrayEvidence tray : crop.trays()) {
      boolean isCounted = tray.of(Loss.GROWING_ON).isPresent();
      rows.add(new OfTray(crop, tray, isCounted ? crop.outbreaks().get(counted++) : null));
    }
    return rows;
  }
}
