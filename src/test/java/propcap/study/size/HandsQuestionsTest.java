package propcap.study.size;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.Labour.Minutes;
import propcap.farm.Prices;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.WorkKind;
import propcap.study.BadQuestionException;
import propcap.study.Capacity;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.bottleneck.Bottlenecking;
import propcap.study.bottleneck.Bottlenecks;
import propcap.study.forecast.Forecasting;
import propcap.study.forecast.HandsForecast;
import propcap.study.money.Accounts;

/**
 * Questions of people's hours on a farm on which nothing is left to luck: six trays of ten plants
 * are due to be sown on day 0, an hour each. A tray sown on day s is planted out on s+19, and the
 * bed is for day 21: what is sown by day 2 is on time, three trays for each hour a day.
 */
class HandsQuestionsTest {
  private static final RunSettings SETTINGS = new RunSettings(1, 60, null, 2);

  private final Farms farm = new Farms();

  @BeforeEach
  void sixTrays() {
    farm.sowings.add(
        new Sowing(
            "a",
            "cosmos",
            "lot",
            Farms.day(0),
            6,
            60,
            Farms.day(0),
            Farms.day(21),
            null,
            null,
            null,
            Sowing.Leeway.NOT_SAID));
  }

  private Scenario withHours(double hours) {
    return farm.make().withLabour(new Labour(hours, new Minutes(60, 0, 0, 0, 0), List.of()));
  }

  @Test
  void theForecastTellsTheHours() throws InterruptedException {
    HandsForecast hands = Forecasting.forecast(withHours(2), SETTINGS, share -> {}).hands();
    // Two trays on each of days 0 to 2: four, then two wait.
    assertThat(hands.hours().mean()).isCloseTo(6, within(1e-9));
    assertThat(hands.hoursByWork().get(WorkKind.SOW)).isCloseTo(6, within(1e-9));
    assertThat(hands.hoursByWork().get(WorkKind.MOVE)).isZero();
    assertThat(hands.workingDays()).isEqualTo(60);
    assertThat(hands.hoursPerWorkingDay()).isCloseTo(0.1, within(1e-9));
    assertThat(hands.daysShort().mean()).isEqualTo(2);
    assertThat(hands.shareShort()).isCloseTo(2 / 60.0, within(1e-9));
    assertThat(hands.waitingInAll()).isEqualTo(6);
    assertThat(hands.days().get(1).mean()).isCloseTo(2, within(1e-9));
    assertThat(hands.days().get(1).budget()).isEqualTo(2);
    assertThat(hands.days().get(1).chanceShort()).isEqualTo(1);
    assertThat(hands.days().get(2).chanceShort()).isZero();
    // Day 0 is a Monday.
    assertThat(hands.weeks().get(0).monday()).isEqualTo(Farms.day(0));
    assertThat(hands.weeks().get(0).budget()).isEqualTo(14);
    assertThat(hands.weeks().get(0).hours().p90()).isCloseTo(6, within(1e-9));
    assertThat(hands.weeks().get(0).daysShort()).isEqualTo(2);
    // 60 days are eight weeks and four days.
    assertThat(hands.weeks()).hasSize(9);
    assertThat(hands.weeks().get(8).budget()).isEqualTo(8);
  }

  @Test
  void sizeFindsTheHoursADayThatSuffice() throws Exception {
    Sizing sizing =
        SizingRun.size(
            withHours(1),
            new SizingQuestion(
                List.of(new SizingQuestion.Range(Capacity.HANDS, 0, 4, 1)),
                Goal.parse("met>=90%"),
                "*",
                null),
            new RunSettings(1, 2000, null, 2),
            share -> {});
    assertThat(sizing.found().orElseThrow().spaces()).containsExactly(2);
    assertThat(sizing.candidates().stream().map(Sizing.Candidate::mean))
        .containsExactly(0.0, 0.0, 1.0, 1.0, 1.0);
  }

