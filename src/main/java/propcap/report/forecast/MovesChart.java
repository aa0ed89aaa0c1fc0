package propcap.report.forecast;

import java.awt.Shape;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import propcap.farm.Season;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.SeasonAxis;
import propcap.report.chart.Svg;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast.SowingForecast;

/** Where each sowing stands on each date, one bar a sowing, and when its bed wants it. */
final class MovesChart {
  private static final int ROW_HEIGHT = 19;
  private static final int MARGINS = 84;
  private static final int LONGEST_NAME = 26;
  private static final double HALF_BAR = 0.3;

  private MovesChart() {}

  static String of(Season season, List<SowingForecast> sowings, String id) {
    XYPlot plot = ChartStyle.plot(new SeasonAxis(season), names(sowings));
    plot.setRangeGridlinesVisible(false);
    plot.setDataset(0, stages(season, sowings));
    plot.setRenderer(0, bars());
    plot.setDataset(1, out(sowings));
    plot.setRenderer(1, marks(new Ellipse2D.Double(-3, -3, 6, 6)));
    plot.setDataset(2, beds(season, sowings));
    plot.setRenderer(2, marks(bracket(1), bracket(-1)));
    JFreeChart chart = ChartStyle.chart(plot);
    return Svg.of(
        chart,
        id,
        MARGINS + ROW_HEIGHT * sowings.size(),
        "When each sowing moves, stage by stage, with the dates between which its bed wants it."
            + " The table below has the dates.");
  }

  private static SymbolAxis names(List<SowingForecast> sowings) {
    SymbolAxis axis =
        ChartStyle.nameAxis(
            sowings.stream().map(s -> Words.shortened(s.sowing().id(), LONGEST_NAME)).toList());
    axis.setRange(-0.6, sowings.size() - 0.4);
    return axis;
  }

  private static XYBarRenderer bars() {
    XYBarRenderer bars = new XYBarRenderer();
    bars.setUseYInterval(true);
    bars.setBarPainter(new StandardXYBarPainter());
    bars.setShadowVisible(false);
    bars.setDrawBarOutline(true);
    bars.setDefaultOutlinePaint(ChartStyle.INK);
    bars.setDefaultOutlineStroke(ChartStyle.HAIRLINE);
    int series = 0;
    for (Stage stage : Stage.values()) {
      bars.setSeriesPaint(series++, stage.colour());
    }
    return bars;
  }

  private static XYLineAndShapeRenderer marks(Shape... shapes) {
    XYLineAndShapeRenderer marks = new XYLineAndShapeRenderer(false, true);
    for (int series = 0; series < shapes.length; series++) {
      marks.setSeriesShape(series, shapes[series]);
      marks.setSeriesPaint(series, ChartStyle.BLACK);
    }
    return marks;
  }

  /** A square bracket that opens to the right (1) or to the left (-1). */
  private static Shape bracket(int direction) {
    Area bracket = new Area(new Rectangle2D.Double(-0.9, -8, 1.8, 16));
    double foot = direction > 0 ? -0.9 : -4;
    bracket.add(new Area(new Rectangle2D.Double(foot, -8, 4.9, 1.6)));
    bracket.add(new Area(new Rectangle2D.Double(foot, 6.4, 4.9, 1.6)));
    return bracket;
  }

  private static XYIntervalSeriesCollection stages(Season season, List<SowingForecast> sowings) {
    XYIntervalSeriesCollection all = new XYIntervalSeriesCollection();
    for (Stage stage : Stage.values()) {
      XYIntervalSeries series = new XYIntervalSeries(stage.words(), false, true);
      for (int row = 0; row < sowings.size(); row++) {
        for (Stage.Stay stay : Stage.staysOf(season, sowings.get(row))) {
          if (stay.stage() == stage) {
            series.add(stay.from(), stay.from(), stay.to(), row, row - HALF_BAR, row + HALF_BAR);
          }
        }
      }
      all.addSeries(series);
    }
    return all;
  }

  private static XYSeriesCollection out(List<SowingForecast> sowings) {
    XYSeries series = new XYSeries("planted out");
    for (int row = 0; row < sowings.size(); row++) {
      int y = row;
      Stage.plantedOut(sowings.get(row)).ifPresent(day -> series.add(day.doubleValue(), y));
    }
    return new XYSeriesCollection(series);
  }

  private static XYSeriesCollection beds(Season season, List<SowingForecast> sowings) {
    XYSeries from = new XYSeries("bed free from");
    XYSeries by = new XYSeries("needed by");
    for (int row = 0; row < sowings.size(); row++) {
      from.add(season.dayOf(sowings.get(row).sowing().bedFrom()), row);
      // The last day counts as on time to its end.
      by.add(season.dayOf(sowings.get(row).sowing().bedBy()) + 1, row);
    }
    XYSeriesCollection beds = new XYSeriesCollection(from);
    beds.addSeries(by);
    return beds;
  }
}
