package propcap.report.chart;

import java.util.List;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XIntervalSeries;
import org.jfree.data.xy.XIntervalSeriesCollection;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.Words;
import propcap.study.statistics.Difference;

/** Differences, row by row, as marks with their intervals, to the left and right of no change. */
public final class DifferencesChart {
  private static final int MARGINS = 72;
  private static final int ROW_HEIGHT = 26;
  private static final int MARK_HEIGHT = 15;
  private static final int ROW_OF_KEY = 20;
  private static final int NAMES_IN_A_ROW = 2;

  private DifferencesChart() {}

  /**
   * What is drawn with one mark.
   *
   * @param differences one for each row; null: none in that row
   */
  public record Strand(String name, List<@Nullable Interval> differences) {}

  /** A mean and half its interval. */
  public record Interval(double mean, double halfWidth) {
    /** Null where too few springs differ. */
    public static @Nullable Interval of(Difference difference) {
      return difference.isTold() ? new Interval(difference.mean(), difference.halfWidth()) : null;
    }
  }

  /** A chart; nothing where there is no row. */
  public static String of(
      List<String> rows, List<Strand> strands, String unit, String id, String words) {
    if (rows.isEmpty()) {
      return "";
    }
    double least = 0;
    double most = 0;
    Marks marks = Marks.withWhiskersAcross();
    XIntervalSeriesCollection dataset = new XIntervalSeriesCollection();
    for (int s = 0; s < strands.size(); s++) {
      XIntervalSeries series =
          new XIntervalSeries(
              Words.shortened(strands.get(s).name(), ChartStyle.LONGEST_NAME), false, true);
      for (int row = 0; row < rows.size(); row++) {
        Interval d = strands.get(s).differences().get(row);
        if (d != null) {
          least = Math.min(least, Words.finite(d.mean() - d.halfWidth()));
          most = Math.max(most, Words.finite(d.mean() + d.halfWidth()));
          Marks.addAcross(series, row + offset(s, strands.size()), d.mean(), d.halfWidth());
        }
      }
      dataset.addSeries(series);
      marks.then(s);
    }
    XYPlot plot =
        ChartStyle.plot(
            ChartStyle.valueAxis(unit, least, most, "#,##0.##"), ChartStyle.nameAxis(rows));
    plot.setRangeGridlinesVisible(false);
    ValueMarker zero = new ValueMarker(0, ChartStyle.INK, ChartStyle.WHISKER);
    plot.addDomainMarker(zero);
    for (int row = 1; row < rows.size(); row++) {
      plot.addRangeMarker(new ValueMarker(row - 0.5, ChartStyle.RULE, ChartStyle.HAIRLINE));
    }
    plot.setDataset(dataset);
    plot.setRenderer(marks.renderer());
    int rowHeight = Math.max(ROW_HEIGHT, MARK_HEIGHT * strands.size() + 8);
    int keyRows = (strands.size() - 1) / NAMES_IN_A_ROW;
    return Svg.of(
        ChartStyle.chart(plot),
        id,
        MARGINS + keyRows * ROW_OF_KEY + rowHeight * rows.size(),
        words + " The table below has the numbers.");
  }

  /** Marks of one row stand one below the other. */
  private static double offset(int strand, int strands) {
    return 0.7 * ((strand + 0.5) / strands - 0.5);
  }
}
