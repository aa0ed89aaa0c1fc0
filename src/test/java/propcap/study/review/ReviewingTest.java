package propcap.study.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import propcap.chance.Luck;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.past.EarlierDay;
import propcap.season.House;
import propcap.season.PretendedLog.Counting;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;
import propcap.study.BadQuestionException;
import propcap.study.Lived;
import propcap.study.RunSettings;

/** Looking back upon springs of which it is known how they came. */
class ReviewingTest {
  private static final RunSettings SETTINGS = new RunSettings(7, 100, null, 1);

  /** Three sowings of six trays, uneven in all that the crop list says. */
  static Scenario farm(double takesDays, double rate) {
    Crops crop = new Crops();
    crop.cells = 50;
    crop.germination = new Crop.Germination(rate, 200, 0.02);
    crop.emergence = new Crop.Emergence(0, 30, 40, 20, 4.5, 7);
    crop.takesDays = takesDays;
    crop.spread = 0.08;
    crop.loss = 0.03;
    Farms farm = new Farms();
    farm.crops = List.of(crop.make());
    farm.mats = 20;
    farm.house = 30;
    farm.yard = 30;
    farm.sowings =
        List.of(
            Farms.sowing("a", 1, 6, 0, 30),
            Farms.sowing("b", 5, 6, 0, 36),
            Farms.sowing("c", 20, 6, 0, 58));
    return farm.make();
  }

  private static Review review(Scenario truth, int day, Counting counting) throws Exception {
    Scenario known = Lived.until(Farms.day(day), truth, farm(10, 0.9), 3, 0, counting);
    return Reviewing.review(known, SETTINGS, done -> {});
  }

  @Test
  void whatCameIsWhatTheLogCounted() throws Exception {
    Scenario truth = farm(10, 0.9);
    SeasonOutcome spring =
        House.season(new SeasonPlan(truth), new Luck(truth, 3).reader().season(0));
    Review review = review(truth, 60, Counting.STANDS);
    assertThat(review.notOver()).isEmpty();
    assertThat(review.sowings()).allMatch(Review.Came::isCounted);
    assertThat(review.sowings())
        .extracting(c -> (int) c.came())
        .containsExactly(spring.onTime(0), spring.onTime(1), spring.onTime(2));
  }

  @Test
  void whatNobodyCountedIsTakenAsIsLikelyByTheLog() throws Exception {
    Review.Came counted = review(farm(10, 0.9), 60, Counting.STANDS).sowings().get(0);
    Review.Came likely = review(farm(10, 0.9), 60, Counting.NOTHING).sowings().get(0);
    assertThat(likely.isCounted()).isFalse();
    assertThat(likely.came()).isBetween(0.85 * counted.came(), 1.15 * counted.came());
  }

  @Test
  void aSowingThatIsNotOverIsLeftOut() throws Exception {
    Review review = review(farm(10, 0.9), 33, Counting.STANDS);
    assertThat(review.sowings()).extracting(c -> c.sowing().id()).contains("a").doesNotContain("c");
    assertThat(review.notOver()).extracting(s -> s.id()).contains("c");
    assertThat(review.looks().get(0).sowings()).isEqualTo(review.sowings().size());
  }

  /** Growing on took half as long again, of all numbers: by that figure alone all is late. */
  @Test
  void aNumberThatIsWrongIsToldAsTheMostWrong() throws Exception {
    Review review = review(farm(15, 0.9), 60, Counting.STANDS);
    Review.Figure worst = review.wrong().get(0);
    assertThat(worst.figure()).isEqualTo(LogFigure.ON_TABLE);
    assertThat(worst.seen()).isBetween(1.3 * worst.assumed(), 1.7 * worst.assumed());
    assertThat(worst.off()).isPositive();
    assertThat(worst.trays()).isEqualTo(18);
  }

  /** It takes longer in the heat too, until half of the cells show. */
  @Test
  void seedThatCameUpWorseThanItsTestIsToldAsWrong() throws Exception {
    assertThat(review(farm(10, 0.6), 60, Counting.STANDS).wrong())
        .filteredOn(f -> f.figure() == LogFigure.STAND)
        .singleElement()
        .satisfies(f -> assertThat(f.off()).isNegative())
        .satisfies(f -> assertThat(f.seen()).isBetween(0.5, 0.7));
  }

  /** The twin of both: all numbers as they are. */
  @Test
  void whereAllNumbersAreRightNoneIsTold() throws Exception {
    Review review = review(farm(10, 0.9), 60, Counting.STANDS);
    assertThat(review.figures()).hasSizeGreaterThan(3);
    assertThat(review.wrong()).isEmpty();
    assertThat(review.looks()).hasSize(2).allMatch(Review.ForecastCheck::isAsItShould);
  }

  @Test
  void anEarlierDayKnowsWhatTheLogOfThatDayKnew() {
    for (int seed = 0; seed < 60; seed++) {
      Scenario farm = RandomScenarios.from(seed);
      int days = farm.season().days();
      LocalDate end = farm.season().date(days);
      LocalDate earlier = farm.season().date(1 + 11 * seed % days);
      Scenario whole = Lived.until(end, farm, farm, 1, 0, Counting.STANDS);
      assertThat(Objects.requireNonNull(EarlierDay.of(whole, earlier).soFar()))
          .as("farm " + seed)
          .isEqualTo(Lived.until(earlier, farm, farm, 1, 0, Counting.STANDS).soFar());
    }
  }

  @Test
  void withoutALogThereIsNothingToLookBackUpon() {
    assertThatThrownBy(() -> Reviewing.review(farm(10, 0.9), SETTINGS, done -> {}))
        .isInstanceOf(BadQuestionException.class)
        .hasMessageContaining("--log");
  }
}
