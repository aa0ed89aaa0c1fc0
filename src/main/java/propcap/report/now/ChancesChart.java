package propcap.report.now;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.xy.XIntervalSeries;
import org.jfree.data.xy.XIntervalSeriesCollection;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Marks;
import propcap.report.chart.Svg;
import propcap.study.now.SeasonNow;
import propcap.study.now.SeasonNow.SowingNow;

/** The chances of sowings, in winter and now, one below the other. */
final class ChancesChart {
  private static final int MARGINS = 72;
  private static final int ROW_HEIGHT = 16;

  private ChancesChart() {}

  /** A chart of those that need plants; nothing where there is none. */
  static String of(SeasonNow now, String id) {
    List<SowingNow> sowings =
        now.sowings().stream().filter(s -> s.sowing().plantsNeeded() > 0).toList();
    if (sowings.isEmpty()) {
      return "";
    }
    XIntervalSeriesCollection dataset = new XIntervalSeriesCollection();
    Marks marks = Marks.withWhiskersAcross();
    dataset.addSeries(series("now", sowings, s -> s.now().chanceMet()));
    marks.then(Marks.Fill.FILLED, ChartStyle.BLUE);
    dataset.addSeries(series("in winter", sowings, s -> s.winter().chanceMet()));
    marks.then(Marks.Fill.HOLLOW, ChartStyle.BLUE);
    NumberAxis chance =
        ChartStyle.axis(new NumberAxis("springs in which its plants are on time, %"));
    chance.setRange(-2, 102);
    SymbolAxis names = ChartStyle.nameAxis(sowings.stream().map(s -> s.sowing().id()).toList());
    // The goal is named above the first.
    names.setRange(-1.5, sowings.size() - 0.5);
    XYPlot plot = ChartStyle.plot(chance, names);
    plot.setRangeGridlinesVisible(false);
    plot.addDomainMarker(
        ChartStyle.goal(now.goal(), RectangleAnchor.TOP_LEFT, TextAnchor.TOP_RIGHT),
        Layer.BACKGROUND);
    plot.setDataset(dataset);
    plot.setRenderer(marks.renderer());
    return Svg.of(
        ChartStyle.chart(plot),
        id,
        MARGINS + ROW_HEIGHT * (sowings.size() + 1),
        "The chance of each sowing to have its plants on time, in winter and now. The table below has"
            + " the numbers.");
  }

  private static XIntervalSeries series(
      String name, List<SowingNow> sowings, ToDoubleFunction<SowingNow> chance) {
    XIntervalSeries series = new XIntervalSeries(name, false, true);
    for (int s = 0; s < sowings.size(); s++) {
      Marks.addAcross(series, s, 100 * chance.applyAsDouble(sowings.get(s)), 0);
    }
    return series;
  }
}
