package propcap.report.chart;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.util.List;
import java.util.Locale;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.Axis;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTickUnitSource;
import org.jfree.chart.axis.SymbolAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.block.BlockBorder;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.Plot;
import org.jfree.chart.plot.ValueMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.category.BarRenderer;
import org.jfree.chart.renderer.category.StandardBarPainter;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.text.TextUtils;
import org.jfree.chart.title.LegendTitle;
import org.jfree.chart.ui.HorizontalAlignment;
import org.jfree.chart.ui.RectangleAnchor;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.Words;

/**
 * How every chart looks. The colours are those of Okabe and Ito (2008), "Color Universal Design",
 * which colour-blind people can tell apart; neighbours differ in lightness too, and lines in their
 * dashes, so that a grey print can be read.
 */
public final class ChartStyle {
  public static final Color INK = new Color(0x22, 0x22, 0x22);
  public static final Color FAINT_INK = new Color(0x55, 0x55, 0x55);
  public static final Color RULE = new Color(0xDD, 0xDD, 0xDD);
  public static final Color PALE = new Color(0xCF, 0xDD, 0xE8);

  public static final Color BLACK = Color.BLACK;
  public static final Color ORANGE = new Color(0xE6, 0x9F, 0x00);
  public static final Color SKY_BLUE = new Color(0x56, 0xB4, 0xE9);
  public static final Color GREEN = new Color(0x00, 0x9E, 0x73);
  public static final Color YELLOW = new Color(0xF0, 0xE4, 0x42);
  public static final Color BLUE = new Color(0x00, 0x72, 0xB2);
  public static final Color VERMILLION = new Color(0xD5, 0x5E, 0x00);
  public static final Color PURPLE = new Color(0xCC, 0x79, 0xA7);

  /** For what is stacked: dark and light by turns. */
  public static final List<Color> STACK =
      List.of(BLUE, YELLOW, VERMILLION, SKY_BLUE, GREEN, ORANGE, PURPLE);

  public static final Font TEXT = sans();

  public static final BasicStroke SOLID = line(2f);
  public static final BasicStroke HAIRLINE = line(0.6f);
  public static final BasicStroke WHISKER = line(1.2f);
  public static final BasicStroke DASHED = dashes(1.8f, 8f, 4f);
  public static final BasicStroke DOTTED = dashes(1.6f, 1.5f, 3.5f);

  /** Letters of a name that is not shortened. */
  static final int LONGEST_NAME = 30;

  static {
    // Else a rotated label is drawn as outlines, which no reader can search or enlarge as text.
    TextUtils.setUseDrawRotatedStringWorkaround(false);
  }

  /** Left free at the ends of an axis, as a share of what is between them. */
  private static final double ROOM = 0.06;

  private ChartStyle() {}

  /** The first of the fonts of one width that most readers have, so that text fits where it is. */
  private static Font sans() {
    for (String family : List.of("Arial", "Liberation Sans", "Helvetica")) {
      Font font = new Font(family, Font.PLAIN, 12);
      if (font.getFamily(Locale.ENGLISH).equals(family)) {
        return font;
      }
    }
    return new Font(Font.SANS_SERIF, Font.PLAIN, 12);
  }

