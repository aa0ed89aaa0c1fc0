package propcap.report.size;

import java.awt.Color;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.data.xy.XYBarDataset;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Marks;
import propcap.report.chart.Svg;
import propcap.report.chart.TriedAxis;
import propcap.report.kit.Words;
import propcap.study.size.Goal.Measure;
import propcap.study.size.Sizing;
import propcap.study.size.Sizing.Candidate;
import propcap.study.size.Sizing.Found;

/** What the goal asks against the size of one place, and how many springs each size took. */
final class SizeChart {
  private static final int HEIGHT = 400;

  /** Room of a size that was tried alone, on an axis of 2. */
  private static final double ALONE = 0.3;

  private SizeChart() {}

  /** A chart; nothing for two places. */
  static String of(Sizing sizing) {
    List<Candidate> run = sizing.candidates();
    if (sizing.places().size() != 1) {
      return "";
    }
    SizeWords words = SizeWords.of(sizing);
    List<Integer> sizes = sizing.candidates().stream().map(c -> c.spaces().get(0)).toList();
    CombinedDomainXYPlot plot =
        new CombinedDomainXYPlot(
            new TriedAxis(
                SizeWords.of(sizing).countedIn(0)
                    + " of "
                    + Words.shortened(sizing.places().get(0), 40),
                sizes,
                Words::count));
    plot.setGap(16);
    plot.add(measured(sizing, words, run), 3);
    plot.add(springs(run, sizes), 1);
    JFreeChart chart = ChartStyle.chart(plot);
    return Svg.of(
        chart,
        "size",
        HEIGHT,
        "The goal's measure against the size, with intervals. The table below has the numbers.");
  }

  private static XYPlot measured(Sizing sizing, SizeWords words, List<Candidate> run) {
    boolean hasGoal = sizing.goal().measure() != Measure.MARGIN;
    double factor = words.factor();
    double goal = factor * sizing.goal().least();
    double indifference = factor * sizing.indifference();
    double least = hasGoal ? goal - indifference : Double.POSITIVE_INFINITY;
    double most = hasGoal ? goal + indifference : Double.NEGATIVE_INFINITY;
    YIntervalSeriesCollection dataset = new YIntervalSeriesCollection();
    Marks marks = Marks.withUprightWhiskers();
    for (Found found : Found.values()) {
      YIntervalSeries series = new YIntervalSeries(words.found(found), false, true);
      for (Candidate c : run) {
        double mean = factor * Words.finite(c.mean());
        double low = factor * Words.finite(c.low());
        double high = factor * Words.finite(c.high());
        if (c.found() == found) {
          series.add(c.spaces().get(0).doubleValue(), mean, low, high);
        }
        least = Math.min(least, low);
        most = Math.max(most, high);
      }
      if (!series.isEmpty()) {
        dataset.addSeries(series);
        marks.then(fill(found), ChartStyle.BLUE);
      }
    }
    XYPlot plot =
        ChartStyle.plot(null, ChartStyle.valueAxis(words.axis(), least, most, "#,##0.##"));
    plot.setDataset(dataset);
    plot.setRenderer(marks.renderer());
    if (hasGoal) {
      plot.addRangeMarker(
          new IntervalMarker(goal - indifference, goal + indifference, ChartStyle.PALE),
          Layer.BACKGROUND);
      plot.addRangeMarker(
          new ValueMarker(goal, ChartStyle.VERMILLION, ChartStyle.DASHED), Layer.BACKGROUND);
    }
    return plot;
  }

  static Marks.Fill fill(Found found) {
    return switch (found) {
      case HOLDS -> Marks.Fill.FILLED;
      case FAILS -> Marks.Fill.HOLLOW;
      case NEAR -> Marks.Fill.HALF;
    };
  }

  private static XYPlot springs(List<Candidate> run, List<Integer> sizes) {
    XYSeries series = new XYSeries("springs run");
    double most = 0;
    for (Candidate c : run) {
      series.add(c.spaces().get(0).doubleValue(), c.seasons());
      most = Math.max(most, c.seasons());
    }
    double apart =
        sizes.size() < 2
            ? ALONE
            : (double) (sizes.get(sizes.size() - 1) - sizes.get(0)) / (sizes.size() - 1);
    XYBarRenderer bars = new XYBarRenderer();
    bars.setBarPainter(new StandardXYBarPainter());
    bars.setShadowVisible(false);
    bars.setSeriesPaint(0, new Color(0x88, 0x88, 0x88));
    bars.setDefaultSeriesVisibleInLegend(false);
    NumberAxis axis = ChartStyle.countAxis("springs run", most);
    XYPlot plot = ChartStyle.plot(null, axis);
    plot.setDataset(new XYBarDataset(new XYSeriesCollection(series), 0.5 * apart));
    plot.setRenderer(bars);
    return plot;
  }
}
