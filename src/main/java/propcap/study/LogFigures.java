package propcap.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.math3.stat.descriptive.moment.StandardDeviation;
import propcap.farm.Crop;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.past.WrittenTray;

/**
 * The figures of a log, crop by crop, held against those of the same trays in logs of simulated
 * seasons: like with like, so that places that were full and lots that are uneven explain what they
 * can.
 */
final class LogFigures {
  /** Standard deviation of what is rounded to whole ones. */
  private static final double ROUNDING = 1 / Math.sqrt(12);

  private static final double CONFIDENCE = 0.95;

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

  /** Figures by how far they are off, and what chance alone makes of the farthest. */
  record Against(List<Review.Figure> figures, double byChance) {}

  Against against(List<double[]> simulated) {
    List<Review.Figure> told = new ArrayList<>();
    double[] farthest = new double[simulated.size()];
    for (int f = 0; f < figures.size(); f++) {
      int at = f;
      Of of = figures.get(f);
      double[] had = simulated.stream().mapToDouble(s -> s[at]).toArray();
      double[] known = Arrays.stream(had).filter(Double::isFinite).toArray();
      if (2 * known.length < had.length || known.length < 2) {
        continue;
      }
      double mean = Samples.mean(known);
      double error = Math.hypot(new StandardDeviation().evaluate(known), of.rounding());
      told.add(
          new Review.Figure(
              of.crop().name(),
              of.figure(),
              of.trays().size(),
              mean,
              of.seen(),
              (of.seen() - mean) / error));
      for (int n = 0; n < had.length; n++) {
        double off = Math.abs(had[n] - mean) / error;
        farthest[n] = Double.isFinite(off) ? Math.max(farthest[n], off) : farthest[n];
      }
    }
    Arrays.sort(farthest);
    told.sort(Comparator.comparingDouble((Review.Figure r) -> -Math.abs(r.off())));
    return new Against(
        told,
        told.isEmpty()
            ? Double.POSITIVE_INFINITY
            : farthest[(int) Math.ceil(CONFIDENCE * farthest.length) - 1]);
  }
}
