package propcap.report.frost;

import java.awt.BasicStroke;
import java.awt.Color;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import propcap.evidence.weather.FrostDates;
import propcap.evidence.weather.FrostTable;
import propcap.farm.Season;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.SeasonAxis;
import propcap.report.chart.Svg;

/** The chance of a frost on or after each day, counted and fitted, a colour for each threshold. */
final class FrostChart {
  private static final int HEIGHT = 320;
  private static final List<Color> COLOURS =
      List.of(
          ChartStyle.BLUE,
          ChartStyle.VERMILLION,
          ChartStyle.GREEN,
          ChartStyle.PURPLE,
          ChartStyle.BLACK,
          ChartStyle.ORANGE);

  /** Days of the season left and right of what changes. */
  private static final int MARGIN = 10;

  private FrostChart() {}

  static String of(FrostTable table) {
    Season shown = shown(table);
    NumberAxis chance = ChartStyle.countAxis("chance of a frost on or after the day, %", 100);
    chance.setRange(0, 101);
    XYPlot plot = ChartStyle.plot(new SeasonAxis(shown), chance);
    XYSeriesCollection lines = new XYSeriesCollection();
    XYLineAndShapeRenderer look = new XYLineAndShapeRenderer(true, false);
    look.setDrawSeriesLineAsPath(true);
    int first = table.season().dayOf(shown.start());
    for (int t = 0; t < table.thresholds().size(); t++) {
      FrostDates frosts = table.thresholds().get(t);
      Color colour = COLOURS.get(t % COLOURS.size());
      String name = FrostWords.degrees(frosts.record().frostAtC());
      add(
          lines,
          look,
          line(name + ", counted", shown, d -> Optional.of(frosts.countedChanceFrom(first + d))),
          colour,
          ChartStyle.SOLID);
      XYSeries fitted = line(name + ", normal", shown, d -> frosts.fittedChanceFrom(first + d));
      if (!fitted.isEmpty()) {
        add(lines, look, fitted, colour, ChartStyle.DOTTED);
      }
    }
    plot.setDataset(lines);
    plot.setRenderer(look);
    return Svg.of(
        ChartStyle.chart(plot),
        "frost",
        HEIGHT,
        "The chance of a frost on or after each day of the season, for each threshold. The tables"
            + " below have the dates.");
  }

  private static void add(
      XYSeriesCollection lines,
      XYLineAndShapeRenderer look,
      XYSeries line,
      Color colour,
      BasicStroke stroke) {
    look.setSeriesPaint(lines.getSeriesCount(), colour);
    look.setSeriesStroke(lines.getSeriesCount(), stroke);
    lines.addSeries(line);
  }

  private static XYSeries line(String name, Season shown, IntFunction<Optional<Double>> chance) {
    XYSeries line = new XYSeries(name, false);
    for (int day = 0; day < shown.days(); day++) {
      int x = day;
      chance.apply(day).ifPresent(c -> line.add(x, 100 * c));
    }
    return line;
  }

  /** The part of the season in which the counted chances change. */
  private static Season shown(FrostTable table) {
    Season season = table.season();
    int last = season.days() - 1;
    int from = last;
    int to = 0;
    for (FrostDates frosts : table.thresholds()) {
      int[] ended = frosts.record().frostFreeFrom();
      from = Math.min(from, ended[0]);
      to = Math.max(to, ended[ended.length - 1]);
    }
    return new Season(
        season.date(Math.max(0, from - MARGIN)),
        season.date(Math.min(last, Math.max(from, to) + MARGIN)));
  }
}
