package propcap.report.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import propcap.evidence.Estimate;
import propcap.evidence.stages.CropStages;
import propcap.evidence.stages.Learned;
import propcap.evidence.stages.Stages;
import propcap.evidence.stages.TrayEvidence.Readiness;
import propcap.report.kit.ListNumbers;
import propcap.report.kit.Words;

/** What a log of trays says of one crop, in words. */
record StagesWords(CropStages crop, double listedTrays) {

  static List<StagesWords> of(Stages stages) {
    return stages.crops().stream().map(c -> new StagesWords(c, stages.listedTrays())).toList();
  }

  String name() {
    return crop.crop().name();
  }

  /** How long growing on takes, which is what most is planned by. */
  String verdict() {
    Learned takes = crop.takesDays();
    String at = " at " + temperature(crop.crop().growingOn().atC());
    if (takes.trays() == 0) {
      return name()
          + ": no tray tells how long growing on takes, so it stays at the crop list’s "
          + days(takes.listed().value())
          + " days"
          + at
          + "."
          + (crop.count(Readiness.MOVED) > 0
              ? " Write a row ready, also where a tray is moved the same day."
              : "");
    }
    return "%s: growing on takes %s days%s (%s–%s), by %s and the crop list’s %s."
        .formatted(
            name(),
            days(takes.learned().value()),
            at,
            days(takes.learned().low()),
            days(takes.learned().high()),
            Words.plural(takes.trays(), "tray"),
            days(takes.listed().value()));
  }

  String losses() {
    List<String> parts = new ArrayList<>();
    parts.add("on the table " + percents(crop.loss()));
    Learned potting = crop.pottingLoss();
    if (potting != null) {
      parts.add("in potting on " + percents(potting));
    }
    parts.add("in hardening off " + percents(crop.hardeningLoss()));
    return "Lost " + Words.list(parts) + ".";
  }

  String outbreaks() {
    if (crop.outbreaks().isEmpty()) {
      return "Damping-off: no tray has both its counts on the table, so nothing was learned.";
    }
    return "Damping-off: about "
        + Words.amount(crop.expectedOutbreaks())
        + " of "
        + Words.plural(crop.outbreaks().size(), "tray")
        + "; a tray’s chance of it is "
        + percents(crop.outbreakChance())
        + (crop.severity().trays() == 0
            ? "."
            : ", and it takes " + percents(crop.severity()) + " of the plants.");
  }

  String holding() {
    List<Integer> waited = crop.waitedDays();
    String wait = waited.isEmpty() ? "No tray tells how long ready plugs waited. " : waited(waited);
    Learned holds = crop.holdsDays();
    if (holds.trays() == 0 && waited.isEmpty()) {
      return wait.strip();
    }
    if (holds.trays() == 0) {
      return wait
          + "None was held long enough to tell how long they keep, so that stays at the crop list’s "
          + days(holds.listed().value())
          + " days.";
    }
    return wait
        + "They keep for "
        + days(holds.learned().value())
        + " days ("
        + days(holds.learned().low())
        + "–"
        + days(holds.learned().high())
        + "; the crop list has "
        + days(holds.listed().value())
        + "), and each day beyond costs "
        + percents(crop.overheldLoss())
        + " of the plants.";
  }

  private static String waited(List<Integer> waited) {
    return "Ready plugs waited for their first move: half of %s up to %s, the longest %s. "
        .formatted(
            Words.plural(waited.size(), "tray"),
            Words.plural(waited.get((waited.size() - 1) / 2), "day"),
            Words.plural(waited.get(waited.size() - 1), "day"));
  }

  /** How many trays were used how, and what the log cannot tell apart. */
  List<String> use() {
    List<String> sentences = new ArrayList<>(StagesUse.sentences(crop));
    crop.hardenedUnsaid()
        .filter(count -> count.share() > crop.hardeningLoss().learned().high())
        .ifPresent(
            count ->
                sentences.add(
                    "Of the plants moved out without a row ready "
                        + Words.percent(count.share())
                        + " were lost before the bed, by hardening off and by being held too long"
                        + " together. How much of it is which, the log does not say: the two are"
                        + " parted by how long growing on takes and plugs keep."));
    return sentences;
  }

  /** Where the log contradicts the list; empty where it does not. */
  List<String> warnings() {
    List<String> contradicted = new ArrayList<>();
    contradiction(contradicted, "how long growing on takes", crop.takesDays());
    contradiction(contradicted, "its spread", crop.spread());
    contradiction(contradicted, "losses on the table", crop.loss());
    contradiction(contradicted, "damping-off", crop.outbreakChance());
    Learned potting = crop.pottingLoss();
    if (potting != null) {
      contradiction(contradicted, "losses in potting on", potting);
    }
    contradiction(contradicted, "losses in hardening off", crop.hardeningLoss());
    return contradicted.isEmpty()
        ? List.of()
        : List.of(
            name()
                + ": the log by itself contradicts the crop list on "
                + Words.list(contradicted)
                + ". What is written is between the two; with more trays it goes over to the log.");
  }

  private static void contradiction(List<String> all, String what, Learned learned) {
    if (learned.isContradicted()) {
      all.add(what);
    }
  }

  private static String percents(Learned learned) {
    Estimate now = learned.learned();
    return learned.trays() == 0
        ? Words.percent(now.value()) + " as listed"
        : Words.percent(now.value()) + " (" + percents(now) + ")";
  }

  static String percents(Estimate estimate) {
    return Words.percent(estimate.low()) + " to " + Words.percent(estimate.high());
  }

  static String days(double days) {
    return String.format(Locale.ENGLISH, "%.1f", Words.finite(days));
  }

  static String temperature(double tempC) {
    return ListNumbers.temperature(tempC);
  }
}
