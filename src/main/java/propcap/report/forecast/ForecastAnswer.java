package propcap.report.forecast;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import propcap.report.kit.SafetyWords;
import propcap.report.kit.Templates;
import propcap.report.kit.Words;
import propcap.results.Answer;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.WhatMatters;
import propcap.study.statistics.Difference;

/** What comes of a plan: the report, and its numbers as tables. */
public record ForecastAnswer(Forecast forecast) implements Answer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "forecast",
          "",
          "summary.json",
          "scenario sowings waiting",
          "report.html sowings.csv places.csv losses.csv hands.csv seasons.csv");

  /** A part of the report, by the name that it is asked for. */
  public enum Section {
    HOUSE("house", "The house at a glance"),
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

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    return ForecastHeadlines.of(forecast);
  }

  /** The headlines but those of the verdict, of what is needed and of what was tried. */
  public List<String> besideThePlan() {
    return ForecastHeadlines.besideThePlan(forecast);
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("report.html", ReportPage.html(forecast, version));
    files.put(kind().file(), SummaryJson.of(forecast, version));
    files.put("sowings.csv", Tables.SOWINGS.csv(forecast.sowings()));
    files.put("places.csv", Tables.places(forecast));
    files.put("losses.csv", Tables.losses(forecast));
    files.put("hands.csv", Tables.hands(forecast));
    files.put("seasons.csv", Tables.seasons(forecast));
    return files;
  }

  @Override
  public String html() {
    return Templates.fill("verdict.jte", VerdictSection.of(forecast))
        + Stream.of(Section.values()).map(this::html).collect(Collectors.joining());
  }

  /** One section of the report. */
  public String html(Section section) {
    Object content =
        switch (section) {
          case HOUSE -> HouseSection.of(forecast);
          case PLANTS -> PlantsSection.of(forecast);
          case ROOM -> RoomSection.of(forecast);
          case WAITING -> WaitingSection.of(forecast);
          case LOSSES -> LossSection.of(forecast);
          case MOVES -> MovesSection.of(forecast);
          case HANDS -> HandsSection.of(forecast);
        };
    return Templates.withoutLooseErrors(Templates.fill(section.word + ".jte", content));
  }

  /** The plants needed that are on time, as the report's verdict says it. */
  public VerdictSection.Figure needed() {
    return VerdictSection.needed(forecast);
  }

  /** The name of the place that is full on the most days; empty where none is ever full. */
  public String fullest() {
    return VerdictSection.fullest(forecast).map(Forecast.Occupancy::name).orElse("");
  }

  /** All plants on time, which are more, with their error. */
  public String onTime() {
    return "With those beyond what a sowing needs, %s plants are on time (%s)"
        .formatted(Words.count(forecast.onTime().mean()), Words.interval(forecast.onTime()));
  }

  /** What the last change did to all plants on time, by the rule of {@link WhatMatters}. */
  public String sinceChange(Difference difference) {
    if (difference.differing() == 0) {
      return "The last change makes no difference to the plants on time.";
    }
    String told =
        "With the last change %s %s plants are on time"
            .formatted(
                Words.count(Math.abs(difference.mean())), difference.mean() > 0 ? "more" : "fewer");
    return switch (WhatMatters.of(difference, forecast.scenario())) {
      case MATTERS -> told + ".";
      case NONE -> told + ": no difference that matters.";
      case NOT_TOLD -> told + ", which may be chance: too few springs tell.";
    };
  }

  /** What comes of each sowing, in the order of the plan. */
  public List<SowingLine> sowings() {
    return SowingLine.of(forecast);
  }

  /** How the sowings stand, in a sentence after its mark. */
  public String verdict() {
    VerdictSection verdict = VerdictSection.of(forecast);
    return verdict.mark() + " " + verdict.sentence();
  }

  /** How many sowings are safe, as every answer counts them. */
  public String safe() {
    return SafetyWords.safe(forecast);
  }
}
