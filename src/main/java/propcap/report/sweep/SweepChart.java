package propcap.report.sweep;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jfree.chart.plot.CombinedDomainXYPlot;
import org.jfree.chart.plot.XYPlot;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;
import org.jspecify.annotations.Nullable;
import propcap.farm.Variants.Setting;
import propcap.report.chart.ChartStyle;
import propcap.report.chart.DifferencesChart;
import propcap.report.chart.Marks;
import propcap.report.chart.Svg;
import propcap.report.chart.TriedAxis;
import propcap.report.kit.Part.Figure;
import propcap.report.kit.Words;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Stat;
import propcap.study.sweep.Sweep;
import propcap.study.sweep.Sweep.Swept;

/**
 * What comes of many scenarios: against what was changed where that is one number or two, else row
 * by row against the first.
 */
record SweepChart(Sweep sweep) {
  private static final int MARGINS = 100;
  private static final int PANEL_HEIGHT = 190;

  /** So many kinds of marks can be told apart. */
  private static final int MOST_SERIES = 10;

  /** More rows are no picture. */
  private static final int MOST_ROWS = 30;

  Figure figure() {
    List<Integer> varied =
        IntStream.range(0, sweep.columns().size())
            .filter(c -> sweep.scenarios().stream().map(s -> setting(s, c)).distinct().count() > 1)
            .boxed()
            .sorted((a, b) -> Integer.compare(values(b).size(), values(a).size()))
            .toList();
    boolean isDrawn =
        !varied.isEmpty()
            && varied.size() <= 2
            && varied.stream().allMatch(this::isWhole)
            && (varied.size() == 1 || values(varied.get(1)).size() <= MOST_SERIES);
    return isDrawn ? response(varied) : rows();
  }

  private static Setting setting(Swept swept, int column) {
    return swept.variant().settings().get(column);
  }

  private static double number(Swept swept, int column) {
    return Objects.requireNonNull(setting(swept, column).number());
  }

  private boolean isWhole(int column) {
    return sweep.scenarios().stream()
        .map(s -> setting(s, column).number())
        .allMatch(n -> n != null && n == Math.rint(n));
  }

  private TreeSet<Integer> values(int column) {
    TreeSet<Integer> values = new TreeSet<>();
    for (Swept swept : sweep.scenarios()) {
      Double number = setting(swept, column).number();
      if (number != null) {
        values.add((int) Math.rint(number));
      }
    }
    return values;
  }

  // Against what was changed.

  private Figure response(List<Integer> varied) {
    int across = varied.get(0);
    CombinedDomainXYPlot plot =
        new CombinedDomainXYPlot(
            new TriedAxis(
                Words.shortened(sweep.columns().get(across), 60),
                List.copyOf(values(across)),
                n -> Words.amount(n)));
    plot.setGap(14);
    plot.add(panel("plants on time", varied, Swept::onTime, true));
    String currency = SweptRow.currency(sweep);
    if (sweep.byMargin()) {
      plot.add(panel("margin, " + currency, varied, Swept::margin, false));
    }
    return new Figure(
        "What comes of each.",
        "Marks are means of a spring, whiskers their 95 % intervals.",
        Svg.of(
            ChartStyle.chart(plot),
            "sweep-response",
            MARGINS + PANEL_HEIGHT * plot.getSubplots().size(),
            "Plants on time against "
                + sweep.columns().get(across)
                + ". The table below has the numbers."));
  }

  private XYPlot panel(
      String name, List<Integer> varied, Function<Swept, @Nullable Stat> outcome, boolean inKey) {
    YIntervalSeriesCollection dataset = new YIntervalSeriesCollection();
    Marks marks = Marks.withUprightWhiskers();
    double least = Double.POSITIVE_INFINITY;
    double most = Double.NEGATIVE_INFINITY;
    List<Integer> kinds =
        varied.size() == 1 ? Arrays.asList(0) : List.copyOf(values(varied.get(1)));
    for (int kind : kinds) {
      String key =
          varied.size() == 1
              ? "mean, with its 95 % interval"
              : Words.shortened(sweep.columns().get(varied.get(1)), 40) + ": " + kind;
      YIntervalSeries series = new YIntervalSeries(key, false, true);
      for (Swept swept : sweep.scenarios()) {
        Stat stat = outcome.apply(swept);
        if (stat != null && (varied.size() == 1 || number(swept, varied.get(1)) == kind)) {
          Marks.addUpright(series, number(swept, varied.get(0)), stat);
          MeanLimits limits = stat.limits();
          least = Math.min(least, limits == null ? stat.mean() : limits.low());
          most = Math.max(most, limits == null ? stat.mean() : limits.high());
        }
      }
      dataset.addSeries(series);
      marks.then(dataset.getSeriesCount() - 1);
    }
    XYPlot plot = ChartStyle.plot(null, ChartStyle.valueAxis(name, least, most, "#,##0.##"));
    marks.renderer().setDefaultSeriesVisibleInLegend(inKey);
    plot.setDataset(dataset);
    plot.setRenderer(marks.renderer());
    return plot;
  }

  // Row by row.

  private Figure rows() {
    List<Swept> rows =
        SweptRow.bestFirst(sweep).stream()
            .map(SweptRow::swept)
            .filter(s -> s.deciding(sweep.byMargin()) != null)
            .limit(MOST_ROWS)
            .toList();
    List<DifferencesChart.@Nullable Interval> differences = new ArrayList<>();
    for (Swept swept : rows) {
      Difference difference = swept.deciding(sweep.byMargin());
      differences.add(difference == null ? null : DifferencesChart.Interval.of(difference));
    }
    String what = sweep.byMargin() ? "Margin of a season" : "Plants on time";
    String unit = sweep.byMargin() ? SweptRow.currency(sweep) : "plants";
    return new Figure(
        what + ", against " + sweep.first().variant().name() + ".",
        rows.size() < sweep.scenarios().size() - 1
            ? "The " + rows.size() + " best; whiskers are intervals that hold together."
            : "Whiskers are intervals that hold together.",
        DifferencesChart.of(
            rows.stream().map(s -> s.variant().name()).toList(),
            List.of(new DifferencesChart.Strand(what, differences)),
            unit + " a spring, against the first",
            "sweep-rows",
            what + " of each scenario against the first."));
  }
}
