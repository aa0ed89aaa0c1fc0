package propcap.report;

import java.util.List;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.labels.ItemLabelAnchor;
import org.jfree.chart.labels.ItemLabelPosition;
import org.jfree.chart.labels.StandardCategoryItemLabelGenerator;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.renderer.category.StackedBarRenderer;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.category.CategoryDataset;
import org.jfree.data.category.DefaultCategoryDataset;

/**
 * From cells sown to plants out, cause by cause: the length of a bar is what was left before that
 * cause, its dark end what the cause took.
 */
final class LossChart {
  private static final int ROW_HEIGHT = 24;
  private static final int MARGINS = 78;
  private static final double ROOM_FOR_LABELS = 1.18;

  private LossChart() {}

  /**
   * One bar.
   *
   * @param left cells or plants that are left after it
   * @param lost what it took; 0 for a bar that only says how many there are
   * @param label written at the bar's end
   */
  record Bar(String name, double left, double lost, String label) {}

  static String of(List<Bar> bars) {
    DefaultCategoryDataset dataset = new DefaultCategoryDataset();
    for (Bar bar : bars) {
      dataset.addValue(bar.left(), "still there", bar.name());
      dataset.addValue(bar.lost(), "lost here", bar.name());
    }
    StackedBarRenderer renderer = new StackedBarRenderer();
    Look.flat(renderer);
    renderer.setSeriesPaint(0, Look.PALE);
    renderer.setSeriesPaint(1, Look.VERMILLION);
    renderer.setSeriesItemLabelGenerator(1, new Labels(bars));
    renderer.setSeriesItemLabelsVisible(1, true);
    renderer.setSeriesItemLabelFont(1, Look.TEXT);
    renderer.setSeriesItemLabelPaint(1, Look.INK);
    renderer.setSeriesPositiveItemLabelPosition(
        1, new ItemLabelPosition(ItemLabelAnchor.OUTSIDE3, TextAnchor.CENTER_LEFT));
    CategoryAxis causes = Look.axis(new CategoryAxis());
    causes.setMaximumCategoryLabelWidthRatio(0.5f);
    causes.setCategoryMargin(0.25);
    causes.setLowerMargin(0.01);
    causes.setUpperMargin(0.01);
    causes.setTickMarksVisible(false);
    double most = bars.stream().mapToDouble(b -> b.left() + b.lost()).max().orElse(1);
    CategoryPlot plot =
        new CategoryPlot(
            dataset,
            causes,
            Look.countAxis("cells or plants, mean of a spring", ROOM_FOR_LABELS * most),
            renderer);
    plot.setOrientation(PlotOrientation.HORIZONTAL);
    plot.setRangeAxisLocation(org.jfree.chart.axis.AxisLocation.BOTTOM_OR_LEFT);
    plot.setRangeGridlinePaint(Look.RULE);
    plot.setRangeGridlineStroke(Look.HAIRLINE);
    return Svg.of(
        Look.chart(plot),
        "losses",
        MARGINS + ROW_HEIGHT * bars.size(),
        "From cells sown to plants planted out, what each cause of loss took. The table below has"
            + " the numbers.");
  }

  /** Each bar's own label. */
  private static final class Labels extends StandardCategoryItemLabelGenerator {
    private final transient List<Bar> bars;

    Labels(List<Bar> bars) {
      this.bars = bars;
    }

    @Override
    public String generateLabel(CategoryDataset dataset, int row, int column) {
      return bars.get(column).label();
    }
  }
}
