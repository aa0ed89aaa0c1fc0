package propcap.report.stages;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.data.xy.XIntervalSeries;
import org.jfree.data.xy.XIntervalSeriesCollection;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import propcap.evidence.stages.CropStages;
import propcap.evidence.stages.Stages;
import propcap.evidence.stages.TrayEvidence.Readiness;
import propcap.evidence.stages.TrayEvidence.Ripening;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Marks;
import propcap.report.chart.Svg;

/** The share of trays that are ready by a day: as logged, as listed and as learned. */
final class RequirementChart {
  private static final int HEIGHT = 300;
  private static final int POINTS = 120;
  private static final double REACH = 3;

  private RequirementChart() {}

  /** A chart; nothing where no tray tells. */
  static String of(CropStages crop, String id) {
    double perDay = crop.crop().growingOn().rate(crop.crop().growingOn().atC());
    List<Ripening> timed =
        crop.trays().stream()
            .filter(t -> t.readiness() == Readiness.WRITTEN)
            .map(t -> Objects.requireNonNull(t.ripening()))
            .sorted(Comparator.comparingDouble(Ripening::middle))
            .toList();
    if (timed.isEmpty()) {
      return "";
    }
    XIntervalSeries trays = new XIntervalSeries("tray of the log", false, true);
    for (int i = 0; i < timed.size(); i++) {
      Ripening r = timed.get(i);
      trays.add(
          r.middle() / perDay,
          r.above() / perDay,
          r.upTo() / perDay,
          100 * (i + 0.5) / timed.size());
    }
    XIntervalSeriesCollection marks = new XIntervalSeriesCollection();
    marks.addSeries(trays);
    double listed = crop.takesDays().listed().value();
    double learned = crop.takesDays().learned().value();
    double spread = crop.spread().listed().value();
    double nowSpread = crop.spread().learned().value();
    double least =
        Math.min(
            timed.get(0).above() / perDay,
            Math.min(listed * Math.exp(-REACH * spread), learned * Math.exp(-REACH * nowSpread)));
    double most =
        Math.max(
            timed.get(timed.size() - 1).upTo() / perDay,
            Math.max(listed * Math.exp(REACH * spread), learned * Math.exp(REACH * nowSpread)));
    XYSeriesCollection curves = new XYSeriesCollection();
    curves.addSeries(curve("crop list", least, most, d -> Stages.readyBy(d, listed, spread)));
    curves.addSeries(
        curve("list and log together", least, most, d -> Stages.readyBy(d, learned, nowSpread)));
    XYLineAndShapeRenderer lines = new XYLineAndShapeRenderer(true, false);
    lines.setSeriesPaint(0, ChartStyle.VERMILLION);
    lines.setSeriesStroke(0, ChartStyle.DASHED);
    lines.setSeriesPaint(1, ChartStyle.BLUE);
    lines.setSeriesStroke(1, ChartStyle.SOLID);
    lines.setDrawSeriesLineAsPath(true);
    XYPlot plot =
        ChartStyle.plot(
            ChartStyle.valueAxis(
                "days on the table, at the listed temperature", least, most, "#,##0.#"),
            ChartStyle.valueAxis("% of trays ready", 0, 100, "0"));
    plot.setDataset(0, curves);
    plot.setRenderer(0, lines);
    plot.setDataset(1, marks);
    plot.setRenderer(
        1, Marks.withWhiskersAcross().then(Marks.Fill.FILLED, ChartStyle.BLACK).renderer());
    return Svg.of(
        ChartStyle.chart(plot),
        id,
        HEIGHT,
        "When the trays of "
            + crop.crop().name()
            + " were ready, beside the crop list and what was learned. The table below has the"
            + " numbers.");
  }

  private static XYSeries curve(String name, double least, double most, DoubleUnaryOperator share) {
    XYSeries series = new XYSeries(name);
    for (int i = 0; i <= POINTS; i++) {
      double day = least + (most - least) * i / POINTS;
      series.add(day, 100 * share.applyAsDouble(Math.max(day, 1e-6)));
    }
    return series;
  }
}
