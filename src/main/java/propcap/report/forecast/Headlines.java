package propcap.report.forecast;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import propcap.farm.Season;
import propcap.report.kit.ForecastLookup;
import propcap.report.kit.Lines;
import propcap.report.kit.LossWords;
import propcap.report.kit.WaitingCauses;
import propcap.report.kit.Words;
import propcap.study.Forecast;
import propcap.study.Forecast.Occupancy;
import propcap.study.Forecast.SowingForecast;

/** The ten lines of a forecast that matter, for a terminal. */
public final class Headlines {
  private static final int NAMED = 3;

  /** Where a line is needed for hands. */
  private static final int FEWER_NAMED = 2;

  private Headlines() {}

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> of(Forecast forecast) {
    List<String> lines = new ArrayList<>();
    lines.add(
        forecast.scenario().name()
            + ": "
            + Words.plural(forecast.seasons(), "spring")
            + ", seed "
            + forecast.settings().seed());
    lines.add(
        "Out on time: "
            + Words.count(forecast.onTime().mean())
            + " plants ("
            + Words.interval(forecast.onTime())
            + "); late: "
            + Words.mean(forecast.late()));
    lines.add(
        "Sowings that have their plants on time in 9 springs of 10: "
            + PlantsSection.safe(forecast)
            + " of "
            + forecast.sowings().size());
    boolean limited = forecast.scenario().labour().isLimited();
    PlantsSection.worstFirst(forecast).stream()
        .limit(limited ? FEWER_NAMED : NAMED)
        .map(s -> sowing(s, forecast.scenario().season()))
        .forEach(lines::add);
    lines.add(fullest(forecast));
    lines.add(waiting(forecast));
    if (limited) {
      lines.add(hands(forecast));
    }
    lines.add(WaitingCauses.of(forecast).verdict(forecast));
    lines.add(LossWords.losses(forecast));
    return lines.stream().map(l -> Words.shortened(l, Lines.COLUMNS)).toList();
  }

  private static String sowing(SowingForecast forecast, Season season) {
    return "  " + forecast.sowing().id() + ": " + PlantsSection.words(forecast, season);
  }

  private static String fullest(Forecast forecast) {
    List<String> fullest =
        ForecastLookup.openPlaces(forecast).stream()
            .filter(p -> p.fullDays().mean() > 0)
            .sorted(Comparator.comparingDouble((Occupancy p) -> p.fullDays().mean()).reversed())
            .limit(NAMED)
            .map(p -> p.name() + " on " + days(p.fullDays().mean()))
            .toList();
    return fullest.isEmpty() ? "No place is ever full" : "Full: " + String.join(", ", fullest);
  }

  private static String days(double mean) {
    return mean < 1 ? "less than a day" : Words.plural(mean, "day");
  }

  private static String waiting(Forecast forecast) {
    return WaitingLine.of(forecast).stream()
        .findFirst()
        .map(
            q ->
                "Longest wait: "
                    + q.name()
                    + ", "
                    + Words.plural(q.total(), "tray-day")
                    + (q.seen().isEmpty() ? "" : ", " + q.seen()))
        .orElse("Nothing waits for room");
  }

  private static String hands(Forecast forecast) {
    return "Hands: "
        + Words.amount(forecast.hands().hoursPerWorkingDay())
        + " hours a working day; they run out on "
        + WaitingCauses.daysShort(forecast.hands());
  }
}
