package propcap.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import propcap.evidence.CropEntry;
import propcap.evidence.CurveFit;
import propcap.evidence.Estimate;
import propcap.evidence.FitTest;
import propcap.evidence.GerminationFit.AtTemperature;
import propcap.evidence.GerminationFit.Lot;
import propcap.evidence.GerminationFit.NoBase;
import propcap.evidence.ThermalFit;

/** What a germination test tells of a lot, in a grower's words. */
final class GerminationWords {
  /** Above this share of a curve by the last inspection the test counts as over. */
  private static final double NEARLY_ALL = 0.95;

  private final Lot lot;
  private final CropEntry entry;

  GerminationWords(Lot lot, CropEntry entry) {
    this.lot = lot;
    this.entry = entry;
  }

  String name() {
    return lot.lot().equals(lot.crop()) ? lot.crop() : lot.crop() + ", lot " + lot.lot();
  }

  /** The temperature that the crop list's entry is of. */
  private AtTemperature at() {
    CropEntry.Showing showing = entry.emergence();
    return lot.temperatures().stream()
        .filter(
            t ->
                showing == null
                    ? t.germinating().value() == entry.rate()
                    : t.tempC() == showing.atC())
        .findFirst()
        .orElseThrow();
  }

  String verdict() {
    AtTemperature at = at();
    String start = name() + ", at " + Limits.temperature(at.tempC()) + ": ";
    Estimate share = at.germinating();
    if (at.emerged() == 0) {
      return start
          + "nothing came up of "
          + Words.plural(at.seeds(), "seed")
          + "; the share that would is at most "
          + Words.percent(share.high())
          + ".";
    }
    String come =
        start
            + Words.percent(share.value())
            + " of the seeds come up (95 % limits "
            + Limits.percentLimits(share)
            + ")";
    CurveFit curve = at.lognormal();
    return curve == null
        ? come + "."
        : come
            + ", half of those by day "
            + Limits.days(curve.halfByDays())
            + ", nine in ten by day "
            + Limits.days(curve.mostByDays())
            + ".";
  }

  String base() {
    ThermalFit thermal = lot.thermal();
    if (thermal != null) {
      String line =
          "Nothing develops at or below "
              + Limits.temperature(thermal.base())
              + "; above it, half are up after "
              + Limits.whole(thermal.theta())
              + " degree days.";
      return thermal.isPoor()
          ? line + " One base for all temperatures fits poorly: use it with care."
          : line;
    }
    return why(lot.noBase());
  }

  private static String why(@Nullable NoBase why) {
    if (why == null) {
      return "";
    }
    return switch (why) {
      case ONE_TEMPERATURE ->
          "The base temperature cannot be told: it takes curves at two temperatures or more.";
      case COLDEST_IS_FASTEST ->
          "The base temperature cannot be told: the coldest trays were the fastest, so that all"
              + " others stood above the optimum.";
      case COLD_DOES_NOT_SLOW ->
          "The base temperature cannot be told: the colder trays were hardly slower.";
    };
  }

  String trays() {
    Estimate rho = lot.trayCorrelation();
    if (rho == null) {
      return "How trays differ cannot be told: it takes two trays of one lot at one temperature, of"
          + " which some seeds come up and some do not.";
    }
    if (rho.value() < 0.0005) {
      return "Trays differ no more than chance has it (correlation 0, at most "
          + fine(rho.high())
          + ").";
    }
    return "Two seeds of one tray are alike by a correlation of "
        + fine(rho.value())
        + " ("
        + fine(rho.low())
        + " to "
        + fine(rho.high())
        + "): "
        + Words.plural(at().seeds(), "seed")
        + " tell as much as "
        + entry.testedSeeds()
        + " would without it.";
  }

  private static String fine(double correlation) {
    return String.format(Locale.ENGLISH, "%.3f", correlation).replaceFirst("0$", "");
  }

  /** What is to be said of each temperature, beyond the numbers. */
  List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    for (AtTemperature at : lot.temperatures()) {
      remark(at, remarks);
    }
    return remarks;
  }

  private static void remark(AtTemperature at, List<String> remarks) {
    String start = "At " + Limits.temperature(at.tempC()) + " ";
    CurveFit curve = at.lognormal();
    if (at.emerged() == 0) {
      remarks.add(start + "nothing came up of " + Words.plural(at.seeds(), "seed") + ".");
    } else if (curve == null) {
      remarks.add(
          start
              + "seedlings were found at one or two inspections only, which tells no curve: look"
              + " more often.");
    } else {
      double shown = curve.shown(at.lastDays()) / curve.germinating().value();
      if (shown < NEARLY_ALL) {
        remarks.add(start + "seedlings were still coming up when the test ended: count longer.");
      }
      FitTest test = curve.test();
      CurveFit best = at.best();
      if (test != null && test.isPoor()) {
        remarks.add(
            start
                + "the lognormal curve, which the simulator takes, follows the counts poorly (a worse"
                + " fit had a chance of "
                + Words.chance(test.chance())
                + ")."
                + (best == null || best.equals(curve)
                    ? ""
                    : " The " + best.family().word() + " one follows them best."));
      }
    }
  }
}
