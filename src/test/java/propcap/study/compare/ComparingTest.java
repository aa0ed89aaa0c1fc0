package propcap.study.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;
import static propcap.study.Money.amount;

import java.util.List;
import java.util.Objects;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Place;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.Money;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;
import propcap.study.money.Investment;
import propcap.study.statistics.Difference;

class ComparingTest {
  private static final RunSettings SETTINGS = new RunSettings(3, 60, null, 2);

  private final Farms farm = new Farms();
  private final Money money = new Money();

  private static Comparison compare(RunSettings settings, Scenario... scenarios)
      throws BadQuestionException, InterruptedException {
    return Comparing.compare(List.of(scenarios), settings, share -> {});
  }

  private static Difference onTime(Comparison comparison, int alternative) {
    return comparison.total(Comparison.Kind.ON_TIME).differences().get(alternative);
  }

  /** Four trays of which damping-off may take some, on a table with room for so many. */
  private Scenario risky(int house) {
    Crops crop = new Crops();
    crop.dampingOff = new Crop.DampingOff(.3, .5);
    farm.crops = List.of(crop.make());
    farm.house = house;
    farm.sowings = List.of(Farms.sowing("a", 0, 4, 0, 25));
    return farm.make();
  }

  static LongStream seeds() {
    return LongStream.range(0, 100);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void aScenarioDiffersFromItselfByExactlyNothing(long seed)
      throws BadQuestionException, InterruptedException {
    Scenario priced = money.in(RandomScenarios.from(seed));
    Comparison comparison = compare(new RunSettings(seed, 8, null, 1), priced, priced, priced);
    assertThat(comparison.find(Comparison.Kind.MARGIN, "")).isPresent();
    for (Comparison.Outcome outcome : comparison.outcomes()) {
      assertThat(outcome.differences()).hasSize(2).containsOnly(Difference.NONE);
      assertThat(outcome.levels()).containsOnly(outcome.levels().get(0));
    }
  }

  @Test
  void anotherSeedOrAnotherFarmIsNotNothing() throws BadQuestionException, InterruptedException {
    Scenario four = risky(4);
    Scenario one = risky(1);
    assertThat(onTime(compare(SETTINGS, four, one), 0).mean()).isNotZero();
    assertThat(compare(SETTINGS, four, one).outcomes())
        .isNotEqualTo(compare(new RunSettings(4, 60, null, 2), four, one).outcomes());
  }

  @Test
  void threadsChangeNoDigit() throws BadQuestionException, InterruptedException {
    Scenario four = money.in(risky(4));
    Scenario one = money.in(risky(1));
    Comparison single = compare(new RunSettings(3, 60, null, 1), four, one);
    for (int threads : new int[] {2, 7}) {
      Comparison more = compare(new RunSettings(3, 60, null, threads), four, one);
      assertThat(more.outcomes()).isEqualTo(single.outcomes());
      assertThat(more.investments()).isEqualTo(single.investments());
    }
  }

  /** Four trays want a table on day 5; on one space they come out on 19, 29, 39 and 49. */
  @Test
  void whatATableIsWorthIsSeenOnTheSameLuck() throws BadQuestionException, InterruptedException {
    Scenario one = risky(1);
    Scenario two = risky(2);
    Difference gain = onTime(compare(SETTINGS, one, two), 0);
    // By day 25 one tray is out, or two, each of which has the same luck as before.
    Forecast alone = Forecasting.forecast(one, SETTINGS, share -> {});
    Forecast with = Forecasting.forecast(two, SETTINGS, share -> {});
    assertThat(gain.mean()).isCloseTo(with.onTime().mean() - alone.onTime().mean(), within(1e-12));
    assertThat(gain.shareAhead())
        .isEqualTo(
            IntStream.range(0, 60)
                    .filter(i -> with.rows().get(i).onTime() > alone.rows().get(i).onTime())
                    .count()
                / 60.0);
    assertThat(gain.isClear()).isTrue();
    assertThat(gain.narrowing()).isGreaterThan(1);
  }

  @Test
  void waitingAndLossesAreBetterWhereTheyAreLess()
      throws BadQuestionException, InterruptedException {
    Comparison comparison = compare(SETTINGS, risky(1), risky(4));
    Comparison.Outcome waiting = comparison.total(Comparison.Kind.WAITING);
    // 10 + 20 + 30 tray-days for a table, in every season.
    assertThat(waiting.differences().get(0).mean()).isEqualTo(-60);
    assertThat(waiting.differences().get(0).shareAhead()).isEqualTo(1);
    assertThat(comparison.find(Comparison.Kind.WAITING, "leave").orElseThrow().levels())
        .isEqualTo(waiting.levels());
  }

  /** Of one alternative at 97.5 %, or of two at 95 % together: the same interval. */
  @Test
  void moreAlternativesMakeEachIntervalWider() throws BadQuestionException, InterruptedException {
    double one = onTime(compare(SETTINGS, risky(1), risky(2)), 0).halfWidth();
    Comparison both = compare(SETTINGS, risky(1), risky(2), risky(4));
    assertThat(both.confidence()).isEqualTo(.95);
    // Student's t of 59 degrees of freedom: 2.001 at 95 %, 2.300 at 97.5 %; and a little more for
    // what skewness takes the more of, the surer an interval must be.
    assertThat(onTime(both, 0).halfWidth() / one).isBetween(2.300 / 2.001, 1.05 * 2.300 / 2.001);
  }

  @Test
  void moneyIsComparedOnlyWhereAllHaveIt() throws BadQuestionException, InterruptedException {
    Comparison comparison = compare(SETTINGS, risky(1), money.in(risky(2)));
    assertThat(comparison.find(Comparison.Kind.MARGIN, "")).isEmpty();
    assertThat(comparison.investments()).isEmpty();
  }

  @Test
  void oneScenarioIsNothingToCompare() {
    for (List<Scenario> few : List.of(List.<Scenario>of(), List.of(risky(1)))) {
      assertThatExceptionOfType(BadQuestionException.class)
          .isThrownBy(() -> Comparing.compare(few, SETTINGS, share -> {}))
          .withMessage("compare needs two scenarios or more");
    }
  }

  @Test
  void progressEndsAtTheWhole() throws BadQuestionException, InterruptedException {
    ConcurrentLinkedQueue<Double> told = new ConcurrentLinkedQueue<>();
    Comparing.compare(List.of(risky(1), risky(2)), SETTINGS, told::add);
    assertThat(told).contains(1.0).allMatch(share -> share > 0 && share <= 1);
  }

  // Does it pay?

  /**
   * On one mat the second of two trays is sown on day 5 and comes late, on day 24: 4.00 for it
   * instead of 9.50, in every season.
   */
  private Investment secondMat(Place.@Nullable Cost cost)
      throws BadQuestionException, InterruptedException {
    farm.mats = 1;
    farm.sowings = List.of(Farms.sowing("a", 0, 2, 0, 20));
    Scenario one = money.in(farm.make());
    Comparison comparison = compare(SETTINGS, one, Money.withCost(one, "Mats", 2, cost));
    assertThat(comparison.investments()).hasSize(1);
    return comparison.investments().get(0);
  }

  private Investment.Worth worthOfSecondMat(Place.Cost cost)
      throws BadQuestionException, InterruptedException {
    Investment.Worth worth = secondMat(cost).worth();
    assertThat(worth).isNotNull();
    return Objects.requireNonNull(worth);
  }

  /**
   * 10 years at 6 % have the factor 7.36009 (any table of annuities): 30 / 7.36009 + 1 = 5.08 a
   * year, and 7.36009 x (5.50 - 5.07603) = 3.12 over its life. 5.50 - 1 a year has paid 27.94 back
   * after 8 years, and 2.06 of the ninth's 2.66.
   */
  @Test
  void aMatThatEarnsMoreThanItCostsPays() throws BadQuestionException, InterruptedException {
    Investment bought = secondMat(Money.cost("30", 10, "1", "0"));
    assertThat(bought.changes())
        .singleElement()
        .satisfies(
            c -> {
              assertThat(c.place().name()).isEqualTo("Mats");
              assertThat(c.spacesNow()).isEqualTo(1);
              assertThat(c.how()).isEqualTo(Investment.How.MORE);
            });
    assertThat(bought.unpriced()).isEmpty();
    assertThat(bought.gain().mean()).isCloseTo(5.5, within(1e-12));
    Investment.Worth mat = worthOfSecondMat(Money.cost("30", 10, "1", "0"));
    assertThat(mat.buy()).isEqualByComparingTo("30");
    assertThat(mat.yearly()).isEqualTo(amount("5.08"));
    assertThat(mat.netPresentValue()).isCloseTo(3.12, within(.005));
    assertThat(mat.netPresentValueHalfWidth()).isCloseTo(0, within(1e-9));
    assertThat(mat.paybackYears()).isCloseTo(8.77, within(.005));
    assertThat(mat.chancePays()).isEqualTo(1);
  }

  /** 34 / 7.36009 + 1 = 5.62 a year is more than 5.50. */
  @Test
  void aMatThatEarnsLessDoesNot() throws BadQuestionException, InterruptedException {
    Investment.Worth mat = worthOfSecondMat(Money.cost("34", 10, "1", "0"));
    assertThat(mat.yearly()).isEqualTo(amount("5.62"));
    assertThat(mat.netPresentValue()).isCloseTo(-.88, within(.005));
    assertThat(mat.chancePays()).isZero();
  }

  /** In use on days 0 to 4: 5 x 0.50 of the season's margin. */
  @Test
  void runningIsInTheMarginAndNotInTheYearlyCost()
      throws BadQuestionException, InterruptedException {
    Place.Cost cost = Money.cost("30", 10, "1", "0.50");
    assertThat(worthOfSecondMat(cost).yearly()).isEqualTo(amount("5.08"));
    assertThat(secondMat(cost).gain().mean()).isCloseTo(5.5 - 2.5, within(1e-12));
  }

  @Test
  void upkeepAboveTheGainIsNeverPaidBack() throws BadQuestionException, InterruptedException {
    assertThat(worthOfSecondMat(Money.cost("30", 10, "5.60", "0")).paybackYears()).isNull();
  }

  @Test
  void whereNoPlaceIsAddedThereIsNothingToPay() throws BadQuestionException, InterruptedException {
    Scenario now = money.in(risky(2));
    Scenario later = now.withSowings(now.sowings().stream().map(s -> s.shifted(3)).toList());
    Investment none = compare(SETTINGS, now, later).investments().get(0);
    assertThat(none.changes()).isEmpty();
    assertThat(none.worth()).isNull();
  }

  @Test
  void aPlaceWithoutACostIsNotFreeButNotKnown() throws BadQuestionException, InterruptedException {
    Investment mat = secondMat(null);
    assertThat(mat.unpriced()).extracting(a -> a.place().name()).containsExactly("Mats");
    assertThat(mat.worth()).isNull();
    assertThat(mat.gain().mean()).isCloseTo(5.5, within(1e-12));
  }

  @Test
  void aSmallerPlaceIsNotBought() throws BadQuestionException, InterruptedException {
    Comparison comparison = compare(SETTINGS, money.in(risky(4)), money.in(risky(1)));
    assertThat(comparison.investments().get(0).bought()).isEmpty();
    assertThat(comparison.investments().get(0).givenUp()).hasSize(1);
    assertThat(comparison.investments().get(0).worth()).isNull();
  }

  /** One margin, one half-width: that of the outcome. */
  @Test
  void theGainIsTheMarginsDifferenceAmongAllAlternatives()
      throws BadQuestionException, InterruptedException {
    Comparison both = compare(SETTINGS, money.in(risky(1)), money.in(risky(2)), money.in(risky(4)));
    List<Difference> margins = both.total(Comparison.Kind.MARGIN).differences();
    assertThat(both.investments()).extracting(Investment::gain).containsExactlyElementsOf(margins);
  }
}
