package propcap.report.kit;

import java.util.ArrayList;
import java.util.List;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Safety;

/** Safe, at risk or lost: by shape and by word, the same in every answer. */
public final class SafetyWords {
  private SafetyWords() {}

  /** A shape that is told apart in grey. */
  public static String mark(Safety safety) {
    return switch (safety) {
      case SAFE -> "●";
      case AT_RISK -> "◐";
      case LOST -> "○";
    };
  }

  /** Such as {@code at risk}. */
  public static String word(Safety safety) {
    return switch (safety) {
      case SAFE -> "safe";
      case AT_RISK -> "at risk";
      case LOST -> "lost";
    };
  }

  /** Such as {@code 40 of 59}. */
  public static String safe(Forecast forecast) {
    return Safety.SAFE.among(forecast.sowings()) + " of " + forecast.sowings().size();
  }

  /** How all sowings stand, such as {@code 40 of 59 sowings are safe, 18 at risk and 1 lost}. */
  public static String standing(Forecast forecast) {
    List<SowingForecast> sowings = forecast.sowings();
    if (sowings.isEmpty()) {
      return "Nothing is sown";
    }
    if (sowings.size() == 1) {
      return "The only sowing is " + word(Safety.of(sowings.get(0)));
    }
    int safe = Safety.SAFE.among(sowings);
    if (safe == sowings.size()) {
      return "All " + safe + " sowings are safe";
    }
    List<String> parts = new ArrayList<>();
    parts.add(
        safe + " of " + sowings.size() + (safe == 1 ? " sowings is safe" : " sowings are safe"));
    for (Safety safety : List.of(Safety.AT_RISK, Safety.LOST)) {
      if (safety.among(sowings) > 0) {
        parts.add(safety.among(sowings) + " " + word(safety));
      }
    }
    return Words.list(parts);
  }

  /**
   * Between which numbers the count of the safe ones lies as far as the springs tell, such as
   * {@code 37 to 43 within the error}; empty where they leave no doubt.
   */
  public static String doubt(Forecast forecast) {
    long least = count(forecast, true);
    long most = count(forecast, false);
    return least == most ? "" : least + " to " + most + " within the error";
  }

  private static long count(Forecast forecast, boolean low) {
    return forecast.sowings().stream()
        .filter(
            s ->
                Safety.of(low ? s.chanceMetLow() : s.chanceMetHigh(), Safety.goal(s.sowing()))
                    == Safety.SAFE)
        .count();
  }
}
