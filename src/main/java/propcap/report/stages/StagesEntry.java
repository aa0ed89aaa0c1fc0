package propcap.report.stages;

import static propcap.report.kit.ListNumbers.days;
import static propcap.report.kit.ListNumbers.percent;
import static propcap.report.kit.ListNumbers.temperature;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import propcap.evidence.stages.CropStages;
import propcap.evidence.stages.Learned;
import propcap.evidence.stages.Stages;
import propcap.farm.Crop;

/**
 * What was learned as a crop list has it: to be put in the place of the same keys there, or, as it
 * is, into a scenario that extends another.
 */
final class StagesEntry {
  private StagesEntry() {}

  static List<String> lines(Stages stages) {
    return Stream.concat(
            Stream.of("crops:"), stages.crops().stream().flatMap(c -> lines(c.learned())))
        .toList();
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
      String chance = percent(growing.dampingOff().chance());
      put(onTheTable, "damping-off.chance", stages.outbreakChance(), chance);
      String severity = percent(growing.dampingOff().severity());
      put(onTheTable, "damping-off.severity", stages.outbreakChance(), severity);
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
    return "{chance: %s, severity: %s}"
        .formatted(percent(outbreak.chance()), percent(outbreak.severity()));
  }

  private static Stream<String> lines(Crop crop) {
    Crop.GrowingOn growing = crop.growingOn();
    Crop.Hardening hardening = crop.hardening();
    return """
          %s:
            growing-on: {base: %s, optimum: %s, at: %s, takes: %s,
                         spread: %s, loss: %s, damping-off: %s,
                         holds: %s, overheld-loss: %s/day}
        %s    hardening: {takes: %s, fit-above: %s, kill-below: %s,
                        frost-loss: %s, loss: %s, frost-risk: %s, offset: %d days}
        """
        .formatted(
            key(crop.name()),
            temperature(growing.baseC()),
            temperature(growing.optimumC()),
            temperature(growing.atC()),
            days(growing.takesDays()),
            percent(growing.spread()),
            percent(growing.loss()),
            outbreak(growing.dampingOff()),
            days(growing.holdsDays()),
            percent(growing.overheldLossPerDay()),
            potting(crop.pottingOn()),
            days(hardening.takesDays()),
            temperature(hardening.fitAboveC()),
            temperature(hardening.killBelowC()),
            percent(hardening.frostLoss()),
            percent(hardening.loss()),
            percent(hardening.frostRisk()),
            hardening.offsetDays())
        .lines();
  }

  private static String potting(Crop.PottingOn potting) {
    return potting.when() == Crop.PottingOn.When.NEVER
        ? ""
        : "    potting-on: {when: %s, pots-per-tray: %d, takes: %s, holds: %s, loss: %s}\n"
            .formatted(
                potting.when().word(),
                potting.potsPerTray(),
                days(potting.takesDays()),
                days(potting.holdsDays()),
                percent(potting.loss()));
  }

  /** A name as a key of YAML: quoted unless it is plain letters. */
  private static String key(String name) {
    return name.matches("[a-z][a-z0-9 -]*")
        ? name
        : '"' + name.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }
}
