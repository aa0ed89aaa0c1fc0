package propcap.report.chart;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.AffineTransform;
import java.awt.geom.Arc2D;
import java.awt.geom.Area;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.List;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.entity.EntityCollection;
import org.jfree.chart.plot.CrosshairState;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYErrorRenderer;
import org.jfree.data.xy.XIntervalSeries;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.YIntervalSeries;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;

/** Means as marks, and their intervals as whiskers. */
public final class Marks {
  private static final double R = 4.5;
  private static final Shape CIRCLE = new Ellipse2D.Double(-R, -R, 2 * R, 2 * R);
  private static final List<Shape> SHAPES =
      List.of(
          CIRCLE,
          new Rectangle2D.Double(-R + 0.5, -R + 0.5, 2 * R - 1, 2 * R - 1),
          polygon(0, -R - 1, R + 1, 0, 0, R + 1, -R - 1, 0),
          polygon(0, -R, R + 0.5, R - 0.5, -R - 0.5, R - 0.5),
          polygon(0, R, R + 0.5, -R + 0.5, -R - 0.5, -R + 0.5));
  private static final List<Color> COLOURS =
      List.of(
          ChartStyle.BLUE,
          ChartStyle.VERMILLION,
          ChartStyle.BLACK,
          ChartStyle.GREEN,
          ChartStyle.PURPLE);

  /** How full a mark is, to be told apart in grey. */
  public enum Fill {
    FILLED,
    HALF,
    HOLLOW
  }

  private final XYErrorRenderer renderer = new OnWhite();
  private int series;

  private Marks(boolean upright) {
    renderer.setDrawXError(!upright);
    renderer.setDrawYError(upright);
    renderer.setCapLength(6);
    renderer.setErrorPaint(ChartStyle.INK);
    renderer.setErrorStroke(ChartStyle.WHISKER);
    renderer.setUseFillPaint(true);
    renderer.setUseOutlinePaint(true);
    renderer.setDrawOutlines(true);
  }

  public static Marks withWhiskersAcross() {
    return new Marks(false);
  }

  public static Marks withUprightWhiskers() {
    return new Marks(true);
  }

  /** The next series' mark is one of a row that can be told apart, by its number from 0. */
  public Marks then(int number) {
    Color colour = COLOURS.get(number % COLOURS.size());
    boolean isHollow = number / SHAPES.size() % 2 == 1;
    return then(SHAPES.get(number % SHAPES.size()), isHollow ? Color.WHITE : colour, colour);
  }

  /** The next series' mark is a disc that is so full. */
  public Marks then(Fill fill, Color colour) {
    return switch (fill) {
      case FILLED -> then(CIRCLE, colour, colour);
      case HOLLOW -> then(CIRCLE, Color.WHITE, colour);
      case HALF -> then(halfDisc(), colour, colour);
    };
  }

  private Marks then(Shape shape, Color inside, Color edge) {
    renderer.setSeriesShape(series, shape);
    renderer.setSeriesFillPaint(series, inside);
    renderer.setSeriesOutlinePaint(series, edge);
    renderer.setSeriesPaint(series, edge);
    renderer.setSeriesOutlineStroke(series, ChartStyle.WHISKER);
    series++;
    return this;
  }

  public XYErrorRenderer renderer() {
    return renderer;
  }

  public static void addAcross(XIntervalSeries series, double y, double mean, double halfWidth) {
    series.add(mean, mean - halfWidth, mean + halfWidth, y);
  }

  /** No whisker where the mean has no limits. */
  public static void addUpright(YIntervalSeries series, double x, Stat stat) {
    MeanLimits limits = stat.limits();
    series.add(
        x,
        stat.mean(),
        limits == null ? stat.mean() : limits.low(),
        limits == null ? stat.mean() : limits.high());
  }

  /** Lays a white disc below each mark, so that no line or band shows through its open part. */
  private static final class OnWhite extends XYErrorRenderer {
    @Override
    protected void drawSecondaryPass(
        Graphics2D pen,
        XYPlot plot,
        XYDataset dataset,
        int pass,
        int series,
        int item,
        ValueAxis across,
        Rectangle2D area,
        ValueAxis upright,
        CrosshairState crosshair,
        EntityCollection entities) {
      double x = dataset.getXValue(series, item);
      double y = dataset.getYValue(series, item);
      AffineTransform there =
          AffineTransform.getTranslateInstance(
              across.valueToJava2D(x, area, plot.getDomainAxisEdge()),
              upright.valueToJava2D(y, area, plot.getRangeAxisEdge()));
      pen.setPaint(Color.WHITE);
      pen.fill(there.createTransformedShape(CIRCLE));
      super.drawSecondaryPass(
          pen, plot, dataset, pass, series, item, across, area, upright, crosshair, entities);
    }
  }

  /** A ring whose left half is full. */
  private static Shape halfDisc() {
    Area shape = new Area(CIRCLE);
    double inner = R - 0.6;
    shape.subtract(new Area(new Ellipse2D.Double(-inner, -inner, 2 * inner, 2 * inner)));
    shape.add(new Area(new Arc2D.Double(-R, -R, 2 * R, 2 * R, 90, 180, Arc2D.CHORD)));
    return shape;
  }

  private static Shape polygon(double... xy) {
    Path2D path = new Path2D.Double();
    path.moveTo(xy[0], xy[1]);
    for (int i = 2; i < xy.length; i += 2) {
      path.lineTo(xy[i], xy[i + 1]);
    }
    path.closePath();
    return path;
  }
}
