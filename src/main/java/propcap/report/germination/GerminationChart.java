package propcap.report.germination;

import java.awt.Color;
import java.util.List;
import java.util.TreeSet;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.renderer.xy.XYStepRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import propcap.evidence.Estimate;
import propcap.evidence.germination.CurveFit;
import propcap.evidence.germination.GerminationFit.AtTemperature;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Svg;

/** A lot at one temperature: the counts as steps, the curve through them, and its band. */
final class GerminationChart {
  private static final int HEIGHT = 270;
  private static final int POINTS = 160;
  private static final int PERCENT = 100;

  private GerminationChart() {}

  static String of(AtTemperature at, String lot, String id) {
    double last = at.lastDays();
    NumberAxis days = ChartStyle.valueAxis("days after sowing", 0, last, "#,##0.##");
    days.setRange(0, 1.02 * last);
    NumberAxis percent = ChartStyle.valueAxis("% of the seeds", 0, PERCENT, "#,##0");
    percent.setRange(0, PERCENT);
    XYPlot plot = ChartStyle.plot(days, percent);
    CurveFit best = at.best();
    CurveFit lognormal = at.lognormal();
    if (best != null) {
      plot.setDataset(0, band(best, last));
      plot.setRenderer(0, ChartStyle.band());
    }
    if (lognormal != null && !lognormal.equals(best)) {
      plot.setDataset(1, new XYSeriesCollection(line(lognormal, last)));
      XYLineAndShapeRenderer dashed = new XYLineAndShapeRenderer(true, false);
      dashed.setSeriesPaint(0, ChartStyle.VERMILLION);
      dashed.setSeriesStroke(0, ChartStyle.DASHED);
      dashed.setDrawSeriesLineAsPath(true);
      plot.setRenderer(1, dashed);
    }
    if (at.trays().size() > 1) {
      plot.setDataset(2, trays(at.trays()));
      XYStepRenderer faint = steps(at.trays().size(), ChartStyle.FAINT_INK);
      for (int tray = 0; tray < at.trays().size(); tray++) {
        faint.setSeriesStroke(tray, ChartStyle.HAIRLINE);
        faint.setSeriesVisibleInLegend(tray, tray == 0);
      }
      plot.setRenderer(2, faint);
    }
    plot.setDataset(3, new XYSeriesCollection(together(at.trays())));
    XYStepRenderer dark = steps(1, ChartStyle.INK);
    dark.setSeriesStroke(0, ChartStyle.WHISKER);
    plot.setRenderer(3, dark);
    return Svg.of(
        ChartStyle.chart(plot),
        id,
        HEIGHT,
        "Share of the seeds of %s that had come up, by day, at %s. The table has the estimates."
            .formatted(lot, Limits.temperature(at.tempC())));
  }

  private static XYStepRenderer steps(int series, Color colour) {
    XYStepRenderer steps = new XYStepRenderer();
    for (int i = 0; i < series; i++) {
      steps.setSeriesPaint(i, colour);
    }
    return steps;
  }

  private static YIntervalSeriesCollection band(CurveFit fit, double last) {
    YIntervalSeries series =
        new YIntervalSeries(fit.family().word() + " curve, with its 95 % band", false, true);
    for (int i = 0; i <= POINTS; i++) {
      double days = last * i / POINTS;
      double middle = fit.shown(days);
      Estimate band = fit.band().at(days).orElse(new Estimate(middle, middle, middle));
      series.add(days, PERCENT * middle, PERCENT * band.low(), PERCENT * band.high());
    }
    YIntervalSeriesCollection dataset = new YIntervalSeriesCollection();
    dataset.addSeries(series);
    return dataset;
  }

  private static XYSeries line(CurveFit fit, double last) {
    XYSeries series = new XYSeries("lognormal curve, which the simulator takes");
    for (int i = 0; i <= POINTS; i++) {
      double days = last * i / POINTS;
      series.add(days, PERCENT * fit.shown(days));
    }
    return series;
  }

  private static XYSeriesCollection trays(List<CountedTray> trays) {
    XYSeriesCollection dataset = new XYSeriesCollection();
    for (CountedTray tray : trays) {
      XYSeries series =
          new XYSeries(dataset.getSeriesCount() == 0 ? "each tray" : "tray " + tray.tray() + " ");
      series.add(0, 0);
      tray.inspections()
          .forEach(
              look ->
                  series.addOrUpdate(
                      look.days(), PERCENT * (double) look.emerged() / tray.seeds()));
      dataset.addSeries(series);
    }
    return dataset;
  }

  /** All trays as one; a tray that was not looked at stays at what it had. */
  private static XYSeries together(List<CountedTray> trays) {
    TreeSet<Double> days = new TreeSet<>();
    trays.forEach(t -> t.inspections().forEach(look -> days.add(look.days())));
    double seeds = trays.stream().mapToInt(CountedTray::seeds).sum();
    XYSeries series = new XYSeries(trays.size() > 1 ? "all trays" : "the tray");
    series.add(0, 0);
    for (double day : days) {
      int up = trays.stream().mapToInt(t -> upBy(t, day)).sum();
      series.addOrUpdate(day, PERCENT * up / seeds);
    }
    return series;
  }

  private static int upBy(CountedTray tray, double day) {
    return tray.inspections().stream()
        .filter(look -> look.days() <= day)
        .mapToInt(Inspection::emerged)
        .max()
        .orElse(0);
  }
}
