package propcap.study.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.chance.HandLuck;
import propcap.farm.Climate;
import propcap.farm.Farms;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.TrayMove;
import propcap.season.House;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;
import propcap.study.RunSettings;
import propcap.study.Stats;

/**
 * Forecasts of seasons made by hand: in each, one tray of ten cells is sown on a day of choice. It
 * leaves the mats 5 days later, the house 15 days later, and is planted out 19 days later, if the
 * season, days 0 to 59, lasts so long.
 */
class SummaryTest {
  private static final RunSettings SETTINGS = new RunSettings(1, 1, null, 1);

  private final Farms farm = new Farms();

  /** The forecast of seasons in which the tray is sown on these days. */
  private Forecast sownOn(int... days) {
    List<SeasonOutcome> seasons = Arrays.stream(days).mapToObj(this::season).toList();
    return summary(scenario(days[0]), seasons);
  }

  private static Forecast summary(Scenario scenario, List<SeasonOutcome> seasons) {
    Summary summary = new Summary(scenario, SETTINGS);
    seasons.forEach(summary::add);
    seasons.forEach(summary::addUnhindered);
    return summary.forecast();
  }

  private SeasonOutcome season(int sowDay) {
    Scenario scenario = scenario(sowDay);
    return House.season(new SeasonPlan(scenario), new HandLuck(scenario).make());
  }

  private Scenario scenario(int sowDay) {
    farm.sowings = new ArrayList<>(List.of(Farms.sowing("sowing", sowDay, 1, 0, 40)));
    return farm.make();
  }

  private Forecast.SowingForecast onlySowing(int... days) {
    return sownOn(days).sowings().get(0);
  }

  @Test
  void theNeedIsReadyByTheNinthBestOfTenSprings() {
    // Out on 19, 20, ... 28, in some order.
    assertThat(onlySowing(3, 1, 9, 0, 2, 8, 7, 4, 6, 5).readyBy()).isEqualTo(Farms.day(27));
  }

  @Test
  void theNeedIsReadyFromTheBestOfTenSprings() {
    assertThat(onlySowing(3, 1, 9, 0, 2, 8, 7, 4, 6, 5).readyFrom()).isEqualTo(Farms.day(19));
    assertThat(onlySowing(50, 50, 50, 50, 50, 50, 50, 50, 50, 50).readyFrom()).isNull();
  }

  @Test
  void aNeedNeverMetInOneSpringOfTenIsReadyByTheLastOfTheOthers() {
    assertThat(onlySowing(50, 1, 8, 0, 2, 3, 7, 4, 6, 5).readyBy()).isEqualTo(Farms.day(27));
  }

  @Test
  void aNeedNeverMetInTwoSpringsOfTenHasNoDate() {
    assertThat(onlySowing(50, 50, 8, 0, 2, 3, 7, 4, 6, 5).readyBy()).isNull();
  }

  @Test
  void plantsOutAfterTheirDateStillMeetTheNeedButNotOnTime() {
    // The last day on time is 40; sown on 30, the plants are out on 49.
    Forecast.SowingForecast sowing = onlySowing(0, 30);
    assertThat(sowing.chanceMet()).isEqualTo(0.5);
    assertThat(sowing.onTime().mean()).isEqualTo(5);
    assertThat(sowing.late().mean()).isEqualTo(5);
    assertThat(sowing.readyBy()).isEqualTo(Farms.day(49));
  }

  @Test
  void mediansAreOfTheSpringsThatPlantAnythingOut() {
    // Out on 19, 21, 29 and never.
    Forecast.SowingForecast sowing = onlySowing(10, 50, 0, 2);
    assertThat(sowing.firstOut()).isEqualTo(Farms.day(21));
    assertThat(sowing.medianOut()).isEqualTo(Farms.day(21));
    assertThat(sowing.lastOut()).isEqualTo(Farms.day(21));
  }

  @Test
  void ofTwoMiddleSpringsTheEarlierIsTheMedian() {
    assertThat(onlySowing(0, 2, 4, 6).firstOut()).isEqualTo(Farms.day(21));
  }

  @Test
  void nothingEverPlantedOutHasNoDates() {
    Forecast.SowingForecast sowing = onlySowing(50, 51);
    assertThat(Stream.of(sowing.firstOut(), sowing.medianOut(), sowing.lastOut()))
        .containsOnlyNulls();
    assertThat(sowing.milestones()).doesNotContainKey(TrayMove.PLANTED_OUT);
  }

