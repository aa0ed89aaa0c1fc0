package propcap.report.chart;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.regex.Pattern;
import org.jfree.chart.annotations.XYTextAnnotation;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.ui.TextAnchor;
import org.junit.jupiter.api.Test;

/** Charts as they stand in a page. */
class SvgTest {
  private static final Pattern SIZE = Pattern.compile("viewBox=\"0 0 (\\d+) (\\d+)\"");

  private static String chart(String... names) {
    XYPlot plot =
        ChartStyle.plot(
            ChartStyle.countAxis("spaces added", 100), ChartStyle.countAxis("plants", 100));
    for (String name : names) {
      XYTextAnnotation label = new XYTextAnnotation(name, 98, 50);
      label.setFont(ChartStyle.TEXT);
      label.setTextAnchor(TextAnchor.TOP_LEFT);
      plot.addAnnotation(label);
    }
    return Svg.of(ChartStyle.chart(plot), "stair", 200, "A stair.");
  }

  private static List<Integer> numbers(Pattern pattern, int group, String text) {
    return pattern.matcher(text).results().map(m -> Integer.valueOf(m.group(group))).toList();
  }

  @Test
  void aChartIsDrawnForAWideAndForANarrowColumn() {
    assertThat(numbers(SIZE, 1, chart())).containsExactly(Svg.WIDTH, Svg.SLIM_WIDTH);
    assertThat(numbers(SIZE, 2, chart())).containsExactly(200, 200);
  }

  /** The plot ends 24 left of the chart, and cuts off what stands in it. */
  @Test
  void aNameAtTheRightEdgeIsNotCut() {
    String name = "3. Glasshouse, +24";
    Pattern label =
        Pattern.compile("textLength=\"(\\d+)\" x=\"(\\d+)[^\"]*\"[^>]*>" + Pattern.quote(name));
    String drawn = chart(name);
    List<Integer> widths = numbers(label, 1, drawn);
    List<Integer> starts = numbers(label, 2, drawn);
    assertThat(widths).hasSize(2);
    assertThat(starts.get(0) + widths.get(0)).isBetween(Svg.WIDTH - 30, Svg.WIDTH - 24);
    assertThat(starts.get(1) + widths.get(1)).isBetween(Svg.SLIM_WIDTH - 30, Svg.SLIM_WIDTH - 24);
  }
}
