package propcap.study.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import propcap.Tried;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.WeatherYear;
import propcap.study.RunSettings;
import propcap.study.statistics.Difference;

/**
 * Whether what a change did to the plants on time is told right where the weather was changed: the
 * years of before and after are other ones, and not as many, so that blocks of springs do not end
 * together. The twin takes the springs' errors for half of what they are.
 */
@Tag("guarantees")
class SinceChangeGuaranteeTest {
  private static final int FARMS = 20;
  private static final int SEEDS = 25;
  private static final int BY_FORCE = 20_000;
  private static final long OTHER_LUCK = 4711;

  private static Scenario in(Scenario farm, List<WeatherYear> weather) {
    return new Scenario(
        farm.name(),
        farm.season(),
        farm.frostAtC(),
        farm.rounds(),
        farm.places(),
        farm.crops(),
        farm.sowings(),
        weather,
        farm.prices(),
        farm.labour());
  }

  /** So many years, those of the farm over and over, each by another half degree warmer. */
  private static List<WeatherYear> years(Scenario farm, int count, double warmerC) {
    List<WeatherYear> years = new ArrayList<>();
    for (int y = 0; y < count; y++) {
      WeatherYear from = farm.weather().get(y % farm.weather().size());
      int round = y / farm.weather().size();
      double by = warmerC + .5 * round;
      years.add(
          new WeatherYear(
              1900 + y,
              IntStream.range(0, farm.season().days())
                  .mapToDouble(d -> from.minC(d) + by)
                  .toArray(),
              IntStream.range(0, farm.season().days())
                  .mapToDouble(d -> 2 * from.meanC(d) - from.minC(d) + by)
                  .toArray()));
    }
    return years;
  }

  private static Forecast forecast(Scenario scenario, long seed, int springs) throws Exception {
    return Forecasting.forecast(
        scenario, new RunSettings(seed, springs, null, 2).inWholeBlocks(scenario), share -> {});
  }

  private static void check(int yearsBefore, int yearsAfter, int springs) throws Exception {
    int told = 0;
    int held = 0;
    int heldByHalf = 0;
    for (int number = 0; number < FARMS; number++) {
      Scenario farm = RandomScenarios.from(501 + number);
      Scenario before = in(farm, years(farm, yearsBefore, 0));
      Scenario after = in(farm, years(farm, yearsAfter, -1));
      double truth =
          forecast(after, OTHER_LUCK, BY_FORCE).onTime().mean()
              - forecast(before, OTHER_LUCK, BY_FORCE).onTime().mean();
      for (long seed = 1; seed <= SEEDS; seed++) {
        Difference change =
            forecast(after, seed, springs)
                .onTimeMoreThan(forecast(before, seed, springs).onTimeBySpring());
        // Where no spring differs, no interval is told.
        if (change.isTold() && change.narrowing() != null) {
          double off = Math.abs(change.mean() - truth);
          told++;
          held += off <= change.halfWidth() ? 1 : 0;
          heldByHalf += off <= change.halfWidth() / 2 ? 1 : 0;
        }
      }
    }
    double error = Math.sqrt(.95 * .05 / told);
    Tried.row(
        "guarantees",
        "what a change of the weather did to the plants on time (where it is told with an interval)",
        String.format(
            Locale.ROOT,
            "%d farms made up, %d seeds each of %d springs,"
                + " %d years of weather before and %d after",
            FARMS,
            SEEDS,
            springs,
            yearsBefore,
            yearsAfter),
        String.format(Locale.ROOT, "%.1f %% of %,d hold", 100.0 * held / told, told));
    assertThat(held / (double) told).isGreaterThan(.95 - 3 * error);
    assertThat(heldByHalf / (double) told).as("by half").isLessThan(.95 - 3 * error);
  }

  @Test
  void fromManyYearsToFew() throws Exception {
    check(24, 7, 20);
    check(24, 7, 100);
  }

  @Test
  void fromFewYearsToMany() throws Exception {
    check(1, 24, 100);
    check(10, 24, 100);
  }

  @Test
  void toAsManyOthers() throws Exception {
    check(24, 24, 100);
  }
}