  @Test
  void milestonesAreMeansOfDaysOverTheTraysThatMakeTheMove() {
    Forecast.SowingForecast sowing = onlySowing(0, 4, 50);
    assertThat(sowing.milestones().get(TrayMove.SOWN)).isEqualTo(new Forecast.Span(18, 18, 18, 1));
    assertThat(sowing.milestones().get(TrayMove.OFF_HEAT))
        .isEqualTo(new Forecast.Span(23, 23, 23, 1));
    // Sown on 50 it is still inside when the season ends.
    Forecast.Span out = sowing.milestones().get(TrayMove.PLANTED_OUT);
    assertThat(out).isEqualTo(new Forecast.Span(21, 21, 21, 2 / 3.0));
    assertThat(sowing.milestones()).doesNotContainKey(TrayMove.POTTED_ON);
  }

  /**
   * The binomial limits with half of the probability of what was seen, computed apart from this
   * code by bisection of exact tails.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 1, 0.00000000, 0.95000000",
    "1, 0, 0.05000000, 1.00000000",
    "1, 1, 0.02500000, 0.97500000",
    "1, 10, 0.00454684, 0.37342375",
    "10, 1, 0.62657625, 0.99545316",
    "10, 90, 0.05192290, 0.17099295",
    "25, 75, 0.17256505, 0.34172853",
    "0, 100, 0.00000000, 0.02951305"
  })
  void theChanceToMeetTheNeedHasItsLimits(int met, int missed, double low, double high) {
    int[] days = new int[met + missed];
    Arrays.fill(days, met, days.length, 50);
    Forecast.SowingForecast sowing = onlySowing(days);
    assertThat(sowing.chanceMet()).isEqualTo(met / (double) days.length);
    assertThat(sowing.chanceMetLow()).isCloseTo(low, within(1e-5));
    assertThat(sowing.chanceMetHigh()).isCloseTo(high, within(1e-5));
  }

  @Test
  void useIsTakenDayByDayOverTheSeasons() {
    farm.mats = 1;
    Forecast forecast = sownOn(0, 3);
    Forecast.Occupancy mats = forecast.places().get(0);
    // In the mats on 0 to 4 in one season, on 3 to 7 in the other, and full then.
    assertThat(mats.days()).extracting(Forecast.DayUse::mean).startsWith(.5, .5, .5, 1., 1., .5);
    assertThat(mats.days().get(3).chanceFull()).isEqualTo(1);
    assertThat(mats.days().get(5).chanceFull()).isEqualTo(.5);
    assertThat(mats.days().get(8).mean()).isZero();
    assertThat(mats.meanUse()).isCloseTo(5 / 60.0, within(1e-12));
    assertThat(mats.peak().mean()).isEqualTo(1);
    assertThat(mats.fullDays().mean()).isEqualTo(5);
  }

  @Test
  void severalTablesAreOneKindWhoseDemandIsTheirs() {
    farm.house = 0;
    farm.morePlaces.add(table("Tunnel", 1));
    farm.morePlaces.add(table("Cold house", 2));
    Forecast forecast = sownOn(0);
    assertThat(forecast.kinds())
        .extracting(Forecast.Occupancy::name)
        .containsExactly("Mats", "all tables", "Yard");
    Forecast.Occupancy tables = forecast.kinds().get(1);
    assertThat(tables.spaces()).isEqualTo(3);
    assertThat(tables.days().get(5).demand()).isEqualTo(1);
    assertThat(tables.days().get(4).demand()).isZero();
    // One table's own demand is not known where another may take its trays.
    assertThat(forecast.places().get(2).days().get(5).mean()).isEqualTo(1);
    assertThat(forecast.places().get(2).days().get(5).demand()).isZero();
    // Closed, so never full.
    assertThat(forecast.places().get(1).fullDays().mean()).isZero();
  }

  private static Place table(String name, int spaces) {
    return new Place(name, PlaceKind.TABLE, spaces, new Climate.Constant(20), 0, null);
  }

  @Test
  void waitsAreToldByWhatWasWaitedForAndByMonth() {
    farm.mats = 1;
    farm.morePlaces.add(table("Tunnel", 1));
    farm.sowings = List.of(Farms.sowing("a", 29, 1), Farms.sowing("b", 29, 1));
    Scenario scenario = farm.make();
    SeasonOutcome season = House.season(new SeasonPlan(scenario), new HandLuck(scenario).make());
    Forecast forecast = summary(scenario, List.of(season));
    // b waits for the mats on 29 and 30, which end March, and on 31 to 33: a leaves on 34.
    assertThat(forecast.waits())
        .containsExactly(
            new Forecast.Wait(RoomWait.SOW, "Mats", YearMonth.of(2027, 3), 2),
            new Forecast.Wait(RoomWait.SOW, "Mats", YearMonth.of(2027, 4), 3));
    assertThat(forecast.waiting()).containsEntry(RoomWait.SOW, Stats.always(5, 1));
    assertThat(forecast.sowings().get(1).waiting()).containsEntry(RoomWait.SOW, 5.0);
    assertThat(forecast.rows().get(0).waiting()).containsEntry(RoomWait.SOW, 5L);
    assertThat(forecast.rows().get(0).sowingsMet()).isEqualTo(2);
  }
}
