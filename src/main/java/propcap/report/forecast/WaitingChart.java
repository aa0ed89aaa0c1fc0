package propcap.report.forecast;

import java.time.YearMonth;
import java.util.List;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.renderer.category.StackedBarRenderer;
import org.jfree.data.category.DefaultCategoryDataset;
import propcap.farm.Season;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Svg;
import propcap.report.kit.Dates;

/** Tray-days of waiting month by month, one layer for each thing waited for. */
final class WaitingChart {
  private static final int HEIGHT = 260;
  private static final int ROWS_OF_KEY = 22;

  private WaitingChart() {}

  /** The queues, largest first; more than there are colours for are put together by the caller. */
  static String of(List<WaitingLine> queues, Season season) {
    List<YearMonth> months = Dates.monthsOf(season);
    DefaultCategoryDataset dataset = new DefaultCategoryDataset();
    StackedBarRenderer bars = new StackedBarRenderer();
    ChartStyle.flat(bars);
    bars.setMaximumBarWidth(0.09);
    double most = 0;
    for (int q = 0; q < queues.size(); q++) {
      for (int m = 0; m < months.size(); m++) {
        double trayDays = queues.get(q).byMonth().get(m);
        // Nothing is left blank: a bar without height would still draw its outline.
        dataset.addValue(
            trayDays > 0 ? Double.valueOf(trayDays) : null,
            queues.get(q).name(),
            Dates.shortMonth(months.get(m), season));
      }
      bars.setSeriesPaint(q, ChartStyle.STACK.get(q % ChartStyle.STACK.size()));
    }
    for (int m = 0; m < months.size(); m++) {
      int month = m;
      most = Math.max(most, queues.stream().mapToDouble(q -> q.byMonth().get(month)).sum());
    }
    CategoryAxis across = ChartStyle.axis(new CategoryAxis());
    // A month of the year before has it below its name.
    across.setMaximumCategoryLabelLines(2);
    CategoryPlot plot =
        new CategoryPlot(
            dataset, across, ChartStyle.countAxis("tray-days waiting, mean", most), bars);
    plot.setRangeGridlinePaint(ChartStyle.RULE);
    plot.setRangeGridlineStroke(ChartStyle.HAIRLINE);
    return Svg.of(
        ChartStyle.chart(plot),
        "waiting",
        HEIGHT + ROWS_OF_KEY * (queues.size() / 2),
        "Tray-days waiting for room by month, stacked by what is waited for. The table beside it"
            + " has the numbers.");
  }
}
