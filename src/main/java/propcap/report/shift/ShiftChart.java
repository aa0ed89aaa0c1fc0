package propcap.report.shift;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.jspecify.annotations.Nullable;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Marks;
import propcap.report.chart.Svg;
import propcap.report.chart.TriedAxis;
import propcap.report.kit.Words;
import propcap.study.shift.Shifts.Group;
import propcap.study.shift.Shifts.Point;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;

/** What comes of sowing a group earlier or later, one panel for each outcome. */
final class ShiftChart {
  private static final int MARGINS = 90;
  private static final int PANEL_HEIGHT = 150;

  private ShiftChart() {}

  /** An outcome in its panel. */
  private record Panel(String name, List<Stat> stats) {}

  /** A chart; nothing where nothing was tried. */
  static String of(Group group, String currency, String id) {
    if (group.points().isEmpty()) {
      return "";
    }
    List<Integer> days = group.points().stream().map(Point::days).toList();
    CombinedDomainXYPlot plot =
        new CombinedDomainXYPlot(
            new TriedAxis("days later (less than 0: earlier)", days, Words::signed));
    plot.setGap(14);
    List<Panel> panels = new ArrayList<>();
    add(panels, "on time", group, Point::onTime);
    add(panels, "late", group, Point::late);
    add(panels, "sowings met", group, Point::met);
    add(panels, "margin, " + currency, group, Point::margin);
    for (Panel panel : panels) {
      plot.add(plot(group, panel, plot.getSubplots().isEmpty()));
    }
    return Svg.of(
        ChartStyle.chart(plot),
        id,
        MARGINS + PANEL_HEIGHT * panels.size(),
        "What comes of sowing "
            + group.match()
            + " earlier or later. The table below has the"
            + " numbers.");
  }

  private static void add(
      List<Panel> panels, String name, Group group, Function<Point, @Nullable Stat> outcome) {
    List<Stat> stats =
        group.points().stream()
            .map(outcome)
            .filter(Objects::nonNull)
            .map(Objects::requireNonNull)
            .toList();
    if (stats.size() == group.points().size()) {
      panels.add(new Panel(name, stats));
    }
  }

  private static XYPlot plot(Group group, Panel panel, boolean inKey) {
    double least = panel.stats().stream().mapToDouble(ShiftChart::low).min().orElse(0);
    double most = panel.stats().stream().mapToDouble(ShiftChart::high).max().orElse(0);
    XYPlot plot =
        ChartStyle.plot(null, ChartStyle.valueAxis(panel.name(), least, most, "#,##0.##"));
    plot.setDataset(0, band(group, panel));
    plot.setRenderer(0, bandLook(inKey));
    addMeans(plot, group, panel, inKey);
    return plot;
  }

  private static double low(Stat stat) {
    MeanLimits limits = stat.limits();
    return Math.min(stat.p10(), limits == null ? stat.mean() : limits.low());
  }

  private static double high(Stat stat) {
    MeanLimits limits = stat.limits();
    return Math.max(stat.p90(), limits == null ? stat.mean() : limits.high());
  }

  private static YIntervalSeriesCollection band(Group group, Panel panel) {
    YIntervalSeries series = new YIntervalSeries("8 springs of 10, with the mean", false, true);
    for (int p = 0; p < panel.stats().size(); p++) {
      Stat stat = panel.stats().get(p);
      series.add(group.points().get(p).days(), stat.mean(), stat.p10(), stat.p90());
    }
    YIntervalSeriesCollection dataset = new YIntervalSeriesCollection();
    dataset.addSeries(series);
    return dataset;
  }

  private static DeviationRenderer bandLook(boolean inKey) {
    DeviationRenderer band = ChartStyle.band();
    band.setDefaultSeriesVisibleInLegend(inKey);
    return band;
  }

  private static void addMeans(XYPlot plot, Group group, Panel panel, boolean inKey) {
    YIntervalSeriesCollection dataset = new YIntervalSeriesCollection();
    Marks marks = Marks.withUprightWhiskers();
    for (TriedShift.Standing standing : TriedShift.Standing.values()) {
      YIntervalSeries series = new YIntervalSeries(standing.key, false, true);
      for (int p = 0; p < panel.stats().size(); p++) {
        Point point = group.points().get(p);
        if (new TriedShift(group, point).standing() == standing) {
          Marks.addUpright(series, point.days(), panel.stats().get(p));
        }
      }
      if (!series.isEmpty()) {
        dataset.addSeries(series);
        marks.then(standing.fill, ChartStyle.BLACK);
      }
    }
    marks.renderer().setDefaultSeriesVisibleInLegend(inKey);
    plot.setDataset(1, dataset);
    plot.setRenderer(1, marks.renderer());
  }
}