  private static BasicStroke line(float width) {
    return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND);
  }

  private static BasicStroke dashes(float width, float... lengths) {
    return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10f, lengths, 0f);
  }

  /** A chart without frames or shadows, with its key above it. */
  public static JFreeChart chart(Plot plot) {
    JFreeChart chart = new JFreeChart(null, TEXT, plot, true);
    chart.setBackgroundPaint(null);
    // Half of a number such as 160,000 may stand right of an axis's end.
    chart.setPadding(new RectangleInsets(2, 2, 2, 24));
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setInsets(new RectangleInsets(4, 0, 0, 0));
    LegendTitle key = chart.getLegend();
    key.setPosition(RectangleEdge.TOP);
    key.setHorizontalAlignment(HorizontalAlignment.LEFT);
    key.setFrame(BlockBorder.NONE);
    key.setBackgroundPaint(null);
    key.setItemFont(TEXT);
    key.setItemPaint(INK);
    key.setItemLabelPadding(new RectangleInsets(2, 4, 2, 12));
    return chart;
  }

  public static <T extends Axis> T axis(T axis) {
    axis.setLabelFont(TEXT);
    axis.setLabelPaint(FAINT_INK);
    axis.setTickLabelFont(TEXT);
    axis.setTickLabelPaint(INK);
    axis.setAxisLinePaint(FAINT_INK);
    axis.setTickMarkPaint(FAINT_INK);
    return axis;
  }

  /** An axis of whole things from 0 to a little above the most. */
  public static NumberAxis countAxis(String label, double most) {
    NumberAxis axis = axis(new NumberAxis(label));
    DecimalFormat format =
        new DecimalFormat("#,##0", DecimalFormatSymbols.getInstance(Locale.ENGLISH));
    axis.setStandardTickUnits(new NumberTickUnitSource(true, format));
    axis.setRange(0, Math.max(1, 1.05 * most));
    axis.setAxisLineVisible(false);
    axis.setTickMarksVisible(false);
    return axis;
  }

  /** An axis from a little below the least to a little above the most. */
  public static NumberAxis valueAxis(
      @Nullable String label, double least, double most, String pattern) {
    NumberAxis axis = axis(new NumberAxis(label));
    DecimalFormat format =
        new DecimalFormat(pattern, DecimalFormatSymbols.getInstance(Locale.ENGLISH));
    axis.setStandardTickUnits(new NumberTickUnitSource(false, format));
    double span = most > least ? most - least : Math.max(1, Math.abs(most));
    axis.setRange(least - ROOM * span, most + ROOM * span);
    axis.setAxisLineVisible(false);
    axis.setTickMarksVisible(false);
    return axis;
  }

  /** An axis of what stands one below the other, the first on top. */
  public static SymbolAxis nameAxis(List<String> names) {
    String[] shown =
        names.stream().map(n -> Words.shortened(n, LONGEST_NAME)).toArray(String[]::new);
    SymbolAxis axis = axis(new SymbolAxis(null, shown));
    axis.setInverted(true);
    axis.setGridBandsVisible(false);
    axis.setTickMarksVisible(false);
    axis.setRange(-0.5, shown.length - 0.5);
    return axis;
  }

  /** A plot with fine lines across it. */
  public static XYPlot plot(@Nullable ValueAxis across, ValueAxis upright) {
    XYPlot plot = new XYPlot(null, across, upright, null);
    plot.setBackgroundPaint(null);
    plot.setOutlineVisible(false);
    plot.setDomainGridlinePaint(RULE);
    plot.setDomainGridlineStroke(HAIRLINE);
    plot.setRangeGridlinePaint(RULE);
    plot.setRangeGridlineStroke(HAIRLINE);
    plot.setDatasetRenderingOrder(DatasetRenderingOrder.FORWARD);
    return plot;
  }

  /** The line of a goal, a chance of which an axis has percent. */
  public static ValueMarker goal(double goal, RectangleAnchor at, TextAnchor of) {
    ValueMarker line = new ValueMarker(100 * goal, VERMILLION, DASHED);
    line.setLabel("goal, " + Words.given(goal));
    line.setLabelFont(TEXT);
    line.setLabelPaint(VERMILLION);
    line.setLabelBackgroundColor(new Color(0, 0, 0, 0));
    line.setLabelAnchor(at);
    line.setLabelTextAnchor(of);
    return line;
  }

  /** A line in a pale band. */
  public static DeviationRenderer band() {
    DeviationRenderer band = new DeviationRenderer(true, false);
    band.setAlpha(1f);
    band.setSeriesPaint(0, ChartStyle.BLUE);
    band.setSeriesFillPaint(0, ChartStyle.PALE);
    band.setSeriesStroke(0, ChartStyle.SOLID);
    band.setDrawSeriesLineAsPath(true);
    return band;
  }

  public static void flat(BarRenderer bars) {
    bars.setBarPainter(new StandardBarPainter());
    bars.setShadowVisible(false);
    bars.setDrawBarOutline(true);
    bars.setDefaultOutlinePaint(INK);
    bars.setDefaultOutlineStroke(HAIRLINE);
  }
}
