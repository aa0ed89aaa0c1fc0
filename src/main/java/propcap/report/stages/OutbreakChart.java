package propcap.report.stages;

import java.util.List;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.StandardXYBarPainter;
import org.jfree.chart.renderer.xy.XYBarRenderer;
import org.jfree.data.xy.XYIntervalSeries;
import org.jfree.data.xy.XYIntervalSeriesCollection;
import propcap.evidence.stages.CropStages;
import propcap.evidence.stages.TrayEvidence;
import propcap.farm.Loss;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Svg;

/** How much of their stand trays lost on the table: those with an outbreak on top of the others. */
final class OutbreakChart {
  private static final int HEIGHT = 250;
  private static final int BARS = 20;
  private static final double WIDE = 100.0 / BARS;

  private OutbreakChart() {}

  /** A chart; nothing where no tray was counted. */
  static String of(CropStages crop, String id) {
    List<TrayEvidence> trays = crop.counted();
    if (trays.isEmpty()) {
      return "";
    }
    int[] plain = new int[BARS];
    int[] struck = new int[BARS];
    for (int i = 0; i < trays.size(); i++) {
      double share = trays.get(i).of(Loss.GROWING_ON).orElseThrow().share();
      int bar = Math.min(BARS - 1, (int) (share * BARS));
      (crop.outbreaks().get(i) >= 0.5 ? struck : plain)[bar]++;
    }
    XYIntervalSeries without = new XYIntervalSeries("more likely none");
    XYIntervalSeries with = new XYIntervalSeries("more likely an outbreak");
    int most = 0;
    for (int b = 0; b < BARS; b++) {
      most = Math.max(most, plain[b] + struck[b]);
      add(without, b, 0, plain[b]);
      add(with, b, plain[b], plain[b] + struck[b]);
    }
    XYIntervalSeriesCollection dataset = new XYIntervalSeriesCollection();
    dataset.addSeries(without);
    dataset.addSeries(with);
    XYBarRenderer bars = new XYBarRenderer();
    bars.setUseYInterval(true);
    bars.setBarPainter(new StandardXYBarPainter());
    bars.setShadowVisible(false);
    bars.setDrawBarOutline(true);
    bars.setDefaultOutlinePaint(ChartStyle.INK);
    bars.setDefaultOutlineStroke(ChartStyle.HAIRLINE);
    bars.setSeriesPaint(0, ChartStyle.PALE);
    bars.setSeriesPaint(1, ChartStyle.VERMILLION);
    NumberAxis lost = ChartStyle.valueAxis("% of the stand lost on the table", 0, 100, "0");
    lost.setRange(0, 100);
    XYPlot plot = ChartStyle.plot(lost, ChartStyle.countAxis("trays", most));
    plot.setDataset(dataset);
    plot.setRenderer(bars);
    return Svg.of(
        ChartStyle.chart(plot),
        id,
        HEIGHT,
        "Trays of "
            + crop.crop().name()
            + " by the share lost on the table, those with damping-off apart. stage-trays.csv has"
            + " the numbers.");
  }

  private static void add(XYIntervalSeries series, int bar, int from, int to) {
    if (to > from) {
      double left = bar * WIDE;
      series.add(left + WIDE / 2, left, left + WIDE, to, from, to);
    }
  }
}
