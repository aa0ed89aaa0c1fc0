package propcap.report.germination;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
import propcap.evidence.germination.CropEntry;
import propcap.evidence.germination.CurveFit;
import propcap.evidence.germination.EquivalentCount;
import propcap.evidence.germination.GerminatingShare;
import propcap.evidence.germination.GerminationFit.AtTemperature;
import propcap.evidence.germination.GerminationFit.Lot;
import propcap.evidence.germination.GerminationFit.NoBase;
import propcap.evidence.germination.GoodnessOfFit;
import propcap.evidence.germination.ThermalFit;
import propcap.report.kit.ListNumbers;
import propcap.report.kit.Words;

/** What a germination test tells of a lot, in a grower's words. */
final class GerminationWords {
  private static final String FEW_TRAYS =
      " So few trays hardly tell: if they do differ, the limits of the share are too narrow.";

  private static final String NEARLY_ALL_UP =
      " Nearly all came up, so a bad tray among many may not have been seen: if there are such, the"
          + " limits of the share are too narrow.";

  /**
   * Above this share, and from this correlation, limits of the share held in 74 to 93 of 100 made
   * tests of 4 to 12 trays; below, in 92 or more.
   */
  private static final double NEARLY_ALL = 0.93;

  private static final double MUCH_ALIKE = 0.04;

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
    return lot.temperatures().stream()
        .filter(t -> t.tempC() == entry.atC())
        .findFirst()
        .orElseThrow();
  }

  String verdict() {
    AtTemperature at = at();
    String start = name() + ", at " + Limits.temperature(at.tempC()) + ": ";
    Estimate share = at.germinating().share();
    if (at.emerged() == 0) {
      return start
          + "nothing came up of "
          + Words.plural(at.seeds(), "seed")
          + "; if the test was long enough, the share that would is at most "
          + Words.percent(share.high())
          + ".";
    }
    boolean endedEarly = at.germinating().endedEarly();
    String come =
        start
            + (endedEarly
                ? "the test ended too early to tell how many of the seeds come up: "
                    + Limits.percentLimits(share)
                    + " (95 % limits)"
                : "%s of the seeds come up (95 %% limits %s)"
                    .formatted(Words.percent(share.value()), Limits.percentLimits(share)));
    CurveFit curve = at.lognormal();
    if (curve == null) {
      return come + ".";
    }
    return come
        + (endedEarly
            ? ". If it is " + Words.percent(share.value()) + ", half of those come by day "
            : ", half of those by day ")
        + Limits.days(curve.halfByDays())
        + ", nine in ten by day "
        + Limits.days(curve.mostByDays())
        + ".";
  }

  /** What the crop list gets where that is not what the verdict says. */
  private void written(List<String> remarks) {
    EquivalentCount tested = entry.tested();
    GerminatingShare germinating = at().germinating();
    if (germinating.endedEarly() || !isNear(tested.rate(), germinating.share().value())) {
      remarks.add(
          "The crop list gets rate %s and tested-seeds %s: about as unsure as these limits."
              .formatted(ListNumbers.percent(tested.rate()), tested.seeds()));
    }
  }

  private static boolean isNear(double one, double other) {
    return Math.abs(one - other) < 5e-4;
  }

  /** Where there was a choice of temperatures. */
  private void best(List<String> remarks) {
    if (lot.temperatures().size() < 2) {
      return;
    }
    AtTemperature best = lot.best();
    String bestC = Limits.temperature(best.tempC());
    remarks.add(
        best.tempC() == entry.atC()
            ? "Of %s %s is the best: most come up, or within two points of it, and soonest."
                .formatted(Words.plural(lot.temperatures().size(), "temperature"), bestC)
            : "The best temperature is %s, where %s come up; the crop list has another."
                .formatted(bestC, Words.percent(best.germinating().share().value())));
  }

  String base() {
    ThermalFit thermal = lot.thermal();
    return thermal == null
        ? why(lot.noBase())
        : "Nothing develops at or below %s; above it, half are up after %s degree days.%s"
            .formatted(
                Limits.temperature(thermal.base()),
                Limits.whole(thermal.theta()),
                drawnThrough(thermal.temperaturesC()));
  }

  private String drawnThrough(List<Double> temperaturesC) {
    double last = temperaturesC.get(temperaturesC.size() - 1);
    List<String> leftOut =
        lot.temperatures().stream()
            .filter(at -> at.lognormal() != null && at.tempC() > last)
            .map(at -> Limits.temperature(at.tempC()))
            .toList();
    String beyond =
        leftOut.isEmpty()
            ? ""
            : " %s %s left out, as beyond the optimum."
                .formatted(Words.list(leftOut), leftOut.size() == 1 ? "is" : "are");
    return temperaturesC.size() > 2
        ? beyond
        : beyond + " Two temperatures leave nothing to test the line by.";
  }

  private static String why(@Nullable NoBase why) {
    if (why == null) {
      return "";
    }
    String none = "The base temperature cannot be told: ";
    return switch (why) {
      case ONE_TEMPERATURE -> none + "it takes curves at two temperatures or more.";
      case COLDEST_IS_FASTEST ->
          none + "the coldest trays were the fastest, so that all others stood above the optimum.";
      case OPTIMUM_TOO_NEAR ->
          none
              + "one temperature at most lies surely below the optimum; from there on it came up no"
              + " sooner. Count at cooler ones.";
      case COLD_DOES_NOT_SLOW ->
          none + "the colder trays were not slower by more than chance has it.";
      case BELOW_FREEZING ->
          none
              + "the line has it deep in the frost, where no seed develops. The warmest trays may"
              + " have stood above the optimum, or the colder ones not as cold as written.";
      case FITS_POORLY ->
          none
              + "one line through the temperatures fits poorly (a worse fit has a chance below"
              + " 5 %).";
    };
  }

  String trays() {
    Estimate rho = lot.trayCorrelation();
    if (rho == null) {
      return "How trays differ cannot be told: it takes two trays of one lot at one temperature, looked"
          + " at on one day, of which some seeds come up and some do not. The limits take them as"
          + " alike.";
    }
    String few = isOfFewTrays() ? FEW_TRAYS : mayHideABadTray(rho) ? NEARLY_ALL_UP : "";
    if (rho.value() < 0.0005) {
      return "Trays differ no more than chance has it (correlation 0, at most %s).%s"
          .formatted(fine(rho.high()), few);
    }
    String alike =
        "Two seeds of one tray are alike by a correlation of %s (%s to %s)"
            .formatted(fine(rho.value()), fine(rho.low()), fine(rho.high()));
    boolean asMany = at().germinating().endedEarly() || entry.tested().seeds() >= at().seeds();
    return asMany
        ? alike + "." + few
        : "%s: %s tell as much as %s would in trays that are alike.%s"
            .formatted(
                alike,
                Words.plural(at().seeds(), "seed"),
                Words.count(entry.tested().seeds()),
                few);
  }

  /** Three trays beside the first tell how trays differ, be it of several temperatures. */
  private boolean isOfFewTrays() {
    return lot.temperatures().stream().mapToInt(at -> at.trays().size() - 1).sum() < 3;
  }

  private boolean mayHideABadTray(Estimate rho) {
    return at().germinating().share().value() > NEARLY_ALL && rho.high() > MUCH_ALIKE;
  }

  private static String fine(double correlation) {
    return String.format(Locale.ENGLISH, "%.3f", correlation).replaceFirst("0$", "");
  }

  /** What is to be said beyond the numbers. */
  List<String> remarks() {
    List<String> remarks = new ArrayList<>();
    written(remarks);
    for (AtTemperature at : lot.temperatures()) {
      remark(at, remarks);
    }
    best(remarks);
    return remarks;
  }

  private static void remark(AtTemperature at, List<String> remarks) {
    String start = "At " + Limits.temperature(at.tempC()) + " ";
    CurveFit curve = at.lognormal();
    if (at.germinating().endedEarly()) {
      remarks.add(start + "seedlings were still coming up when the test ended: count longer.");
    }
    if (at.emerged() == 0) {
      remarks.add(start + "nothing came up of " + Words.plural(at.seeds(), "seed") + ".");
    } else if (curve == null) {
      remarks.add(
          start
              + "seedlings were found at one or two inspections only, which tells no curve: look"
              + " more often.");
    } else {
      GoodnessOfFit test = curve.test();
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
