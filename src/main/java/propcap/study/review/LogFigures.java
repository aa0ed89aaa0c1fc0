package propcap.study.review;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.math3.stat.descriptive.moment.SecondMoment;
import propcap.farm.Crop;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.past.WrittenTray;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Samples;

/**
 * The figures of a log, crop by crop, held against those of the same trays in logs of simulated
 * seasons: like with like, so that places that were full and lots that are uneven explain what they
 * can.
 */
final class LogFigures {
  /** Standard deviation of what is rounded to whole ones. */
  private static final double ROUNDING = 1 / Math.sqrt(12);

  /** Springs that must have a figure: of those without one it must be known how they differ. */
  private static final int FEWEST = 3;

  private final List<Of> figures = new ArrayList<>();

  private record Tray(String sowing, int number) {
    static Tray of(WrittenTray tray) {
      return new Tray(tray.sowing(), tray.number());
    }
  }

  /** One figure of one crop, and its trays in the log. */
  private record Of(Crop crop, LogFigure figure, Set<Tray> trays, double seen) {
    /** The mean of these trays in a log; not a number where none has the figure. */
    double in(Map<Tray, WrittenTray> log) {
      return trays.stream()
          .filter(log::containsKey)
          .map(log::get)
          .map(t -> figure.of(t, crop.cells()))
          .filter(OptionalDouble::isPresent)
          .mapToDouble(OptionalDouble::getAsDouble)
          .average()
          .orElse(Double.NaN);
    }

    double rounding() {
      return ROUNDING / Math.sqrt(trays.size()) / (figure.isDays() ? 1 : crop.cells());
    }
  }

  LogFigures(Scenario scenario, List<WrittenTray> log) {
    Map<Crop, List<WrittenTray>> byCrop = new LinkedHashMap<>();
    for (Sowing sowing : scenario.sowings()) {
      log.stream()
          .filter(t -> t.sowing().equals(sowing.id()) && t.attempt() == 0)
          .forEach(
              t -> byCrop.computeIfAbsent(scenario.cropOf(sowing), c -> new ArrayList<>()).add(t));
    }
    byCrop.forEach(
        (crop, trays) -> {
          for (LogFigure figure : LogFigure.values()) {
            add(crop, figure, trays);
          }
        });
  }

  /** Of sowings with trays that are still to come only the quick ones would be seen. */
  private void add(Crop crop, LogFigure figure, List<WrittenTray> trays) {
    Set<String> open =
        trays.stream()
            .filter(t -> !figure.isOver(t))
            .map(WrittenTray::sowing)
            .collect(Collectors.toSet());
    List<WrittenTray> told =
        trays.stream()
            .filter(t -> !open.contains(t.sowing()) && figure.of(t, crop.cells()).isPresent())
            .toList();
    if (!told.isEmpty()) {
      Set<Tray> which = told.stream().map(Tray::of).collect(Collectors.toSet());
      Of of = new Of(crop, figure, which, 0);
      figures.add(new Of(crop, figure, which, of.in(byTray(told))));
    }
  }

  private static Map<Tray, WrittenTray> byTray(List<WrittenTray> log) {
    return log.stream()
        .filter(t -> t.attempt() == 0)
        .collect(Collectors.toMap(Tray::of, t -> t, (a, b) -> a));
  }

  /** All figures of a simulated season's log, in this order. */
  double[] of(List<WrittenTray> log) {
    Map<Tray, WrittenTray> byTray = byTray(log);
    return figures.stream().mapToDouble(f -> f.in(byTray)).toArray();
  }

  /** Springs that have a figure: what it is in them, and how much it differs. */
  private record Among(long springs, double mean, double squares, double rounding) {
    static Among of(double[] known, double rounding) {
      return new Among(
          known.length, Samples.mean(known), new SecondMoment().evaluate(known), rounding);
    }

    /** The others, where this is one of them. */
    Among without(double one) {
      double apart = one - mean;
      return new Among(
          springs - 1,
          mean - apart / (springs - 1),
          Math.max(0, squares - apart * apart * springs / (springs - 1)),
          rounding);
    }

    /** How many standard errors a spring is off. */
    double off(double one) {
      return (one - mean) / Math.hypot(Math.sqrt(squares / (springs - 1)), rounding);
    }
  }

  /** Figures by how far they are off, and what chance alone makes of the farthest. */
  record Against(List<Review.Figure> figures, double byChance) {}

  /**
   * Holds the log against simulated ones. Each of these is held against the others in the same way,
   * itself left out: the spring that came is not among those that it is held against either.
   */
  Against against(List<double[]> simulated) {
    List<Review.Figure> told = new ArrayList<>();
    double[] farthest = new double[simulated.size()];
    for (int f = 0; f < figures.size(); f++) {
      int at = f;
      Of of = figures.get(f);
      double[] had = simulated.stream().mapToDouble(s -> s[at]).toArray();
      double[] known = Arrays.stream(had).filter(Double::isFinite).toArray();
      if (2 * known.length < had.length || known.length < FEWEST) {
        continue;
      }
      Among all = Among.of(known, of.rounding());
      told.add(
          new Review.Figure(
              of.crop().name(),
              of.figure(),
              of.trays().size(),
              all.mean(),
              of.seen(),
              all.off(of.seen())));
      for (int n = 0; n < had.length; n++) {
        if (Double.isFinite(had[n])) {
          farthest[n] = Math.max(farthest[n], Math.abs(all.without(had[n]).off(had[n])));
        }
      }
    }
    told.sort(Comparator.comparingDouble((Review.Figure r) -> -Math.abs(r.off())));
    return new Against(told, told.isEmpty() ? Double.POSITIVE_INFINITY : usual(farthest));
  }

  /**
   * What of as many springs and one more, each as likely as another to be the farthest off, 19 of
   * 20 stay within; of fewer than 19 none is far off enough to tell.
   */
  private static double usual(double[] farthest) {
    double[] sorted = Arrays.stream(farthest).sorted().toArray();
    int rank = (int) Math.ceil(MeanLimits.CONFIDENCE * (sorted.length + 1));
    return rank > sorted.length ? Double.POSITIVE_INFINITY : sorted[rank - 1];
  }
}