  @Test
  void hoursCanBeSizedWhereTheScenarioDoesNotLimitThem() throws Exception {
    Scenario counted = withHours(Double.POSITIVE_INFINITY);
    Sizing sizing =
        SizingRun.size(
            counted,
            new SizingQuestion(
                List.of(new SizingQuestion.Range(Capacity.HANDS, 1, 3, 1)),
                Goal.parse("on-time>=60"),
                "*",
                null),
            new RunSettings(1, 100, null, 2),
            share -> {});
    assertThat(sizing.found().orElseThrow().spaces()).containsExactly(2);
    assertThat(new Furnishing(0.3).of(sizing).arithmetic())
        .containsExactly("Hands: 2 hours a day of all people together.");
  }

  @Test
  void handsAreOneMorePlaceAmongThoseThatHoldUpTheSpring() throws Exception {
    Bottlenecks answer = Bottlenecking.bottlenecks(withHours(1), SETTINGS, 3, share -> {});
    Bottlenecks.Worth hands = answer.worths().get(0);
    assertThat(hands.place().isHands()).isTrue();
    assertThat(hands.more().spaces()).isEqualTo(1);
    // Six trays in time in place of three, and no other place helps.
    assertThat(hands.more().onTime().mean()).isEqualTo(30);
    assertThat(hands.more().plantsForEach()).isEqualTo(30);
    assertThat(answer.worths()).hasSize(4);
    assertThat(answer.worths().subList(1, 4))
        .allSatisfy(w -> assertThat(w.more().onTime().mean()).isZero());
    assertThat(answer.steps()).hasSize(1);
    assertThat(answer.steps().get(0).place().name()).isEqualTo("Hands");
  }

  @Test
  void whereHoursAreNotLimitedHandsHoldUpNothing() throws Exception {
    Bottlenecks answer =
        Bottlenecking.bottlenecks(withHours(Double.POSITIVE_INFINITY), SETTINGS, 0, share -> {});
    assertThat(answer.worths()).noneMatch(w -> w.place().isHands());
  }

  @Test
  void hoursWorkedAreChargedWhereAnHourHasAPrice() throws Exception {
    BigDecimal one = BigDecimal.ONE;
    Prices.PlantPrices plants = new Prices.PlantPrices(one, one, one, null);
    for (String hour : List.of("0", "14.50")) {
      Scenario s = withHours(2);
      Prices prices =
          new Prices(
              "EUR",
              Map.of(),
              plants,
              BigDecimal.ZERO,
              BigDecimal.ZERO,
              0,
              true,
              new BigDecimal(hour));
      Scenario priced =
          new Scenario(
              s.name(),
              s.season(),
              s.frostAtC(),
              s.rounds(),
              s.places(),
              s.crops(),
              s.sowings(),
              s.weather(),
              prices,
              s.labour());
      try (Seasons seasons = new Seasons(List.of(priced), new RunSettings(1, 1, null, 1))) {
        List<Double> margins =
            seasons
                .run(
                    List.of(0),
                    0,
                    1,
                    (n, outcome) -> Accounts.margin(priced, prices, outcome).doubleValue(),
                    done -> {})
                .get(0);
        // Sixty plants, and six hours of sowing.
        assertThat(margins.get(0)).isCloseTo(60 - 6 * Double.parseDouble(hour), within(1e-9));
      }
    }
  }

  @Test
  void aPlaceThatDoesNotExistIsStillRefused() {
    assertThatThrownBy(
            () ->
                SizingRun.size(
                    withHours(1),
                    new SizingQuestion(
                        List.of(new SizingQuestion.Range("Feet", 1, 3, 1)),
                        Goal.parse("met>=90%"),
                        "*",
                        null),
                    SETTINGS,
                    share -> {}))
        .isInstanceOf(BadQuestionException.class)
        .hasMessageContaining("no place is named 'Feet'");
  }

  @ParameterizedTest
  @ValueSource(longs = {3, 11, 17, 29, 41, 57, 63, 88, 101, 140})
  void threadsChangeNoDigitOfTheHours(long seed) throws InterruptedException {
    Scenario scenario =
        RandomScenarios.from(seed)
            .withLabour(new Labour(0.2, new Minutes(5, 2, 6, 0.5, 0.5), List.of()));
    HandsForecast one =
        Forecasting.forecast(scenario, new RunSettings(seed, 6, null, 1), share -> {}).hands();
    HandsForecast four =
        Forecasting.forecast(scenario, new RunSettings(seed, 6, null, 4), share -> {}).hands();
    assertThat(four).isEqualTo(one);
  }
}
