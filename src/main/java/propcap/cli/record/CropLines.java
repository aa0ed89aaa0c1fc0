package propcap.cli.record;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import propcap.evidence.stages.StageDays;
import propcap.farm.Crop;
import propcap.files.scenario.CropBook;

/** A crop list on the terminal, 80 signs wide but for what is shown as it was written. */
final class CropLines {
  private static final int WIDTH = 80;

  /** Common practice calls hardy what stands a night some degrees below freezing. */
  private static final double HARDY_C = -4;

  private CropLines() {}

  /** One line a crop. */
  static List<String> table(CropBook book, @Nullable Double atC) {
    List<String> lines = new ArrayList<>();
    lines.add(row("crop", "kind", "cells", "half show after", "weeks", "frost"));
    for (CropBook.Entry entry : book.entries()) {
      Crop crop = entry.crop();
      StageDays days = days(crop, atC);
      String half =
          (days.comesUp() ? days(days.halfShow()) : "never")
              + " at "
              + number(atC == null ? crop.emergence().atC() : atC)
              + " C";
      String weeks = Double.isFinite(days.weeksToBed()) ? number(days.weeksToBed()) : "-";
      lines.add(
          row(
              crop.name(),
              entry.kind(),
              String.valueOf(crop.cells()),
              half,
              weeks,
              hardiness(crop.hardening())));
    }
    lines.add("");
    lines.add("weeks: from sowing to the bed, hardening off included, where nothing waits.");
    lines.add("propcap crops NAME shows an entry, with its sources.");
    return lines;
  }

  private static String row(
      String name, String kind, String cells, String half, String weeks, String frost) {
    return String.format(
            Locale.ENGLISH, "%-19s %-9s %5s  %-21s %5s  %s", name, kind, cells, half, weeks, frost)
        .stripTrailing();
  }

  /** An entry as it is written, how long it takes, and its sources. */
  static List<String> entry(CropBook.Entry entry, @Nullable Double atC) {
    Crop crop = entry.crop();
    List<String> lines = new ArrayList<>();
    String what = (entry.kind().isEmpty() ? "" : entry.kind() + ", ") + hardiness(crop.hardening());
    lines.add(crop.name() + " (" + what + ")");
    lines.add("");
    lines.addAll(entry.text());
    lines.add("");
    lines.addAll(times(crop, atC));
    if (!entry.sources().isEmpty()) {
      lines.add("");
      lines.add("Sources:");
      for (CropBook.Source source : entry.sources()) {
        lines.addAll(wrapped("  [" + source.tag() + "] ", source.reference()));
      }
    }
    return lines;
  }

  private static List<String> times(Crop crop, @Nullable Double atC) {
    StageDays days = days(crop, atC);
    String showing = at(atC == null ? crop.emergence().atC() : atC);
    String growing = at(atC == null ? crop.growingOn().atC() : atC);
    List<String> lines = new ArrayList<>();
    lines.add(
        days.comesUp()
            ? "Half of the seedlings show after "
                + days(days.halfShow())
                + ", nine in ten after "
                + days(days.mostShow())
                + showing
                + "."
            : "It does not come up" + showing + ".");
    lines.add(
        days.growsOn()
            ? "Growing on takes "
                + days(days.growingOn())
                + (days.inPots() > 0 ? " and, in the pot, " + days(days.inPots()) : "")
                + growing
                + "."
            : "It does not grow on" + growing + ".");
    lines.add("Hardening off takes " + days(days.hardening()) + " fit for it.");
    if (Double.isFinite(days.weeksToBed())) {
      lines.add(
          "From sowing to the bed: "
              + number(days.weeksToBed())
              + " weeks at the earliest, where nothing waits.");
    }
    return lines;
  }

  private static StageDays days(Crop crop, @Nullable Double atC) {
    return atC == null ? StageDays.asGiven(crop) : StageDays.at(crop, atC);
  }

  private static String at(double tempC) {
    return " at " + number(tempC) + " C (" + number(tempC * 9 / 5 + 32) + " F)";
  }

  private static String days(double days) {
    return number(days) + (number(days).equals("1") ? " day" : " days");
  }

  /** One decimal, and none where it would be 0. */
  private static String number(double number) {
    return BigDecimal.valueOf(number)
        .setScale(1, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  /** By the night that costs plants. */
  private static String hardiness(Crop.Hardening hardening) {
    if (hardening.killBelowC() <= HARDY_C) {
      return "hardy";
    }
    return hardening.killBelowC() < 0 ? "half-hardy" : "tender";
  }

  private static List<String> wrapped(String head, String text) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(head);
    for (String word : text.split(" ", -1)) {
      if (line.length() + word.length() > WIDTH) {
        lines.add(line.toString().stripTrailing());
        line = new StringBuilder(" ".repeat(head.length()));
      }
      line.append(word).append(' ');
    }
    lines.add(line.toString().stripTrailing());
    return lines;
  }
}
