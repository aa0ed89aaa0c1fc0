package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import propcap.Tried;
import propcap.chance.SeasonLuck;
import propcap.farm.Labour;
import propcap.farm.Scenario;
import propcap.files.scenario.ScenarioReader;

/**
 * No drift: seasons are simulated, their logs kept up to a day, and the rest forecast from the log.
 * What came must lie in the forecasts as a draw from them would, in all and for each sowing. The
 * bounds, a chi-square of 33.7 and 4 standard errors, are exceeded once in ten and sixteen thousand
 * comparisons; some two hundred are made.
 */
@Tag("guarantees")
class NoDriftGuaranteeTest {
  private static final int SEASONS = 300;

  private static Scenario example() throws Exception {
    return ScenarioReader.read(Path.of("src/test/resources/propcap/example/scenario.yaml"));
  }

  private static void tried(
      String farm, Scenario scenario, int today, PretendedLog.Counting counting, int springs) {
    List<FromADayOn.Case> cases =
        new FromADayOn(scenario, today, counting)
            .cases(SEASONS, springs, 900, FromADayOn.Drawn.GIVEN_THE_LOG);
    int sowings = scenario.sowings().size();
    double mostChiSquare = 0;
    double mostErrors = 0;
    for (int s = 0; s <= sowings; s++) {
      Calibration calibration = Calibration.of(cases, s, 901);
      mostChiSquare = Math.max(mostChiSquare, calibration.chiSquare());
      mostErrors = Math.max(mostErrors, Math.abs(calibration.errors()));
      assertThat(calibration.holds())
          .as(farm + ", day " + today + ", " + counting + ", " + s + ": " + calibration)
          .isTrue();
    }
    Tried.row(
        "guarantees",
        "what comes in the end lies in the forecasts from the log as a draw from them would, in all"
            + " and for each sowing",
        farm
            + ", day "
            + today
            + ", "
            + counting.name().toLowerCase(Locale.ROOT)
            + " counted: "
            + SEASONS
            + " simulated springs, each with a forecast of "
            + springs,
        Calibration.of(cases, sowings, 901)
            + String.format(
                Locale.ROOT,
                "; of %d sowings at most %.1f standard errors and chi-square %.1f",
                sowings,
                mostErrors,
                mostChiSquare));
  }

  @Test
  void onASmallFarmWithThreeCropsAndLittleRoom() {
    for (int today : new int[] {6, 14, 25, 35}) {
      for (PretendedLog.Counting counting : PretendedLog.Counting.values()) {
        tried("three crops and little room", FarmsWithAPast.threeCrops(), today, counting, 59);
      }
    }
  }

  /** A move takes two and a half days' hours, so that most trays wait for hands. */
  @Test
  void onASmallFarmWithFewHands() {
    Labour labour = new Labour(0.2, new Labour.Minutes(1, 30, 6, 0.5, 0.5), List.of());
    Scenario scenario = FarmsWithAPast.threeCrops().withLabour(labour);
    for (int today : new int[] {6, 14, 25, 35}) {
      for (PretendedLog.Counting counting : PretendedLog.Counting.values()) {
        tried("three crops and few hands", scenario, today, counting, 59);
      }
    }
  }

  @Test
  void onTheExample() throws Exception {
    tried("the example", example(), 80, PretendedLog.Counting.NOTHING, 19);
    tried("the example", example(), 80, PretendedLog.Counting.STANDS, 19);
    tried("the example", example(), 50, PretendedLog.Counting.ALL, 19);
    tried("the example", example(), 110, PretendedLog.Counting.STANDS, 19);
  }

  /** The twin: the log is done again, but luck is drawn as before the season. */
  @Test
  void forecastsWhoseLuckIsDrawnAnewAreRefused() {
    List<FromADayOn.Case> cases =
        new FromADayOn(FarmsWithAPast.oneLot(), 8, PretendedLog.Counting.STANDS)
            .cases(SEASONS, 59, 900, FromADayOn.Drawn.ANEW);
    int sowings = FarmsWithAPast.oneLot().sowings().size();
    assertThat(Calibration.of(cases, sowings, 901).holds()).isFalse();
    Tried.row(
        "guarantees",
        "the twin: with luck drawn as before the season, whatever the log says, it is refused",
        "six trays of a lot of little tested seed, day 8, stands counted: "
            + SEASONS
            + " simulated springs",
        Calibration.of(cases, sowings, 901).toString());
  }

  private static double[] variances(Scenario oneSpring, int today, int seasons, int springs) {
    FromADayOn day = new FromADayOn(oneSpring, today, PretendedLog.Counting.STANDS);
    double[] variances = new double[seasons];
    for (int n = 0; n < seasons; n++) {
      SeasonLuck luck = day.plan().luck(500).reader().season(n);
      double[] total =
          Arrays.stream(
                  day.forecast(day.log(luck), springs, 501 + n, FromADayOn.Drawn.GIVEN_THE_LOG))
              .mapToDouble(f -> f[f.length - 1])
              .toArray();
      double error = Mean.of(total).standardError();
      variances[n] = error * error * springs;
    }
    return variances;
  }

  /**
   * Each day's log holds that of the days before, so that on average the variance can only fall.
   * One spring, whose days to come are known on all days alike. A mean may rise by 3 standard
   * errors of the paired differences.
   */
  @Test
  void aLaterDayNeverMakesTheTotalLessCertainOnAverage() throws Exception {
    fallsByDay(
        "three crops and little room", FarmsWithAPast.threeCrops(), 200, 6, 12, 18, 24, 30, 36);
    fallsByDay("the example", example(), 40, 30, 60, 90, 120, 150);
  }

  private static void fallsByDay(String farm, Scenario scenario, int seasons, int... days) {
    Scenario oneSpring = FarmsWithAPast.withWeather(scenario, scenario.weather().subList(0, 1));
    List<String> deviations = new ArrayList<>();
    double[] before = new double[0];
    for (int day : days) {
      double[] now = variances(oneSpring, day, seasons, 40);
      deviations.add(
          String.format(Locale.ROOT, "day %d: %.1f", day, Math.sqrt(Mean.of(now).mean())));
      if (before.length > 0) {
        double[] rise = new double[now.length];
        for (int i = 0; i < rise.length; i++) {
          rise[i] = now[i] - before[i];
        }
        Mean mean = Mean.of(rise);
        assertThat(mean.mean())
            .as(farm + " " + deviations)
            .isLessThanOrEqualTo(3 * mean.standardError());
      }
      before = now;
    }
    Tried.row(
        "guarantees",
        "a later day never makes the total less certain on average",
        farm + ", one spring, stands counted: " + seasons + " simulated seasons",
        "standard deviation of the total forecast, root mean square: "
            + String.join(", ", deviations));
  }
}
