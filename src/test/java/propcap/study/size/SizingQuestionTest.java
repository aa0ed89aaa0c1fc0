package propcap.study.size;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatNoException;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.Money;
import propcap.study.RunSettings;

class SizingQuestionTest {
  private static final RunSettings SETTINGS = new RunSettings(1, 30, null, 1);

  private static Scenario farm() {
    Farms farm = new Farms();
    farm.sowings = List.of(Farms.sowing("tomato-1", 0, 1));
    return farm.make();
  }

  private static SizingQuestion question(
      List<String> places, int from, int to, int step, String goal, @Nullable Double indifference)
      throws BadQuestionException {
    return new SizingQuestion(
        places.stream().map(p -> new SizingQuestion.Range(p, from, to, step)).toList(),
        Goal.parse(goal),
        "*",
        indifference);
  }

  private static SizingQuestion ladder(int from, int to, int step) throws BadQuestionException {
    return question(List.of("House"), from, to, step, "met>=90%", null);
  }

  private static void assertRefused(SizingQuestion question, String... says) {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> SizingRun.size(farm(), question, SETTINGS, share -> {}))
        .satisfies(e -> assertThat(e.getMessage()).contains(says));
  }

  @Test
  void aLadderGoesFromItsFirstRungAsFarAsItsLast() throws BadQuestionException {
    assertThat(new SizingQuestion.Range("House", 0, 100, 25).ladder())
        .containsExactly(0, 25, 50, 75, 100);
    assertThat(new SizingQuestion.Range("House", 10, 34, 10).ladder()).containsExactly(10, 20, 30);
    assertThat(new SizingQuestion.Range("House", 7, 7, 1).ladder()).containsExactly(7);
  }

  @ParameterizedTest
  @CsvSource({
    "100, 0, 20, --to 0 is below --from 100",
    "'0', 100, 0, 'the step must be 1 or more, was 0'",
    "'0', 100, -20, 'the step must be 1 or more, was -20'",
    "-20, 100, 20, '--from must be 0 or more, was -20'"
  })
  void aLadderThatIsEmptyOrBelowTheGroundIsRefused(int from, int to, int step, String says)
      throws BadQuestionException {
    assertRefused(ladder(from, to, step), says + "; say such as --from 0 --to 400 --step 20");
  }

  @Test
  void aPlaceLargerThanAnyFarmsIsRefused() throws BadQuestionException {
    assertRefused(
        ladder(0, 100_001, 1000),
        "--to 100001 is more than any farm has; at most 100,000 is tried");
    assertThat(new SizingQuestion.Range("House", 0, 100_000, 1000).ladder()).hasSize(101);
  }

  @Test
  void noneOrThreePlacesAreRefused() throws BadQuestionException {
    for (List<String> places : List.of(List.<String>of(), List.of("House", "Mats", "Yard"))) {
      assertRefused(
          question(places, 5, 10, 5, "met>=90%", null), "one place is sized, or two together");
    }
  }

  @Test
  void anUnknownPlaceIsRefusedWithThoseThatThereAre() throws BadQuestionException {
    assertRefused(
        question(List.of("House 2"), 5, 10, 5, "met>=90%", null),
        "no place is named 'House 2'; there are Mats, House, Yard");
    assertRefused(question(List.of("House", "Shed"), 5, 10, 5, "met>=90%", null), "'Shed'");
  }

  @Test
  void anUnknownSowingIsRefused() throws BadQuestionException {
    assertRefused(
        new SizingQuestion(
            List.of(new SizingQuestion.Range("House", 5, 10, 5)),
            Goal.parse("met>=90%"),
            "kale*",
            null),
        "no sowing's id matches 'kale*'",
        "\"cosmos*\"");
  }

  @Test
  void onePlaceNamedTwiceIsRefused() throws BadQuestionException {
    assertRefused(
        question(List.of("House", "House"), 5, 10, 5, "met>=90%", null), "House is named twice");
  }

  @Test
  void aLadderThatNobodyWouldClimbIsRefused() throws BadQuestionException {
    assertRefused(ladder(0, Integer.MAX_VALUE, 1), "2147483648", "take a larger step");
    assertRefused(
        question(List.of("House", "Mats"), 1, 100, 1, "met>=90%", null),
        "100 and 100 sizes make 10000 pairs",
        "2500");
  }

  @Test
  void oneSeasonIsRefused() {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(
            () ->
                SizingRun.size(
                    farm(), ladder(5, 10, 5), new RunSettings(1, 1, null, 1), share -> {}))
        .withMessageContaining("--seasons 2 or more");
  }

  @Test
  void aMarginWithoutACostOfThePlaceIsRefused() throws BadQuestionException {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(
            () ->
                SizingRun.size(
                    new Money().in(farm()),
                    question(List.of("House"), 5, 10, 5, "margin", null),
                    SETTINGS,
                    share -> {}))
        .withMessageContaining("House has no cost, and a margin is reckoned from it")
        .withMessageContaining("buy: 0");
  }

  @Test
  void aMarginWithoutMoneyIsRefused() throws BadQuestionException {
    assertRefused(
        question(List.of("House"), 5, 10, 5, "margin", null),
        "a goal of margin takes a money: block in the scenario");
    assertThatNoException()
        .isThrownBy(
            () ->
                SizingRun.size(
                    Money.withCost(
                        new Money().in(farm()), "House", 10, Money.cost("0", 1, "0", "0")),
                    question(List.of("House"), 5, 10, 5, "margin", null),
                    SETTINGS,
                    share -> {}));
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, -.02, Double.NaN, Double.POSITIVE_INFINITY})
  void anIndifferenceOfNothingIsRefused(double indifference) throws BadQuestionException {
    assertRefused(
        question(List.of("House"), 5, 10, 5, "met>=90%", indifference),
        "an indifference must be more than 0, was " + indifference);
  }

  /**
   * Half a percent of plants, or two points written as a whole number, would mean something else.
   */
  @Test
  void anIndifferenceThatCannotBeMeantIsRefused() throws BadQuestionException {
    List<String> house = List.of("House");
    assertRefused(
        question(house, 5, 10, 5, "on-time>=300", .005),
        "an indifference of plants or of money is a number of them, 1 or more, such as 400, was"
            + " 0.005");
    assertRefused(
        question(house, 5, 10, 5, "met>=90%", 2.0),
        "an indifference of a share is a share, such as 2%, was 2.0");
  }

  @Test
  void aFarmWithoutAnyTableIsRefusedWithTheSize() throws BadQuestionException {
    assertRefused(
        ladder(0, 0, 5), "no size of House will do", "a season needs a place of kind table");
  }

  @Test
  void anIndifferenceThatIsNotGivenSuitsTheGoal() throws BadQuestionException {
    assertThat(ladder(0, 10, 5).indifference(0)).isEqualTo(.02);
    List<String> house = List.of("House");
    assertThat(question(house, 0, 10, 5, "on-time>=95%", null).indifference(0)).isEqualTo(.005);
    assertThat(question(house, 0, 10, 5, "on-time>=80000", null).indifference(0)).isEqualTo(400);
    assertThat(question(house, 0, 10, 5, "on-time>=10", null).indifference(0)).isEqualTo(1);
    assertThat(question(house, 0, 10, 5, "margin", null).indifference(-50_000)).isEqualTo(250);
    assertThat(question(house, 0, 10, 5, "margin", 10.0).indifference(-50_000)).isEqualTo(10);
  }
}
