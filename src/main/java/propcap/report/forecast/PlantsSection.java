package propcap.report.forecast;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import propcap.farm.Season;
import propcap.report.kit.Dates;
import propcap.report.kit.SafetyWords;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Safety;

/** Will we have the plants? */
public record PlantsSection(
    String verdict, List<String> reasons, List<Row> notSafe, List<Row> safe, Reasons accounts) {
  private static final int WORST_NAMED = 5;

  /** One sowing, in text. */
  public record Row(
      String id,
      String crop,
      String mark,
      String word,
      String words,
      String chance,
      String interval,
      String needed,
      String onTime,
      String onTimeRange,
      String late,
      String lateSpread) {}

  static PlantsSection of(Forecast forecast) {
    List<SowingForecast> worstFirst = worstFirst(forecast);
    return new PlantsSection(
        verdict(forecast),
        reasons(forecast, worstFirst),
        rows(worstFirst.stream().filter(s -> !isSafe(s)), forecast.scenario().season()),
        rows(worstFirst.stream().filter(PlantsSection::isSafe), forecast.scenario().season()),
        Reasons.of(forecast));
  }

  private static List<Row> rows(Stream<SowingForecast> sowings, Season season) {
    return sowings.map(s -> row(s, season)).toList();
  }

  public String notSafeTitle() {
    return "Not safe: " + Words.plural(notSafe.size(), "sowing") + ".";
  }

  public String safeTitle() {
    return "Safe: " + Words.plural(safe.size(), "sowing") + ".";
  }

  /** The sowings, the worst chance first; equal ones in the order of the plan. */
  static List<SowingForecast> worstFirst(Forecast forecast) {
    return forecast.sowings().stream()
        .sorted(Comparator.comparingDouble(SowingForecast::chanceMet))
        .toList();
  }

  private static boolean isSafe(SowingForecast sowing) {
    return Safety.of(sowing) == Safety.SAFE;
  }

  private static String verdict(Forecast forecast) {
    int all = forecast.sowings().size();
    long safe = Safety.SAFE.among(forecast.sowings());
    String goal = " the plants needed in the ground on time in " + goal(forecast) + ".";
    if (all == 0) {
      return "Nothing is sown.";
    }
    if (safe == all) {
      return (all == 1 ? "Yes: the only sowing has" : "Yes: all " + all + " sowings have") + goal;
    }
    if (all == 1) {
      return "No: the only sowing has not" + goal;
    }
    return safe == 0
        ? "No: none of the " + all + " sowings has" + goal
        : "Not all: " + safe + " of " + all + (safe == 1 ? " sowings has" : " sowings have") + goal;
  }

  /** The share of springs that is asked of them. */
  private static String goal(Forecast forecast) {
    boolean allAlike =
        forecast.sowings().stream().allMatch(s -> Safety.goal(s.sowing()) == Safety.DEFAULT_GOAL);
    return allAlike ? "at least 9 springs of 10" : "the share of springs that is its goal";
  }

  private static List<String> reasons(Forecast forecast, List<SowingForecast> worstFirst) {
    List<String> sentences = new ArrayList<>();
    sentences.add(
        "Together "
            + Words.count(forecast.onTime().mean())
            + " plants are out on time in a mean spring, with those beyond what a sowing needs ("
            + Words.interval(forecast.onTime())
            + "); in 8 springs of 10 it is "
            + Words.range(forecast.onTime())
            + ". Another "
            + Words.mean(forecast.late())
            + " come late.");
    List<String> worst =
        worstFirst.stream()
            .filter(s -> !isSafe(s))
            .limit(WORST_NAMED)
            .map(s -> s.sowing().id() + " (" + Words.springs(s.chanceMet()) + ")")
            .toList();
    if (!worst.isEmpty()) {
      sentences.add(
          (worst.size() == 1 ? "The one at risk is " : "Most at risk are ")
              + Words.list(worst)
              + ".");
    }
    int unsure =
        (int)
            forecast.sowings().stream()
                .filter(s -> s.chanceMetLow() < Safety.goal(s.sowing()))
                .filter(s -> s.chanceMetHigh() >= Safety.goal(s.sowing()))
                .count();
    if (unsure > 0) {
      sentences.add(
          "For "
              + Words.plural(unsure, "sowing")
              + " the interval of the chance spans the goal: only more springs would tell on which side"
              + " of it "
              + (unsure == 1 ? "it lies." : "they lie."));
    }
    return sentences;
  }

  private static Row row(SowingForecast forecast, Season season) {
    return new Row(
        forecast.sowing().id(),
        forecast.sowing().crop(),
        SafetyWords.mark(Safety.of(forecast)),
        SafetyWords.word(Safety.of(forecast)),
        wordsAndDate(forecast, season),
        Words.chance(forecast.chanceMet()),
        Words.chances(forecast.chanceMetLow(), forecast.chanceMetHigh()),
        Words.count(forecast.sowing().plantsNeeded()),
        Words.count(forecast.onTime().mean()),
        Words.range(forecast.onTime()),
        Words.amount(forecast.late().mean()),
        Words.spread(forecast.late()));
  }

  /** The chance of one sowing, in a sentence without its full stop. */
  static String words(SowingForecast forecast, Season season) {
    String needed = Words.count(forecast.sowing().plantsNeeded());
    String bedBy = Dates.day(forecast.sowing().bedBy(), season);
    if (forecast.sowing().plantsNeeded() == 0) {
      return "no plants are asked for";
    }
    if (isSafe(forecast)) {
      return forecast.readyBy() == null
          ? "in " + Words.springs(forecast.chanceMet()) + " all are in by " + bedBy
          : "ready by " + Dates.day(forecast.readyBy(), season) + " in 9 springs of 10";
    }
    return "in %s are the %s plants in by %s"
        .formatted(Words.onlySprings(forecast.chanceMet()), needed, bedBy);
  }

  private static String wordsAndDate(SowingForecast forecast, Season season) {
    String words = words(forecast, season);
    return forecast.readyBy() == null || isSafe(forecast)
        ? words
        : words + "; in 9 of 10 they are by " + Dates.day(forecast.readyBy(), season);
  }
}
