package propcap.report.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;
import propcap.report.kit.Dates;
import propcap.report.kit.ForecastLookup;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Forecast.Span;

/** When each sowing moves. */
public record MovesSection(List<String> charts, List<Row> rows, String released) {
  /** As many bars as a printed page holds. */
  private static final int SOWINGS_A_CHART = 44;

  /** What the moves of a row are called, in their order. */
  public static final List<String> MOVES = List.of("sown", "off heat", "potted on", "moved out");

  /** A sowing's dates, in text. */
  public record Row(
      String id,
      String due,
      List<String> moves,
      String bed,
      String firstOut,
      String medianOut,
      String lastOut) {}

  static MovesSection of(Forecast forecast) {
    Season season = forecast.scenario().season();
    List<SowingForecast> sowings = forecast.sowings();
    List<String> charts = new ArrayList<>();
    for (int from = 0; from < sowings.size(); from += SOWINGS_A_CHART) {
      int to = Math.min(sowings.size(), from + SOWINGS_A_CHART);
      charts.add(MovesChart.of(season, sowings.subList(from, to), "moves" + (charts.size() + 1)));
    }
    return new MovesSection(
        charts, sowings.stream().map(s -> row(season, s)).toList(), released(forecast));
  }

  private static Row row(Season season, SowingForecast forecast) {
    Sowing sowing = forecast.sowing();
    return new Row(
        sowing.id(),
        Dates.shortDay(sowing.sow(), season),
        Stream.of(TrayMove.values())
            .filter(m -> m != TrayMove.PLANTED_OUT)
            .map(m -> move(season, forecast, m))
            .toList(),
        Dates.shortDay(sowing.bedFrom(), season) + " – " + Dates.shortDay(sowing.bedBy(), season),
        Dates.shortDay(forecast.firstOut(), season),
        Dates.shortDay(forecast.medianOut(), season),
        Dates.shortDay(forecast.lastOut(), season));
  }

  private static String move(Season season, SowingForecast forecast, TrayMove move) {
    Span span = forecast.milestones().get(move);
    return span == null ? "–" : Dates.shortDay(season, span.mean());
  }

  /** From when each crop may go out, in a sentence. */
  private static String released(Forecast forecast) {
    List<String> dates = new ArrayList<>();
    for (String crop : ForecastLookup.crops(forecast)) {
      var date = forecast.release().get(crop);
      dates.add(
          crop + " " + (date == null ? "never" : Dates.day(date, forecast.scenario().season())));
    }
    return "By the frost record, plants may go out from: " + String.join(", ", dates) + ".";
  }
}
