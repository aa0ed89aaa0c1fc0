package propcap.report.bottleneck;

import java.util.List;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Svg;
import propcap.report.kit.Words;
import propcap.study.bottleneck.Bottlenecks.Step;
import propcap.study.statistics.Difference;

/** Spaces added against plants gained, as a stair. */
final class StairChart {
  private static final int HEIGHT = 330;
  private static final int LONGEST_NAME = 18;

  /** Room right of the last step for its name, in parts of the spaces added. */
  private static final double ROOM_FOR_NAME = 0.45;

  /** Height of a line of type, in parts of the chart's. */
  private static final double LINE = 0.07;

  /** Between a riser and its name, in parts of the chart's width. */
  private static final double GAP = 0.008;

  private StairChart() {}

  /** A chart; nothing where there is no step. */
  static String of(List<Step> steps) {
    if (steps.isEmpty()) {
      return "";
    }
    double added = steps.get(steps.size() - 1).spacesAdded();
    double end = (1 + ROOM_FOR_NAME) * added;
    double least = steps.stream().mapToDouble(s -> s.gainSoFar().low()).min().orElse(0);
    double most = steps.stream().mapToDouble(s -> s.gainSoFar().high()).max().orElse(0);
    NumberAxis spaces =
        ChartStyle.countAxis(
            steps.stream().anyMatch(s -> s.place().isHands())
                ? "spaces and hours a day added, in all"
                : "spaces added in all",
            added);
    spaces.setRange(0, end);
    XYPlot plot =
        ChartStyle.plot(
            spaces,
            ChartStyle.valueAxis(
                "plants on time gained, a spring", Math.min(0, least), most, "#,##0"));
    plot.setDataset(stair(steps, end));
    plot.setRenderer(ChartStyle.band());
    label(plot, steps, end, plot.getRangeAxis().getRange().getLength());
    return Svg.of(
        ChartStyle.chart(plot),
        "stair",
        HEIGHT,
        "Spaces added against plants gained, step by step. The table below has the numbers.");
  }

  private static YIntervalSeriesCollection stair(List<Step> steps, double end) {
    YIntervalSeries series = new YIntervalSeries("mean; band: its interval", false, true);
    Difference before = Difference.NONE;
    series.add(0, 0, 0, 0);
    for (Step step : steps) {
      add(series, step.spacesAdded(), before);
      add(series, step.spacesAdded(), step.gainSoFar());
      before = step.gainSoFar();
    }
    add(series, end, before);
    YIntervalSeriesCollection dataset = new YIntervalSeriesCollection();
    dataset.addSeries(series);
    return dataset;
  }

  private static void add(YIntervalSeries series, double spaces, Difference gain) {
    series.add(spaces, gain.mean(), gain.low(), gain.high());
  }

  /** Each step's place, below its tread where nothing is drawn, and clear of the next one's. */
  private static void label(XYPlot plot, List<Step> steps, double width, double height) {
    double above = Double.POSITIVE_INFINITY;
    for (int s = steps.size() - 1; s >= 0; s--) {
      Step step = steps.get(s);
      double y = Math.min(step.gainSoFar().low(), above);
      String text =
          (s + 1)
              + ". "
              + Words.shortened(step.place().name(), LONGEST_NAME)
              + ", "
              + Words.signed(step.trial().spaces());
      XYTextAnnotation label = new XYTextAnnotation(text, step.spacesAdded() + GAP * width, y);
      label.setFont(ChartStyle.TEXT);
      label.setPaint(ChartStyle.INK);
      label.setTextAnchor(TextAnchor.TOP_LEFT);
      plot.addAnnotation(label);
      above = y - LINE * height;
    }
  }
}
