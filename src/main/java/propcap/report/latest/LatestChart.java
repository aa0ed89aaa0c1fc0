package propcap.report.latest;

import java.util.List;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.SeasonAxis;
import propcap.report.chart.Svg;
import propcap.report.kit.Words;
import propcap.study.latest.Latest;
import propcap.study.latest.Latest.Day;

/** The chance of one sowing by the day on which it is sown, alone and in the full house. */
final class LatestChart {
  private static final int HEIGHT = 260;
  private static final double PERCENT = 100;

  private LatestChart() {}

  /** A chart; nothing where no day was tried. */
  static String of(LatestRow row, String id) {
    if (row.answer().inHouse().days().isEmpty()) {
      return "";
    }
    NumberAxis upright = ChartStyle.valueAxis("% of springs on time", 0, PERCENT, "0");
    XYPlot plot = ChartStyle.plot(new SeasonAxis(row.season()), upright);
    plot.setDataset(0, inHouse(row));
    DeviationRenderer band = ChartStyle.band();
    plot.setRenderer(0, band);
    plot.setDataset(1, new XYSeriesCollection(alone(row)));
    plot.setRenderer(1, dotted());
    plot.addRangeMarker(
        ChartStyle.goal(row.answer().goal(), RectangleAnchor.BOTTOM_LEFT, TextAnchor.TOP_LEFT),
        Layer.BACKGROUND);
    plot.addRangeMarker(
        new ValueMarker(PERCENT * Latest.TOO_LATE, ChartStyle.FAINT_INK, ChartStyle.HAIRLINE),
        Layer.BACKGROUND);
    plot.addDomainMarker(
        new ValueMarker(row.season().dayOf(row.sowing().sow()), ChartStyle.INK, ChartStyle.WHISKER),
        Layer.BACKGROUND);
    return Svg.of(
        ChartStyle.chart(plot),
        id,
        HEIGHT,
        "The chance that "
            + row.sowing().id()
            + " has its plants on time, by the day on which it is sown. The table has the last"
            + " days.");
  }

  private static YIntervalSeriesCollection inHouse(LatestRow row) {
    YIntervalSeries series =
        new YIntervalSeries("in the house as full as it is, with its 95 % interval", false, true);
    for (Day day : row.answer().inHouse().days()) {
      series.add(
          row.season().dayOf(day.sow()),
          PERCENT * Words.finite(day.chance()),
          PERCENT * Words.finite(day.low()),
          PERCENT * Words.finite(day.high()));
    }
    YIntervalSeriesCollection dataset = new YIntervalSeriesCollection();
    dataset.addSeries(series);
    return dataset;
  }

  private static XYSeries alone(LatestRow row) {
    XYSeries series = new XYSeries("alone", false, true);
    List<Day> days = row.answer().alone().days();
    days.forEach(d -> series.add(row.season().dayOf(d.sow()), PERCENT * Words.finite(d.chance())));
    return series;
  }

  private static XYLineAndShapeRenderer dotted() {
    XYLineAndShapeRenderer line = new XYLineAndShapeRenderer(true, false);
    line.setSeriesPaint(0, ChartStyle.BLACK);
    line.setSeriesStroke(0, ChartStyle.DOTTED);
    line.setDrawSeriesLineAsPath(true);
    return line;
  }
}
