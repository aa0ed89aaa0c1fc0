package propcap.report;

import java.util.List;
import propcap.study.Bottlenecks;
import propcap.study.Comparison;
import propcap.study.Forecast;
import propcap.study.OrderList;
import propcap.study.Planned;
import propcap.study.Shifts;
import propcap.study.Sizing;

/**
 * Pieces of the report and of the answers' pages as HTML, for a page that shows them beside other
 * things: the same charts, tables and words.
 */
public final class Fragments {
  private Fragments() {}

  /** A part of the report, by the name that it is asked for. */
  public enum Section {
    PLANTS("plants", "Will we have the plants?"),
    ROOM("room", "What is full, and when"),
    WAITING("waiting", "What waits for what"),
    LOSSES("losses", "Where plants are lost"),
    MOVES("moves", "When each sowing moves"),
    HANDS("hands", "What the work takes");

    private final String word;
    private final String title;

    Section(String word, String title) {
      this.word = word;
      this.title = title;
    }

    public String word() {
      return word;
    }

    public String title() {
      return title;
    }
  }

  /** A section of the report. */
  public static String of(Forecast forecast, Section section) {
    Object content =
        switch (section) {
          case PLANTS -> PlantsSection.of(forecast);
          case ROOM -> RoomSection.of(forecast);
          case WAITING -> WaitingSection.of(forecast);
          case LOSSES -> LossSection.of(forecast);
          case MOVES -> MovesSection.of(forecast);
          case HANDS -> HandsSection.of(forecast);
        };
    return Templates.fill(section.word + ".jte", content);
  }

  /** All plants on time, with their error, as the report says it. */
  public static String onTime(Forecast forecast) {
    return Words.count(forecast.onTime().mean())
        + " plants on time ("
        + Words.interval(forecast.onTime())
        + ")";
  }

  /** In how many sowings the plants needed are on time in 9 springs of 10, as the report counts. */
  public static String safe(Forecast forecast) {
    return PlantsSection.safe(forecast) + " of " + forecast.sowings().size();
  }

  /** Scenarios side by side in a small table, the first and what differs from it. */
  public static String sideBySide(Comparison comparison) {
    Sheet sheet = new SideBySide(comparison).sheet();
    return Templates.fill("sheet.jte", sheet).replace(" ± ", "\u00a0±\u00a0");
  }

  public static String of(Comparison comparison) {
    return parts(ComparisonPage.of(comparison, ""));
  }

  public static String of(Bottlenecks bottlenecks) {
    return parts(BottlenecksPage.of(bottlenecks, ""));
  }

  public static String of(Sizing sizing, OrderList order) {
    return parts(SizePage.of(sizing, order, ""));
  }

  public static String of(Shifts shifts) {
    return parts(ShiftPage.of(shifts, ""));
  }

  public static String of(Planned planned) {
    return parts(PlanPage.of(planned, ""));
  }

  /** A ± at a line's end would part a number from its error. */
  private static String parts(AnswerPage page) {
    return Templates.fill("parts.jte", page).replace(" ± ", "\u00a0±\u00a0");
  }

  /** The look of them all, as a style sheet. */
  public static String style() {
    return Templates.fill("style.jte").replace("<style>", "").replace("</style>", "");
  }

  /** What changed in each outcome, in a sentence for each alternative. */
  public static List<String> verdicts(Comparison comparison) {
    return ComparisonWords.of(comparison).stream().map(ComparisonWords::verdict).toList();
  }
}
