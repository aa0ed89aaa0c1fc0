package propcap.report.stages;

import java.util.ArrayList;
import java.util.List;
import propcap.evidence.stages.CropStages;
import propcap.evidence.stages.Stages;
import propcap.evidence.stages.TrayEvidence.Readiness;
import propcap.evidence.stages.TrayEvidence.Untold;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;

/** How many trays of a log were used how, and which were left out and why. */
final class StagesUse {
  private static final List<Readiness> USED =
      List.of(Readiness.WRITTEN, Readiness.MOVED, Readiness.NOT_YET);

  private StagesUse() {}

  /** In a few words, of the whole log. */
  static String shortly(Stages stages) {
    int trays = stages.crops().stream().mapToInt(c -> c.trays().size()).sum();
    int written = count(stages, Readiness.WRITTEN);
    String log = Words.plural(trays, "tray") + " of the log";
    if (written == trays) {
      return log + ", all written ready";
    }
    List<String> parts = new ArrayList<>();
    add(parts, written, "written ready");
    add(parts, count(stages, Readiness.MOVED), "ready by their move");
    add(parts, count(stages, Readiness.NOT_YET), "not yet ready");
    add(
        parts,
        trays - USED.stream().mapToInt(readiness -> count(stages, readiness)).sum(),
        "left out");
    return log + ": " + String.join(", ", parts);
  }

  private static int count(Stages stages, Readiness readiness) {
    return stages.crops().stream().mapToInt(c -> c.count(readiness)).sum();
  }

  /** In sentences, of one crop. */
  static List<String> sentences(CropStages crop) {
    List<String> sentences = new ArrayList<>();
    List<String> used = new ArrayList<>();
    add(used, crop.count(Readiness.WRITTEN), "with the day on which it was ready");
    add(used, crop.count(Readiness.MOVED), "moved without it, so ready by then");
    add(
        used,
        crop.count(Readiness.NOT_YET),
        "not ready by " + Dates.dayAndYear(crop.lastDay()) + ", the log’s end, or when thrown out");
    if (!used.isEmpty()) {
      sentences.add("Trays in what follows: " + Words.list(used) + ".");
    }
    List<String> untimed = new ArrayList<>();
    add(untimed, crop.count(Readiness.NO_OFF_HEAT), "without a row off-heat");
    add(untimed, crop.count(Readiness.AT_ONCE), "ready or moved without a day of warmth");
    add(
        untimed,
        crop.count(Readiness.NOT_SAID),
        "never moved, in a log that does not always say when trays are ready");
    add(
        untimed,
        crop.count(Readiness.FORGOTTEN),
        "without a row for twice as long as any other took");
    leftOut(sentences, "how long growing on takes", untimed);
    List<String> uncounted = new ArrayList<>();
    add(uncounted, crop.count(Untold.KILLING_NIGHT), "outside on a night that kills");
    add(uncounted, crop.count(Untold.THROWN_OUT_ALIVE), "thrown out with plants left");
    add(
        uncounted,
        crop.count(Untold.HELD_NOT_KNOWN),
        "of which it is not known how long they were held");
    leftOut(sentences, "the losses, for that part of their lives", uncounted);
    return sentences;
  }

  private static void leftOut(List<String> sentences, String of, List<String> reasons) {
    if (!reasons.isEmpty()) {
      sentences.add("Left out of " + of + ": " + Words.list(reasons) + ".");
    }
  }

  private static void add(List<String> parts, int trays, String what) {
    if (trays > 0) {
      parts.add(Words.count(trays) + " " + what);
    }
  }
}
