package propcap.report.forecast;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import propcap.farm.Labour;
import propcap.farm.Season;
import propcap.farm.WorkKind;
import propcap.report.kit.Dates;
import propcap.report.kit.ForecastLookup;
import propcap.report.kit.TradeWords;
import propcap.report.kit.WaitingCauses;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.HandsForecast;
import propcap.study.forecast.HandsForecast.Week;
import propcap.study.statistics.Stat;

/** What work the spring takes, week by week, and what waits for hands. */
public record HandsSection(
    String verdict, List<String> sentences, List<String> works, List<Row> rows, String svg) {

  /** A week in text. */
  public record Row(
      String week,
      String hours,
      String range,
      String budget,
      String daysShort,
      List<String> works) {}

  /** The section; without rows where there is no work. */
  static HandsSection of(Forecast forecast) {
    HandsForecast hands = forecast.hands();
    List<WorkKind> works = works(hands);
    if (works.isEmpty()) {
      return new HandsSection("", List.of(), List.of(), List.of(), "");
    }
    return new HandsSection(
        verdict(forecast),
        sentences(forecast),
        works.stream().map(TradeWords::work).toList(),
        hands.weeks().stream().map(w -> row(w, works, forecast.scenario().season())).toList(),
        HandsChart.of(forecast.scenario().season(), hands.weeks(), works));
  }

  /** What takes any time, in the round's order. */
  private static List<WorkKind> works(HandsForecast hands) {
    return Stream.of(WorkKind.values())
        .filter(w -> ForecastLookup.present(hands.hoursByWork(), w) > 0)
        .toList();
  }

  private static Row row(Week week, List<WorkKind> works, Season season) {
    return new Row(
        Dates.onOneLine(week.monday(), season),
        Words.amount(week.hours().mean()),
        Words.range(week.hours()),
        Double.isFinite(week.budget()) ? Words.amount(week.budget()) : "–",
        week.daysShort() > 0 ? Words.amount(week.daysShort()) : "–",
        works.stream()
            .map(w -> ForecastLookup.present(week.byWork(), w))
            .map(HandsSection::hours)
            .toList());
  }

  private static String hours(double hours) {
    return hours > 0 ? Words.amount(hours) : "–";
  }

  private static String verdict(Forecast forecast) {
    HandsForecast hands = forecast.hands();
    String takes =
        "The work takes %s hours a spring (%s), %s a working day"
            .formatted(
                Words.count(hands.hours().mean()),
                Words.usual(hands.hours()),
                Words.amount(hands.hoursPerWorkingDay()));
    return forecast.scenario().labour().isLimited()
        ? takes + " in the mean; hours run out on " + WaitingCauses.daysShort(hands) + "."
        : takes + " in the mean.";
  }

  private static List<String> sentences(Forecast forecast) {
    HandsForecast hands = forecast.hands();
    List<String> sentences = new ArrayList<>();
    hands.weeks().stream()
        .max(Comparator.comparingDouble(w -> w.hours().mean()))
        .ifPresent(w -> sentences.add(fullest(w, forecast.scenario().season())));
    if (hands.waitingInAll() > 0) {
      sentences.add(waiting(hands));
    }
    Labour labour = forecast.scenario().labour();
    if (!labour.isLimited()) {
      sentences.add(
          "The scenario says nothing of how many hours there are, so nothing waits for hands"
              + (labour.minutes().equals(Labour.Minutes.DEFAULT)
                  ? "; what a tray or a plant takes is from published rates and planning defaults,"
                      + " not from this farm."
                  : "."));
    }
    return sentences;
  }

  private static String fullest(Week week, Season season) {
    return "The fullest week is that of "
        + Dates.day(week.monday(), season)
        + ", with "
        + Words.amount(week.hours().mean())
        + " hours"
        + (Double.isFinite(week.budget())
            ? " of the " + Words.amount(week.budget()) + " that there are."
            : ".");
  }

  private static String waiting(HandsForecast hands) {
    List<String> parts = new ArrayList<>();
    for (WorkKind work : WorkKind.values()) {
      Stat waiting = ForecastLookup.present(hands.waiting(), work);
      if (waiting.mean() > 0) {
        parts.add(TradeWords.work(work) + " " + Words.mean(waiting));
      }
    }
    return Words.amount(hands.waitingInAll())
        + " tray-days a spring had room and waited for hands: "
        + Words.list(parts)
        + ". They are not among those that wait for room.";
  }
}
