package propcap.study.latest;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import propcap.Tried;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.RunSettings;
import propcap.study.latest.Latest.Course;
import propcap.study.latest.Latest.Day;
import propcap.study.latest.Latest.LastDay;

/** What is told of the last day to sow, on many farms: {@code mvn -B -Pguarantees test}. */
@Tag("guarantees")
class LatestSowingGuaranteeTest {
  private static final int FARMS = 20;

  /** Luck of which each is asked, for each of two goals. */
  private static final int LUCKS = 30;

  /** A day is told too early once in a hundred courses at most, of four asked of each sowing. */
  @Test
  void everyDayOnEverySpringGivesTheSameLastDays() throws Exception {
    List<String> wrong = new ArrayList<>();
    int asked = 0;
    for (long seed = 1; seed <= 150; seed++) {
      Scenario scenario = RandomScenarios.from(seed);
      for (Sowing sowing :
          scenario.sowings().stream().filter(s -> s.plantsNeeded() > 0).limit(2).toList()) {
        wrong.addAll(
            LatestSowingTest.disagreements(
                scenario, sowing, 0.8, new RunSettings(seed, 120, null, 1)));
        asked += 4;
      }
    }
    Tried.row(
        "guarantees",
        "latest: the last day is that of every day on every spring",
        "150 farms made up, two sowings each, alone and in the house, for 8 and for 5 springs of 10,"
            + " 120 springs",
        wrong.size() + " of " + asked + " differ");
    assertThat(wrong).hasSizeLessThanOrEqualTo(asked / 100);
  }

  /**
   * A tray that takes 10 exp(Z s) days must be ready by a day: by the normal law the last day for
   * eight springs of ten is 24 with s = .2 (.819 on it, .683 after it) and 20 with s = .5 (.826 on
   * it, .791 after it, which no 200 springs tell from .8). Five of a hundred may lie outside, and
   * with 4 standard errors of 400 tries 9.4 of a hundred.
   */
  @Test
  void theTrueLastDayLiesBetweenTheTwoThatAreTold() throws Exception {
    for (double spread : new double[] {0.2, 0.5}) {
      LocalDate truth = Farms.day(spread == 0.2 ? 24 : 20);
      int tries = 400;
      int outside = 0;
      for (int seed = 1; seed <= tries; seed++) {
        Crops crop = new Crops();
        crop.spread = spread;
        Farms farm = new Farms();
        farm.crops = List.of(crop.make());
        farm.sowings = List.of(Farms.sowing("a", 2, 1, 0, 45));
        LastDay last =
            LatestSowing.latest(
                    farm.make(),
                    new LatestQuestion(0.8, List.of("*"), Farms.START),
                    new RunSettings(seed, 200, null, 1),
                    share -> {})
                .sowings()
                .get(0)
                .inHouse()
                .last(0.8)
                .orElseThrow();
        LocalDate surely = last.surely();
        if (truth.isAfter(last.perhaps()) || surely == null || surely.isAfter(truth)) {
          outside++;
        }
      }
      Tried.row(
          "guarantees",
          "latest: the true last day lies between the two told beside it",
          "a tray whose days follow a known law, spread " + spread + ", 200 springs, 400 seeds",
          outside + " of " + tries + " outside");
      assertThat(outside / (double) tries).isLessThan(0.05 + 4 * Math.sqrt(0.05 * 0.95 / tries));
    }
  }

  /**
   * In a house that is full the chance goes up and down from day to day. The goal is a little below
   * or above what one day comes to in truth, which is where it is hardest to tell; truth is that of
   * 3,000 springs of other luck.
   */
  @Test
  void inAFullHouseTooTheTrueLastDayLiesBetweenTheTwoThatAreTold() throws Exception {
    int farms = 0;
    int tries = 0;
    int outside = 0;
    for (long seed = 1; farms < FARMS; seed++) {
      Scenario scenario = RandomScenarios.from(seed);
      Sowing sowing = scenario.sowings().get(0);
      if (sowing.plantsNeeded() == 0) {
        continue;
      }
      Course truth =
          LatestSowingTest.byForce(
              scenario, sowing, new RunSettings(1_000_000 + seed, 3000, null, 1));
      Optional<Day> hard =
          truth.days().stream()
              .filter(d -> d.chance() > 0.3 && d.chance() < 0.97)
              .min(Comparator.comparingDouble(d -> Math.abs(d.chance() - 0.8)));
      if (hard.isEmpty()) {
        continue;
      }
      farms++;
      for (double apart : new double[] {-0.004, 0.004}) {
        double goal = hard.get().chance() + apart;
        Optional<LocalDate> last = truth.last(goal).map(l -> l.day().sow());
        for (int luck = 1; luck <= LUCKS; luck++) {
          Optional<LastDay> told =
              LatestSowing.latest(
                      scenario,
                      new LatestQuestion(goal, List.of(sowing.id()), scenario.season().start()),
                      new RunSettings(luck, 200, null, 1),
                      share -> {})
                  .sowings()
                  .get(0)
                  .inHouse()
                  .last(goal);
          // Where no day is told no interval is.
          if (told.isPresent()) {
            tries++;
            outside += isWithin(last.orElse(null), told.get()) ? 0 : 1;
          }
        }
      }
    }
    Tried.row(
        "guarantees",
        "latest: the true last day lies between the two told beside it",
        FARMS
            + " farms made up, in the house as full as it is, goals 0.4 points beside the chance of"
            + " a day, 200 springs, "
            + LUCKS
            + " seeds each; truth by 3,000 springs",
        outside + " of " + tries + " outside");
    assertThat(outside / (double) tries).isLessThan(0.05 + 4 * Math.sqrt(0.05 * 0.95 / tries));
  }

  /** A day that is none in truth is within what is perhaps none. */
  private static boolean isWithin(@Nullable LocalDate truth, LastDay told) {
    LocalDate surely = told.surely();
    if (truth == null) {
      return surely == null;
    }
    return !truth.isAfter(told.perhaps()) && (surely == null || !surely.isAfter(truth));
  }
}
