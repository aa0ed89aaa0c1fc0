package propcap.report.stages;

import static propcap.report.kit.ListNumbers.days;
import static propcap.report.kit.ListNumbers.percent;
import static propcap.report.kit.ListNumbers.temperature;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import propcap.evidence.CropStages;
import propcap.evidence.Learned;
import propcap.evidence.Stages;
import propcap.farm.Crop;

/**
 * What was learned as a crop list has it: to be put in the place of the same keys there, or, as it
 * is, into a scenario that extends another.
 */
final class StagesEntry {
  private StagesEntry() {}

  static List<String> lines(Stages stages) {
    List<String> lines = new ArrayList<>();
    lines.add("crops:");
    stages.crops().forEach(c -> add(lines, c));
    return lines;
  }

  /** What trays of the log tell of a crop, by key of the crop, then by key within it. */
  static Map<String, Map<String, String>> values(CropStages stages) {
    Crop learned = stages.learned();
    Crop.GrowingOn growing = learned.growingOn();
    Map<String, String> onTheTable = new LinkedHashMap<>();
    put(onTheTable, "takes", stages.takesDays(), days(growing.takesDays()));
    put(onTheTable, "spread", stages.spread(), percent(growing.spread()));
    put(onTheTable, "loss", stages.loss(), percent(growing.loss()));
    if (growing.dampingOff().chance() > 0) {
      put(onTheTable, "damping-off", stages.outbreakChance(), outbreak(growing.dampingOff()));
    }
    put(onTheTable, "holds", stages.holdsDays(), days(growing.holdsDays()));
    put(
        onTheTable,
        "overheld-loss",
        stages.overheldLoss(),
        percent(growing.overheldLossPerDay()) + "/day");
    Map<String, String> inPotting = new LinkedHashMap<>();
    Learned pottingLoss = stages.pottingLoss();
    if (pottingLoss != null && learned.pottingOn().when() != Crop.PottingOn.When.NEVER) {
      put(inPotting, "loss", pottingLoss, percent(learned.pottingOn().loss()));
    }
    Map<String, String> outdoors = new LinkedHashMap<>();
    put(outdoors, "loss", stages.hardeningLoss(), percent(learned.hardening().loss()));
    Map<String, Map<String, String>> values = new LinkedHashMap<>();
    values.put("growing-on", onTheTable);
    values.put("potting-on", inPotting);
    values.put("hardening", outdoors);
    values.values().removeIf(Map::isEmpty);
    return values;
  }

  private static void put(Map<String, String> values, String key, Learned learned, String text) {
    if (learned.trays() > 0) {
      values.put(key, text);
    }
  }

  private static String outbreak(Crop.DampingOff outbreak) {
    return "{chance: "
        + percent(outbreak.chance())
        + ", severity: "
        + percent(outbreak.severity())
        + "}";
  }

  private static void add(List<String> lines, CropStages stages) {
    Crop crop = stages.learned();
    Crop.GrowingOn growing = crop.growingOn();
    lines.add("  " + key(crop.name()) + ":");
    lines.add(
        "    growing-on: {base: "
            + temperature(growing.baseC())
            + ", optimum: "
            + temperature(growing.optimumC())
            + ", at: "
            + temperature(growing.atC())
            + ", takes: "
            + days(growing.takesDays())
            + ",");
    lines.add(
        "                 spread: "
            + percent(growing.spread())
            + ", loss: "
            + percent(growing.loss())
            + ", damping-off: "
            + outbreak(growing.dampingOff())
            + ",");
    lines.add(
        "                 holds: "
            + days(growing.holdsDays())
            + ", overheld-loss: "
            + percent(growing.overheldLossPerDay())
            + "/day}");
    Crop.PottingOn potting = crop.pottingOn();
    if (potting.when() != Crop.PottingOn.When.NEVER) {
      lines.add(
          "    potting-on: {when: "
              + potting.when().name().toLowerCase(Locale.ROOT).replace('_', '-')
              + ", pots-per-tray: "
              + potting.potsPerTray()
              + ", takes: "
              + days(potting.takesDays())
              + ", holds: "
              + days(potting.holdsDays())
              + ", loss: "
              + percent(potting.loss())
              + "}");
    }
    Crop.Hardening hardening = crop.hardening();
    lines.add(
        "    hardening: {takes: "
            + days(hardening.takesDays())
            + ", fit-above: "
            + temperature(hardening.fitAboveC())
            + ", kill-below: "
            + temperature(hardening.killBelowC())
            + ",");
    lines.add(
        "                frost-loss: "
            + percent(hardening.frostLoss())
            + ", loss: "
            + percent(hardening.loss())
            + ", frost-risk: "
            + percent(hardening.frostRisk())
            + ", offset: "
            + hardening.offsetDays()
            + " days}");
  }

  /** A name as a key of YAML: quoted unless it is plain letters. */
  private static String key(String name) {
    return name.matches("[a-z][a-z0-9 -]*")
        ? name
        : '"' + name.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
