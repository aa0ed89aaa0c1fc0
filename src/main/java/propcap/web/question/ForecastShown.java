package propcap.web.question;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.report.compare.ComparisonAnswer;
import propcap.report.forecast.ForecastAnswer;
import propcap.report.forecast.SowingLine;
import propcap.report.forecast.VerdictSection;
import propcap.study.compare.Comparison;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.WhatMatters;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;

/**
 * The forecast in short, as the page has it beside the plan.
 *
 * @param version of the desk that it was made of
 * @param isWhole whether no more springs are tried
 * @param mean plants on time in a mean spring, with its 95 % limits
 * @param change what the last change did; null where there was none
 * @param lines of the headlines, those that say what nothing else here does
 * @param verdicts of all that stand side by side, and that table as HTML; empty where it stands
 *     alone
 */
public record ForecastShown(
    long version,
    String file,
    int seasons,
    boolean isWhole,
    VerdictSection.Figure needed,
    String onTime,
    double mean,
    double low,
    double high,
    @Nullable Change change,
    String verdict,
    String safe,
    String fullest,
    List<SowingLine> sowings,
    List<String> lines,
    List<String> doubts,
    List<Part> sections,
    List<String> verdicts,
    String sideBySide) {

  /**
   * What the last change did.
   *
   * @param before plants on time in a mean spring before it
   * @param weight up or down; empty where it does not matter
   */
  private record Change(double before, String told, String weight) {}

  /** A section of the report that can be opened. */
  private record Part(String id, String title) {}

  static ForecastShown of(Outlook.Seen seen, String file, int allSeasons) {
    Forecast forecast = seen.forecast();
    ForecastAnswer answer = new ForecastAnswer(forecast);
    double mean = forecast.onTime().mean();
    MeanLimits limits = forecast.onTime().limits();
    Comparison comparison = seen.comparison();
    return new ForecastShown(
        seen.version(),
        file,
        forecast.seasons(),
        forecast.seasons() >= allSeasons,
        answer.needed(),
        answer.onTime(),
        mean,
        limits == null ? mean : limits.low(),
        limits == null ? mean : limits.high(),
        change(seen.change(), answer),
        answer.verdict(),
        answer.safe(),
        answer.fullest(),
        answer.sowings(),
        answer.besideThePlan(),
        seen.doubts(),
        Arrays.stream(ForecastAnswer.Section.values())
            .map(section -> new Part(section.word(), section.title()))
            .toList(),
        comparison == null ? List.of() : new ComparisonAnswer(comparison).verdicts(),
        comparison == null ? "" : new ComparisonAnswer(comparison).sideBySide());
  }

  private static @Nullable Change change(@Nullable Difference change, ForecastAnswer answer) {
    if (change == null) {
      return null;
    }
    Forecast forecast = answer.forecast();
    boolean matters = WhatMatters.of(change, forecast.scenario()) == WhatMatters.MATTERS;
    return new Change(
        forecast.onTime().mean() - change.mean(),
        answer.sinceChange(change),
        !matters ? "" : change.mean() > 0 ? "up" : "down");
  }
}
