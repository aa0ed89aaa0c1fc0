package propcap.report.forecast;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.farm.RoomWait;
import propcap.report.kit.Dates;
import propcap.report.kit.ForecastLookup;
import propcap.report.kit.TradeWords;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.Wait;

/**
 * What waits at one step for the same places.
 *
 * @param name such as {@code to be sown, for Chamber or Mats}
 * @param byMonth mean tray-days of a season in each month that the season touches
 * @param seen in how many springs anything waits at the step, where they are few; otherwise empty
 */
record WaitingLine(String name, List<Double> byMonth, String seen) {
  WaitingLine {
    byMonth = List.copyOf(byMonth);
  }

  double total() {
    return byMonth.stream().mapToDouble(Double::doubleValue).sum();
  }

  /** The queues of a forecast, the longest first. */
  static List<WaitingLine> of(Forecast forecast) {
    List<YearMonth> months = Dates.monthsOf(forecast.scenario().season());
    Map<String, double[]> byName = new LinkedHashMap<>();
    Map<String, String> seen = new HashMap<>();
    for (RoomWait step : RoomWait.values()) {
      for (Wait wait : forecast.waits()) {
        int month = months.indexOf(wait.month());
        if (wait.step() == step && month >= 0) {
          String name = TradeWords.step(step) + ", for " + wait.waitedFor();
          byName.computeIfAbsent(name, n -> new double[months.size()])[month] += wait.trayDays();
          seen.put(name, Words.seldom(ForecastLookup.present(forecast.waiting(), step)));
        }
      }
    }
    return byName.entrySet().stream()
        .map(
            e ->
                new WaitingLine(
                    e.getKey(), boxed(e.getValue()), ForecastLookup.present(seen, e.getKey())))
        .sorted(Comparator.comparingDouble(WaitingLine::total).reversed())
        .toList();
  }

  /** At most so many queues: the shortest are put together as one. */
  static List<WaitingLine> atMost(int most, List<WaitingLine> queues) {
    if (queues.size() <= most) {
      return queues;
    }
    List<WaitingLine> kept = new ArrayList<>(queues.subList(0, most - 1));
    double[] rest = new double[queues.get(0).byMonth().size()];
    for (WaitingLine queue : queues.subList(most - 1, queues.size())) {
      for (int m = 0; m < rest.length; m++) {
        rest[m] += queue.byMonth().get(m);
      }
    }
    kept.add(new WaitingLine("all other waiting", boxed(rest), ""));
    return kept;
  }

  private static List<Double> boxed(double[] values) {
    List<Double> list = new ArrayList<>();
    for (double value : values) {
      list.add(value);
    }
    return list;
  }
}
