package propcap.report.latest;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XIntervalSeries;
import org.jfree.data.xy.XIntervalSeriesCollection;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Marks;
import propcap.report.chart.SeasonAxis;
import propcap.report.chart.Svg;
import propcap.study.latest.Latest.LastDay;

/** The last days of many sowings, one below the other, beside the days on which they are sown. */
final class LastDaysChart {
  private static final int MARGINS = 72;
  private static final int ROW_HEIGHT = 20;

  private LastDaysChart() {}

  /** A chart; nothing where there is no sowing. */
  static String of(List<LatestRow> rows, String id) {
    if (rows.isEmpty()) {
      return "";
    }
    Season season = rows.get(0).season();
    XIntervalSeriesCollection dataset = new XIntervalSeriesCollection();
    Marks marks = Marks.withWhiskersAcross();
    dataset.addSeries(series("latest in the house as full as it is", rows, LatestRow::inHouse));
    marks.then(Marks.Fill.FILLED, ChartStyle.BLUE);
    dataset.addSeries(series("latest alone", rows, LatestRow::alone));
    marks.then(Marks.Fill.HOLLOW, ChartStyle.BLUE);
    XIntervalSeries sown = new XIntervalSeries("sown", false, true);
    for (int r = 0; r < rows.size(); r++) {
      Marks.addAcross(sown, r, season.dayOf(rows.get(r).sowing().sow()), 0);
    }
    dataset.addSeries(sown);
    marks.then(2);
    XYPlot plot =
        ChartStyle.plot(
            new SeasonAxis(season),
            ChartStyle.nameAxis(rows.stream().map(r -> r.sowing().id()).toList()));
    plot.setRangeGridlinesVisible(false);
    for (int r = 1; r < rows.size(); r++) {
      plot.addRangeMarker(new ValueMarker(r - 0.5, ChartStyle.RULE, ChartStyle.HAIRLINE));
    }
    plot.setDataset(dataset);
    plot.setRenderer(marks.renderer());
    return Svg.of(
        ChartStyle.chart(plot),
        id,
        MARGINS + ROW_HEIGHT * rows.size(),
        "The last day to sow of each sowing, alone and in the house as full as it is, beside the"
            + " day on which it is sown. The table below has the days.");
  }

  private static XIntervalSeries series(
      String name, List<LatestRow> rows, Function<LatestRow, Optional<LastDay>> last) {
    XIntervalSeries series = new XIntervalSeries(name, false, true);
    for (int r = 0; r < rows.size(); r++) {
      int row = r;
      Season season = rows.get(r).season();
      last.apply(rows.get(r))
          .ifPresent(
              l ->
                  series.add(
                      season.dayOf(l.day().sow()),
                      season.dayOf(orElse(l.surely(), l.day().sow())),
                      season.dayOf(l.perhaps()),
                      row));
    }
    return series;
  }

  private static LocalDate orElse(@Nullable LocalDate date, LocalDate otherwise) {
    return date == null ? otherwise : date;
  }
}
