package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Place;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Season;

/**
 * With endless room the mean number of trays in a place is the sum over trays of the chance to be
 * there (Eick, Massey and Whitt 1993, Operations Research 41, where arrivals are random; here the
 * dates are fixed).
 *
 * <p>The check, for each day: trays being independent, the number present in all seasons is a sum
 * of independent zeros and ones of variance V, which by Bernstein's inequality lies further than
 * sqrt(2 V x) + x/3 from its mean with a chance of at most 2 exp(-x). With x = 14 that is 5.3
 * standard errors, and a little more where trays are rare: 1.7e-6 a day, so 4e-4 over the 240 days
 * of three places.
 */
class OccupancyLawTest {
  private static final int SEASONS = 1000;
  private static final double X = 14;
  private static final int DAYS = 80;
  private static final int TRAYS = 3;

  /** Day 0 is a Monday: 6, 20 and 34 are Sundays, on which nobody sows. */
  private static final List<Integer> SOW_DAYS = List.of(0, 6, 11, 15, 20, 26, 31, 34);

  private static final int MATS = 0;
  private static final int HOUSE = 1;
  private static final int YARD = 2;

  private static List<SeasonOutcome> seasons = List.of();

  @BeforeAll
  static void run() {
    seasons = Runs.of(scenario(), 4, SEASONS);
  }

  private static Scenario scenario() {
    Crops crop = new Crops();
    crop.cells = 20;
    crop.seedsPerCell = 2;
    crop.germination = new Crop.Germination(0.55, 0, 0.1);
    crop.emergence = new Crop.Emergence(5, 30, 40, 20, 6, 9);
    crop.leaveAt = 0.5;
    crop.pullAfterDays = 9.5;
    crop.failBelow = 0.3;
    crop.takesDays = 12;
    crop.spread = 0.15;
    crop.hardening = new Crop.Hardening(4, 2, -2, 0, 0, 1, 0);
    Farms farm = new Farms();
    farm.season = new Season(Farms.START, Farms.day(DAYS - 1));
    farm.rounds = new Rounds(Rounds.DEFAULT_AT, Set.of(DayOfWeek.SUNDAY));
    farm.minC = filled(8);
    farm.maxC = filled(18);
    farm.crops = List.of(crop.make());
    for (int day : SOW_DAYS) {
      farm.sowings.add(Farms.sowing("sowing of " + day, day, TRAYS));
    }
    Scenario scenario = farm.make().withEndlessRoom();
    return scenario.withPlaces(
        scenario.places().stream()
            .map(p -> p.name().equals("Mats") ? at(p, new Climate.Constant(22)) : p)
            .toList());
  }

  private static Place at(Place place, Climate climate) {
    return new Place(place.name(), place.kind(), place.spaces(), climate, 0, null);
  }

  private static double[] filled(double value) {
    double[] days = new double[DAYS];
    Arrays.fill(days, value);
    return days;
  }

  /** What the model's text says of this scenario. */
  private static final OneTray TRUE = new OneTray(6, 9, 12);

  /** The days of a place on which the trays seen are not those expected. */
  private static long daysRefused(int place, OneTray expected) {
    OneTray.Stay[] stays = SOW_DAYS.stream().map(expected::sownOn).toArray(OneTray.Stay[]::new);
    long refused = 0;
    for (int day = 0; day < DAYS; day++) {
      double mean = 0;
      double variance = 0;
      for (OneTray.Stay stay : stays) {
        double p = stay.chance(place, day);
        mean += SEASONS * TRAYS * p;
        variance += SEASONS * TRAYS * p * (1 - p);
      }
      long seen = 0;
      for (SeasonOutcome season : seasons) {
        seen += season.use(place, day);
      }
      boolean holds = Math.abs(seen - mean) <= Math.sqrt(2 * variance * X) + X / 3;
      refused += holds ? 0 : 1;
    }
    return refused;
  }

  @Test
  void traysInTheHeatAreTheSumOfTheirChances() {
    assertThat(daysRefused(MATS, TRUE)).isZero();
  }

  @Test
  void traysOnTheTableAreTheSumOfTheirChances() {
    assertThat(daysRefused(HOUSE, TRUE)).isZero();
  }

  @Test
  void traysOutsideAreTheSumOfTheirChances() {
    assertThat(daysRefused(YARD, TRUE)).isZero();
  }

  @Test
  void anEmergenceFivePercentSlowerWouldBeRefused() {
    OneTray slower = new OneTray(6 * 1.05, 9 * 1.05, 12);
    assertThat(daysRefused(MATS, slower)).isPositive();
    assertThat(daysRefused(HOUSE, slower)).isPositive();
  }

  @Test
  void aGrowingOnFivePercentSlowerWouldBeRefused() {
    OneTray slower = new OneTray(6, 9, 12 * 1.05);
    assertThat(daysRefused(MATS, slower)).isZero();
    assertThat(daysRefused(HOUSE, slower)).isPositive();
    assertThat(daysRefused(YARD, slower)).isPositive();
  }
}
