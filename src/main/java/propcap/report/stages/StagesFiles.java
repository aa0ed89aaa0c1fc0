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
import propcap.report.kit.Csv;
import propcap.report.kit.Json;

/** What a log of trays says, for other programs and for a spreadsheet. */
final class StagesFiles {
  private StagesFiles() {}

  static String json(Stages stages, String version) {
    return new Json()
        .put("scenario", stages.scenario().name())
        .put("version", version)
        .put("listedTrays", stages.listedTrays())
        .put("allRecorded", stages.allRecorded())
        .put("crops", Json.each(stages.crops(), StagesFiles::crop))
        .text();
  }

  private static Json crop(CropStages crop) {
    Json json =
        new Json()
            .put("crop", crop.crop().name())
            .put("trays", crop.trays().size())
            .put("lastDay", crop.lastDay())
            .put("readiness", counts(Readiness.values(), StagesUse::key, crop::count))
            .put("untold", counts(Untold.values(), StagesUse::key, crop::count));
    StagesFigure.of(crop).forEach(f -> json.put(f.key(), learned(f.learned())));
    return json.put("expectedOutbreaks", crop.expectedOutbreaks())
        .put("waitedDays", Json.wholes(crop.waitedDays()));
  }

  private static <E> Json counts(E[] kinds, Function<E, String> key, ToIntFunction<E> count) {
    Json json = new Json();
    for (E kind : kinds) {
      json.put(key.apply(kind), count.applyAsInt(kind));
    }
    return json;
  }

  private static Json learned(Learned learned) {
    return new Json()
        .put("trays", learned.trays())
        .put("listed", estimate(learned.listed()))
        .put("alone", estimate(learned.alone()))
        .put("learned", estimate(learned.learned()));
  }

  private static @Nullable Json estimate(@Nullable Estimate estimate) {
    return estimate == null
        ? null
        : new Json()
            .put("value", estimate.value())
            .put("low", estimate.low())
            .put("high", estimate.high());
  }

  /** A row for each crop and figure: days, and shares from 0 to 1. */
  static String csv(Stages stages) {
    Csv table = new Csv();
    table.row(
        List.of("crop", "figure", "trays"),
        List.of("listed", "listed-low", "listed-high"),
        List.of("alone", "alone-low", "alone-high"),
        List.of("learned", "learned-low", "learned-high"));
    for (CropStages crop : stages.crops()) {
      for (StagesFigure figure : StagesFigure.of(crop)) {
        Learned learned = figure.learned();
        table.row(
            List.of(crop.crop().name(), figure.word(), Csv.whole(learned.trays())),
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
        : Csv.numbers(estimate.value(), estimate.low(), estimate.high());
  }

  /** A row for each tray: what was read out of its lines. Empty where it does not tell. */
  static String traysCsv(Stages stages) {
    Csv table = new Csv();
    table.row(
        List.of("crop", "sowing", "tray", "place", "readiness", "ready-above-degree-days"),
        List.of("ready-up-to-degree-days", "stand", "lost-on-table", "outbreak-chance"),
        List.of("potted", "lost-in-potting", "hardened", "lost-in-hardening", "waited-days"));
    for (CropStages crop : stages.crops()) {
      int counted = 0;
      for (TrayEvidence tray : crop.trays()) {
        Integer waited = tray.waitedDays();
        String outbreak =
            tray.of(Loss.GROWING_ON).isEmpty() ? "" : Csv.number(crop.outbreaks().get(counted++));
        table.row(
            List.of(crop.crop().name(), tray.tray().sowing(), tray.tray().tray()),
            List.of(tray.tray().table().name(), tray.readiness().word()),
            ripening(tray.ripening()),
            count(tray.of(Loss.GROWING_ON)),
            List.of(outbreak),
            count(tray.of(Loss.POTTING)),
            count(tray.of(Loss.HARDENING)),
            List.of(waited == null ? "" : Csv.whole(waited)));
      }
    }
    return table.text();
  }

  /** No upper end where it was not ready yet. */
  private static List<String> ripening(TrayEvidence.@Nullable Ripening ripening) {
    return ripening == null
        ? List.of("", "")
        : List.of(
            Csv.number(ripening.above()),
            Double.isInfinite(ripening.upTo()) ? "" : Csv.number(ripening.upTo()));
  }

  private static List<String> count(Optional<TrayEvidence.Count> count) {
    return count.map(c -> Csv.wholes(c.plants(), c.lost())).orElse(List.of("", ""));
  }
}
