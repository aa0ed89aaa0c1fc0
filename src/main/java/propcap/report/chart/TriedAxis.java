package propcap.report.chart;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.TextAnchor;

/** An axis that is marked at what was tried, such as sizes or shifts, and nowhere else. */
public final class TriedAxis extends NumberAxis {
  private static final int MOST_MARKED = 22;

  private final transient List<Integer> tried;
  private final transient DoubleFunction<String> words;

  public TriedAxis(String label, List<Integer> tried, DoubleFunction<String> words) {
    super(label);
    this.tried = List.copyOf(tried);
    this.words = words;
    ChartStyle.axis(this);
    int first = tried.get(0);
    int last = tried.get(tried.size() - 1);
    double room = last > first ? 0.5 * (last - first) / tried.size() : 1;
    setRange(first - room, last + room);
  }

  @Override
  @SuppressWarnings("rawtypes")
  public List refreshTicks(Graphics2D pen, AxisState state, Rectangle2D area, RectangleEdge edge) {
    List<NumberTick> ticks = new ArrayList<>();
    int every = (tried.size() + MOST_MARKED - 1) / MOST_MARKED;
    for (int t = 0; t < tried.size(); t += every) {
      int value = tried.get(t);
      ticks.add(
          new NumberTick(
              value, words.apply(value), TextAnchor.TOP_CENTER, TextAnchor.TOP_CENTER, 0));
    }
    return ticks;
  }
}
