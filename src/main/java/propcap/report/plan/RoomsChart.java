package propcap.report.plan;

import java.util.List;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import propcap.farm.Season;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.SeasonAxis;
import propcap.report.chart.Svg;
import propcap.study.forecast.Forecast.DayUse;
import propcap.study.forecast.Forecast.Occupancy;

/** Spaces in use day by day under two plans, one panel for each kind of place. */
final class RoomsChart {
  private static final int MARGINS = 70;
  private static final int PANEL_HEIGHT = 150;

  private RoomsChart() {}

  /** A chart of the open kinds of place, which are the same in both. */
  static String of(Season season, List<Occupancy> before, List<Occupancy> now, String id) {
    CombinedDomainXYPlot plot = new CombinedDomainXYPlot(new SeasonAxis(season));
    plot.setGap(14);
    for (int k = 0; k < before.size(); k++) {
      plot.add(panel(season, before.get(k), now.get(k), k == 0));
    }
    return Svg.of(
        ChartStyle.chart(plot),
        id,
        MARGINS + PANEL_HEIGHT * before.size(),
        "Tray spaces in use by day in each kind of place, under the plan as it was and under the"
            + " new one, with the room that there is.");
  }

  private static XYPlot panel(Season season, Occupancy before, Occupancy now, boolean inKey) {
    double used =
        Math.max(
            before.days().stream().mapToDouble(DayUse::p90).max().orElse(0),
            now.days().stream().mapToDouble(DayUse::p90).max().orElse(0));
    XYPlot plot =
        ChartStyle.plot(null, ChartStyle.countAxis(now.name(), Math.max(used, now.spaces())));
    DeviationRenderer band = ChartStyle.band();
    band.setDefaultSeriesVisibleInLegend(inKey);
    plot.setDataset(0, use(now));
    plot.setRenderer(0, band);
    line(plot, 1, median(before), inKey, false);
    line(plot, 2, room(season, now.spaces()), inKey, true);
    return plot;
  }

  private static void line(XYPlot plot, int nth, XYSeries series, boolean inKey, boolean isRoom) {
    XYLineAndShapeRenderer line = new XYLineAndShapeRenderer(true, false);
    line.setSeriesPaint(0, isRoom ? ChartStyle.VERMILLION : ChartStyle.BLACK);
    line.setSeriesStroke(0, isRoom ? ChartStyle.DASHED : ChartStyle.DOTTED);
    line.setDrawSeriesLineAsPath(true);
    line.setDefaultSeriesVisibleInLegend(inKey);
    plot.setDataset(nth, new XYSeriesCollection(series));
    plot.setRenderer(nth, line);
  }

  private static YIntervalSeriesCollection use(Occupancy place) {
    YIntervalSeries series = new YIntervalSeries("now, median; band: 8 springs of 10");
    for (int day = 0; day < place.days().size(); day++) {
      DayUse use = place.days().get(day);
      series.add(day, use.p50(), use.p10(), use.p90());
    }
    YIntervalSeriesCollection collection = new YIntervalSeriesCollection();
    collection.addSeries(series);
    return collection;
  }

  private static XYSeries median(Occupancy place) {
    XYSeries series = new XYSeries("as it was, median");
    for (int day = 0; day < place.days().size(); day++) {
      series.add(day, place.days().get(day).p50());
    }
    return series;
  }

  private static XYSeries room(Season season, int spaces) {
    XYSeries series = new XYSeries("room");
    series.add(0, spaces);
    series.add(season.days(), spaces);
    return series;
  }
}
