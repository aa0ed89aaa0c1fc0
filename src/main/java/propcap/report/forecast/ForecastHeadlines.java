package propcap.report.forecast;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import propcap.farm.Season;
import propcap.report.kit.Lines;
import propcap.report.kit.LossWords;
import propcap.report.kit.SafetyWords;
import propcap.report.kit.WaitingCauses;
import propcap.report.kit.Words;
import propcap.results.Headlines;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Safety;

/** The ten lines of a forecast that matter, for a terminal. */
final class ForecastHeadlines {
  private static final int LINES = 10;

  /** What holds up what, what is lost, and what was run. */
  private static final int LINES_BELOW = 3;

  private final Forecast forecast;
  private final VerdictSection verdict;
  private final boolean isLimited;

  private ForecastHeadlines(Forecast forecast) {
    this.forecast = forecast;
    verdict = VerdictSection.of(forecast);
    isLimited = forecast.scenario().labour().isLimited();
  }

  /** At most ten lines of plain text, none wider than 100 columns, the answer first. */
  static Headlines of(Forecast forecast) {
    ForecastHeadlines all = new ForecastHeadlines(forecast);
    VerdictSection verdict = all.verdict;
    List<String> told = new ArrayList<>();
    told.add(forecast.scenario().name() + ": " + verdict.mark() + " " + verdict.sentence());
    told.addAll(figures(verdict.figures()));
    told.addAll(all.below());
    return new Headlines(
        told.stream().map(ForecastHeadlines::shortened).toList(),
        shortened(
            Words.plural(forecast.seasons(), "spring") + ", seed " + forecast.settings().seed()));
  }

  /** What is left of them where the verdict, its first figures and the springs stand already. */
  static List<String> besideThePlan(Forecast forecast) {
    ForecastHeadlines all = new ForecastHeadlines(forecast);
    return Stream.concat(figures(all.verdict.otherFigures()).stream(), all.below().stream())
        .map(ForecastHeadlines::shortened)
        .toList();
  }

  private static String shortened(String line) {
    return Words.shortened(line, Lines.COLUMNS);
  }

  private static List<String> figures(List<VerdictSection.Figure> figures) {
    return figures.stream().map(f -> "  " + f.line()).toList();
  }

  private List<String> below() {
    List<String> lines = new ArrayList<>();
    int others = isLimited ? LINES_BELOW + 1 : LINES_BELOW;
    PlantsSection.worstFirst(forecast).stream()
        .limit(LINES - 1 - verdict.figures().size() - others)
        .map(s -> sowing(s, forecast.scenario().season()))
        .forEach(lines::add);
    if (isLimited) {
      lines.add(hands(forecast));
    }
    lines.add(WaitingCauses.of(forecast).verdict(forecast));
    lines.add(LossWords.losses(forecast));
    return lines;
  }

  private static String sowing(SowingForecast forecast, Season season) {
    String line =
        "  "
            + SafetyWords.mark(Safety.of(forecast))
            + " "
            + forecast.sowing().id()
            + ": "
            + PlantsSection.words(forecast, season);
    return Stream.of(true, false)
        .map(isLong -> line + Reasons.most(forecast, isLong).map(cause -> ": " + cause).orElse(""))
        .filter(told -> told.length() <= Lines.COLUMNS)
        .findFirst()
        .orElse(line);
  }

  private static String hands(Forecast forecast) {
    return "Hands: %s hours a working day; they run out on %s"
        .formatted(
            Words.amount(forecast.hands().hoursPerWorkingDay()),
            WaitingCauses.daysShort(forecast.hands()));
  }
}
