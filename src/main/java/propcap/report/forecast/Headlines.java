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
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Safety;

/** The ten lines of a forecast that matter, for a terminal. */
public final class Headlines {
  private static final int LINES = 10;

  /** What holds up what, what is lost, and what was run. */
  private static final int LINES_BELOW = 3;

  private Headlines() {}

  /** At most ten lines of plain text, none wider than 100 columns, the answer first. */
  public static List<String> of(Forecast forecast) {
    VerdictSection verdict = VerdictSection.of(forecast);
    List<String> lines = new ArrayList<>();
    lines.add(forecast.scenario().name() + ": " + verdict.mark() + " " + verdict.sentence());
    verdict.figures().forEach(f -> lines.add("  " + f.line()));
    boolean limited = forecast.scenario().labour().isLimited();
    int others = limited ? LINES_BELOW + 1 : LINES_BELOW;
    PlantsSection.worstFirst(forecast).stream()
        .limit(LINES - lines.size() - others)
        .map(s -> sowing(s, forecast.scenario().season()))
        .forEach(lines::add);
    if (limited) {
      lines.add(hands(forecast));
    }
    lines.add(WaitingCauses.of(forecast).verdict(forecast));
    lines.add(LossWords.losses(forecast));
    lines.add(Words.plural(forecast.seasons(), "spring") + ", seed " + forecast.settings().seed());
    return lines.stream().map(l -> Words.shortened(l, Lines.COLUMNS)).toList();
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
    return "Hands: "
        + Words.amount(forecast.hands().hoursPerWorkingDay())
        + " hours a working day; they run out on "
        + WaitingCauses.daysShort(forecast.hands());
  }
}
