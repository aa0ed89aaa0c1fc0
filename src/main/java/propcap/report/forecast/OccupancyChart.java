package propcap.report.forecast;

import java.awt.Color;
import java.awt.Stroke;
import java.util.List;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import propcap.farm.Season;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.SeasonAxis;
import propcap.report.chart.Svg;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast.DayUse;
import propcap.study.forecast.Forecast.Occupancy;

/**
 * Spaces in use day by day: the median spring, the band in which 8 springs of 10 lie, the room that
 * there is, and what would be used if no place were ever full.
 */
final class OccupancyChart {
  private static final int HEIGHT = 240;

  /** Room so many times what is ever used is left off the chart, which it would press flat. */
  private static final double FAR_ABOVE = 20;

  private OccupancyChart() {}

  static String of(Season season, Occupancy place, String id) {
    double used =
        place.days().stream().mapToDouble(d -> Math.max(d.p90(), d.demand())).max().orElse(0);
    boolean roomShown = used == 0 || place.spaces() <= FAR_ABOVE * used;
    double most = roomShown ? Math.max(used, place.spaces()) : used;

    XYPlot plot =
        ChartStyle.plot(new SeasonAxis(season), ChartStyle.countAxis("tray spaces in use", most));
    plot.setDataset(0, use(place.days()));
    plot.setRenderer(0, ChartStyle.band());
    if (place.days().stream().anyMatch(d -> d.demand() > 0)) {
      plot.setDataset(1, demand(place.days()));
      plot.setRenderer(1, line(ChartStyle.BLACK, ChartStyle.DOTTED));
    }
    if (roomShown) {
      plot.setDataset(2, room(season, place.spaces()));
      plot.setRenderer(2, line(ChartStyle.VERMILLION, ChartStyle.DASHED));
    }
    return Svg.of(ChartStyle.chart(plot), id, HEIGHT, words(place, used));
  }

  private static String words(Occupancy place, double used) {
    return "Tray spaces in use in %s by day: room for %s, at most %s used or wanted."
        .formatted(place.name(), Words.count(place.spaces()), Words.count(used));
  }

  private static XYLineAndShapeRenderer line(Color colour, Stroke stroke) {
    XYLineAndShapeRenderer line = new XYLineAndShapeRenderer(true, false);
    line.setSeriesPaint(0, colour);
    line.setSeriesStroke(0, stroke);
    line.setDrawSeriesLineAsPath(true);
    return line;
  }

  private static YIntervalSeriesCollection use(List<DayUse> days) {
    YIntervalSeries series = new YIntervalSeries("median spring; band: 8 springs of 10");
    for (int day = 0; day < days.size(); day++) {
      DayUse use = days.get(day);
      series.add(day, use.p50(), use.p10(), use.p90());
    }
    YIntervalSeriesCollection collection = new YIntervalSeriesCollection();
    collection.addSeries(series);
    return collection;
  }

  private static XYSeriesCollection demand(List<DayUse> days) {
    XYSeries series = new XYSeries("with endless room");
    for (int day = 0; day < days.size(); day++) {
      series.add(day, days.get(day).demand());
    }
    return new XYSeriesCollection(series);
  }

  private static XYSeriesCollection room(Season season, int spaces) {
    XYSeries series = new XYSeries("room: " + Words.count(spaces));
    series.add(0, spaces);
    series.add(season.days(), spaces);
    return new XYSeriesCollection(series);
  }
}
