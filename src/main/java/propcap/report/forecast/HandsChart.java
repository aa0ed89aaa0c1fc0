package propcap.report.forecast;

import java.util.List;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.StackedXYBarRenderer;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYStepRenderer;
import org.jfree.data.xy.DefaultTableXYDataset;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import propcap.farm.Season;
import propcap.farm.WorkKind;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.SeasonAxis;
import propcap.report.chart.Svg;
import propcap.report.kit.ForecastLookup;
import propcap.report.kit.TradeWords;
import propcap.study.forecast.HandsForecast.Week;

/** Hours of each week, one layer for each work, against the hours that there are. */
final class HandsChart {
  private static final int HEIGHT = 260;
  private static final double WEEK = 7;
  private static final double WIDTH = 5.6;

  /** So many times the hours ever worked are left off the chart, which they would press flat. */
  private static final double FAR_ABOVE = 5;

  private HandsChart() {}

  static String of(Season season, List<Week> weeks, List<WorkKind> works) {
    double worked = weeks.stream().mapToDouble(w -> w.hours().mean()).max().orElse(0);
    double budget = weeks.stream().mapToDouble(Week::budget).max().orElse(0);
    boolean budgetShown = budget <= FAR_ABOVE * worked;
    double most = budgetShown ? Math.max(worked, budget) : worked;
    XYPlot plot =
        ChartStyle.plot(new SeasonAxis(season), ChartStyle.countAxis("hours a week", most));
    plot.setDataset(0, hours(season, weeks, works));
    plot.setRenderer(0, bars(works.size()));
    if (budgetShown) {
      plot.setDataset(1, budget(season, weeks));
      plot.setRenderer(1, line());
    }
    return Svg.of(
        ChartStyle.chart(plot),
        "hands",
        HEIGHT,
        "Hours of work by week, stacked by what they go into. The table below has the numbers.");
  }

  private static DefaultTableXYDataset hours(
      Season season, List<Week> weeks, List<WorkKind> works) {
    DefaultTableXYDataset dataset = new DefaultTableXYDataset();
    for (WorkKind work : works) {
      XYSeries series = new XYSeries(TradeWords.work(work), true, false);
      for (Week week : weeks) {
        double hours = ForecastLookup.present(week.byWork(), work);
        // Nothing is left blank: a bar without height would still draw its outline.
        series.add(
            season.dayOf(week.monday()) + WEEK / 2, hours > 0 ? Double.valueOf(hours) : null);
      }
      dataset.addSeries(series);
    }
    dataset.setIntervalWidth(WIDTH);
    return dataset;
  }

  private static StackedXYBarRenderer bars(int works) {
    StackedXYBarRenderer bars = new StackedXYBarRenderer();
    bars.setBarPainter(new StandardXYBarPainter());
    bars.setShadowVisible(false);
    bars.setDrawBarOutline(true);
    bars.setDefaultOutlinePaint(ChartStyle.INK);
    bars.setDefaultOutlineStroke(ChartStyle.HAIRLINE);
    for (int w = 0; w < works; w++) {
      bars.setSeriesPaint(w, ChartStyle.STACK.get(w % ChartStyle.STACK.size()));
    }
    return bars;
  }

  private static XYSeriesCollection budget(Season season, List<Week> weeks) {
    XYSeries series = new XYSeries("hours that there are");
    double last = 0;
    for (Week week : weeks) {
      series.add(Math.max(0, season.dayOf(week.monday())), week.budget());
      last = week.budget();
    }
    series.add(season.days(), last);
    return new XYSeriesCollection(series);
  }

  private static XYStepRenderer line() {
    XYStepRenderer line = new XYStepRenderer();
    line.setSeriesPaint(0, ChartStyle.INK);
    line.setSeriesStroke(0, ChartStyle.DASHED);
    line.setDefaultShapesVisible(false);
    return line;
  }
}
