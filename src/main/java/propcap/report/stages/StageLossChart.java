package propcap.report.stages;

import java.util.List;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.XIntervalSeries;
import org.jfree.data.xy.XIntervalSeriesCollection;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
import propcap.evidence.stages.CropStages;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Marks;
import propcap.report.chart.Svg;

/** Losses by stage: as listed, as the log has them, and both together. */
final class StageLossChart {
  private static final int MARGINS = 84;
  private static final int ROW_HEIGHT = 58;
  private static final List<String> SHOWN =
      List.of("loss", "pottingLoss", "hardeningLoss", "overheldLoss");

  private StageLossChart() {}

  static String of(CropStages crop, String id) {
    List<StagesFigure> rows =
        StagesFigure.of(crop).stream()
            .filter(f -> SHOWN.contains(f.key()) && f.learned().trays() > 0)
            .toList();
    if (rows.isEmpty()) {
      return "";
    }
    XIntervalSeries listed = new XIntervalSeries("crop list", false, true);
    XIntervalSeries alone = new XIntervalSeries("log alone", false, true);
    XIntervalSeries learned = new XIntervalSeries("list and log together", false, true);
    double most = 0;
    for (int row = 0; row < rows.size(); row++) {
      most = Math.max(most, add(listed, row - 0.23, rows.get(row).learned().listed()));
      most = Math.max(most, add(alone, row, rows.get(row).learned().alone()));
      most = Math.max(most, add(learned, row + 0.23, rows.get(row).learned().learned()));
    }
    XIntervalSeriesCollection dataset = new XIntervalSeriesCollection();
    dataset.addSeries(listed);
    dataset.addSeries(alone);
    dataset.addSeries(learned);
    NumberAxis share = ChartStyle.valueAxis("% of the plants", 0, most, "0.##");
    share.setRange(0, 1.06 * Math.max(most, 0.5));
    XYPlot plot =
        ChartStyle.plot(
            share, ChartStyle.nameAxis(rows.stream().map(StagesFigure::title).toList()));
    plot.setRangeGridlinesVisible(false);
    for (int row = 1; row < rows.size(); row++) {
      plot.addRangeMarker(new ValueMarker(row - 0.5, ChartStyle.RULE, ChartStyle.HAIRLINE));
    }
    plot.setDataset(dataset);
    plot.setRenderer(
        Marks.withWhiskersAcross()
            .then(Marks.Fill.HOLLOW, ChartStyle.VERMILLION)
            .then(Marks.Fill.HALF, ChartStyle.BLACK)
            .then(Marks.Fill.FILLED, ChartStyle.BLUE)
            .renderer());
    return Svg.of(
        ChartStyle.chart(plot),
        id,
        MARGINS + ROW_HEIGHT * rows.size(),
        "Plants of "
            + crop.crop().name()
            + " lost, stage by stage. The table below has the numbers.");
  }

  /** Adds a mark, if there is one, and gives its upper end. */
  private static double add(XIntervalSeries series, double y, @Nullable Estimate estimate) {
    if (estimate == null) {
      return 0;
    }
    series.add(100 * estimate.value(), 100 * estimate.low(), 100 * estimate.high(), y);
    return 100 * estimate.high();
  }
}
