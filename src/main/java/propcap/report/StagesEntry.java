package propcap.report;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import propcap.evidence.CropStages;
import propcap.evidence.Stages;
import propcap.farm.Crop;

/**
 * What was learned as a crop list has it: to be put in the place of the same keys there, or, as it
 * is, into a scenario that extends another.
 */
final class StagesEntry {
  /** No figure of a log is known better. */
  private static final int DIGITS = 3;

  private StagesEntry() {}

  static List<String> lines(Stages stages) {
    List<String> lines = new ArrayList<>();
    lines.add("crops:");
    stages.crops().forEach(c -> add(lines, c));
    return lines;
  }

  private static void add(List<String> lines, CropStages stages) {
    Crop crop = stages.learned();
    Crop.GrowingOn growing = crop.growingOn();
    Crop.DampingOff outbreak = growing.dampingOff();
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
            + ", damping-off: {chance: "
            + percent(outbreak.chance())
            + ", severity: "
            + percent(outbreak.severity())
            + "},");
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

  private static String temperature(double tempC) {
    return number(tempC, 4) + " C";
  }

  private static String days(double days) {
    return number(days, DIGITS) + " days";
  }

  private static String percent(double share) {
    return number(100 * share, DIGITS) + " %";
  }

  static String number(double number, int digits) {
    String text =
        BigDecimal.valueOf(Words.finite(number))
            .round(new MathContext(digits, RoundingMode.HALF_EVEN))
            .stripTrailingZeros()
            .toPlainString();
    return text.equals("-0") ? "0" : text;
  }
}
