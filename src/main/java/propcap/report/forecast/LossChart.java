package propcap.report.forecast;

import java.util.List;
import org.jfree.chart.axis.AxisLocation;
import org.jfree.chart.axis.CategoryAxis;
import org.jfree.chart.labels.ItemLabelAnchor;
import org.jfree.chart.labels.ItemLabelPosition;
import org.jfree.chart.labels.StandardCategoryItemLabelGenerator;
import org.jfree.chart.plot.CategoryPlot;
import org.jfree.chart.plot.PlotOrientation;
import org.jfree.chart.renderer.category.StackedBarRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jfree.data.category.CategoryDataset;
import org.jfree.data.category.DefaultCategoryDataset;
import org.jspecify.annotations.Nullable;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.Svg;

/**
 * From cells sown to plants out, cause by cause: the length of a bar is what was left before that
 * cause, its dark end what the cause took.
 */
final class LossChart {
  private static final int ROW_HEIGHT = 30;
  private static final int MARGINS = 78;
  private static final double ROOM_FOR_LABELS = 1.65;

  private static final String LEFT = "still there";
  private static final String LOST = "lost here";

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
      dataset.addValue(bar.left(), LEFT, bar.name());
      dataset.addValue(bar.lost() > 0 ? Double.valueOf(bar.lost()) : null, LOST, bar.name());
    }
    StackedBarRenderer renderer = new StackedBarRenderer();
    ChartStyle.flat(renderer);
    renderer.setSeriesPaint(0, ChartStyle.PALE);
    renderer.setSeriesPaint(1, ChartStyle.VERMILLION);
    renderer.setDefaultItemLabelGenerator(new Labels(bars));
    renderer.setDefaultItemLabelsVisible(true);
    renderer.setDefaultItemLabelFont(ChartStyle.TEXT);
    renderer.setDefaultItemLabelPaint(ChartStyle.INK);
    renderer.setDefaultPositiveItemLabelPosition(
        new ItemLabelPosition(ItemLabelAnchor.OUTSIDE3, TextAnchor.CENTER_LEFT));
    renderer.setItemLabelInsets(new RectangleInsets(0, 5, 0, 5));
    CategoryAxis causes = ChartStyle.axis(new CategoryAxis());
    causes.setMaximumCategoryLabelWidthRatio(0.36f);
    causes.setMaximumCategoryLabelLines(2);
    causes.setCategoryMargin(0.25);
    causes.setLowerMargin(0.01);
    causes.setUpperMargin(0.01);
    causes.setTickMarksVisible(false);
    double most = bars.stream().mapToDouble(b -> b.left() + b.lost()).max().orElse(1);
    CategoryPlot plot =
        new CategoryPlot(
            dataset,
            causes,
            ChartStyle.countAxis("cells or plants, mean of a spring", ROOM_FOR_LABELS * most),
            renderer);
    plot.setOrientation(PlotOrientation.HORIZONTAL);
    plot.setRangeAxisLocation(AxisLocation.BOTTOM_OR_LEFT);
    plot.setRangeGridlinePaint(ChartStyle.RULE);
    plot.setRangeGridlineStroke(ChartStyle.HAIRLINE);
    return Svg.of(
        ChartStyle.chart(plot),
        "losses",
        MARGINS + ROW_HEIGHT * bars.size(),
        "From cells sown to plants planted out, what each cause of loss took. The table below has"
            + " the numbers.");
  }

  /** Each bar's own label, at the end of its last part. */
  private static final class Labels extends StandardCategoryItemLabelGenerator {
    private final transient List<Bar> bars;

    Labels(List<Bar> bars) {
      this.bars = bars;
    }

    @Override
    public @Nullable String generateLabel(CategoryDataset dataset, int row, int column) {
      Bar bar = bars.get(column);
      boolean isLastPart = dataset.getRowKey(row).equals(bar.lost() > 0 ? LOST : LEFT);
      return isLastPart ? bar.label() : null;
    }
  }
}
