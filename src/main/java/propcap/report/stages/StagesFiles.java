package propcap.report.stages;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;
import propcap.evidence.CropStages;
import propcap.evidence.Estimate;
import propcap.evidence.Learned;
import propcap.evidence.Stages;
import propcap.evidence.TrayEvidence;
import propcap.evidence.TrayEvidence.Readiness;
import propcap.evidence.TrayEvidence.Untold;
import propcap.farm.Loss;
import propcap.report.kit.PutJson;
import propcap.report.kit.RowCsv;

/** What a log of trays says, for other programs and for a spreadsheet. */
final class StagesFiles {
  private StagesFiles() {}

  static String json(Stages stages, String version) {
    return new PutJson()
        .put("scenario", stages.scenario().name())
        .put("version", version)
        .put("listedTrays", stages.listedTrays())
        .put("allRecorded", stages.allRecorded())
        .put("crops", PutJson.each(stages.crops(), StagesFiles::crop))
        .text();
  }

  private static PutJson crop(CropStages crop) {
    PutJson json =
        new PutJson()
            .put("crop", crop.crop().name())
            .put("trays", crop.trays().size())
            .put("lastDay", crop.lastDay())
            .put("readiness", counts(Readiness.values(), StagesUse::key, crop::count))
            .put("untold", counts(Untold.values(), StagesUse::key, crop::count));
    StagesFigure.of(crop).forEach(f -> json.put(f.key(), learned(f.learned())));
    return json.put("expectedOutbreaks", crop.expectedOutbreaks())
        .put("waitedDays", PutJson.wholes(crop.waitedDays()));
  }

  private static <E> PutJson counts(E[] kinds, Function<E, String> key, ToIntFunction<E> count) {
    PutJson json = new PutJson();
    for (E kind : kinds) {
      json.put(key.apply(kind), count.applyAsInt(kind));
    }
    return json;
  }

  private static PutJson learned(Learned learned) {
    return new PutJson()
        .put("trays", learned.trays())
        .put("listed", estimate(learned.listed()))
        .put("alone", estimate(learned.alone()))
        .put("learned", estimate(learned.learned()));
  }

  private static @Nullable PutJson estimate(@Nullable Estimate estimate) {
    return estimate == null
        ? null
        : new PutJson()
            .put("value", estimate.value())
            .put("low", estimate.low())
            .put("high", estimate.high());
  }

  /** A row for each crop and figure: days, and shares from 0 to 1. */
  static String csv(Stages stages) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("crop", "figure", "trays"),
        List.of("listed", "listed-low", "listed-high"),
        List.of("alone", "alone-low", "alone-high"),
        List.of("learned", "learned-low", "learned-high"));
    for (CropStages crop : stages.crops()) {
      for (StagesFigure figure : StagesFigure.of(crop)) {
        Learned learned = figure.learned();
        table.row(
            List.of(crop.crop().name(), figure.word(), RowCsv.whole(learned.trays())),
            numbers(learned.listed()),
            numbers(learned.alone()),
            numbers(learned.learned()));
      }
    }
    return table.text();
  }

  private static List<String> numbers(@Nullable Estimate estimate) {
    return estimate == null
        ? List.of("", "", "")
        : RowCsv.numbers(estimate.value(), estimate.low(), estimate.high());
  }

  /** A row for each tray: what was read out of its lines. Empty where it does not tell. */
  static String traysCsv(Stages stages) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("crop", "sowing", "tray", "place", "readiness", "ready-above-degree-days"),
        List.of("ready-up-to-degree-days", "stand", "lost-on-table", "outbreak-chance"),
        List.of("potted", "lost-in-potting", "hardened", "lost-in-hardening", "waited-days"));
    for (CropStages crop : stages.crops()) {
      int counted = 0;
      for (TrayEvidence tray : crop.trays()) {
        Integer waited = tray.waitedDays();
        String outbreak =
            tray.of(Loss.GROWING_ON).isEmpty()
                ? ""
                : RowCsv.number(crop.outbreaks().get(counted++));
        table.row(
            List.of(crop.crop().name(), tray.tray().sowing(), tray.tray().tray()),
            List.of(tray.tray().table().name(), StagesUse.word(tray.readiness())),
            ripening(tray.ripening()),
            count(tray.of(Loss.GROWING_ON)),
            List.of(outbreak),
            count(tray.of(Loss.POTTING)),
            count(tray.of(Loss.HARDENING)),
            List.of(waited == null ? "" : RowCsv.whole(waited)));
      }
    }
    return table.text();
  }

  /** No upper end where it was not ready yet. */
  private static List<String> ripening(TrayEvidence.@Nullable Ripening ripening) {
    return ripening == null
        ? List.of("", "")
        : List.of(
            RowCsv.number(ripening.above()),
            Double.isInfinite(ripening.upTo()) ? "" : RowCsv.number(ripening.upTo()));
  }

  private static List<String> count(Optional<TrayEvidence.Count> count) {
    return count.map(c -> RowCsv.wholes(c.plants(), c.lost())).orElse(List.of("", ""));
  }
}
