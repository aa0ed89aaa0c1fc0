package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Step;
import propcap.files.FaultsException;
import propcap.files.ScenarioReader;

/**
 * Thirty trays of ten cells are ready for the table on day 5 and stay on it for 10 days: those that
 * find room on day 5 are out on 19, the next on 29, the third lot on 39. On time is until 30: so
 * each space on the table is worth two trays, up to the fifteenth.
 */
class BottleneckingTest {
  private static final RunSettings SETTINGS = new RunSettings(5, 40, null, 2);

  private final Farms farm = new Farms();
  private final Crops crop = new Crops();

  private Scenario farm(int house) {
    farm.crops = List.of(crop.make());
    farm.mats = 1000;
    farm.house = house;
    farm.yard = 1000;
    farm.sowings =
        IntStream.range(0, 30).mapToObj(i -> Farms.sowing("s" + i, 0, 1, 0, 30)).toList();
    return farm.make();
  }

  private static Bottlenecks ask(Scenario scenario, int steps)
      throws BadQuestionException, InterruptedException {
    return Bottlenecking.bottlenecks(scenario, SETTINGS, steps, share -> {});
  }

  private static Bottlenecks.Worth worth(Bottlenecks answer, String place) {
    return answer.worths().stream()
        .filter(w -> w.place().name().equals(place))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void aTenthOfATableThatJamsIsWorthTheTraysThatItTakes()
      throws BadQuestionException, InterruptedException {
    Bottlenecks answer = ask(farm(10), 0);
    assertThat(answer.onTime().mean()).isEqualTo(200);
    Bottlenecks.Worth table = worth(answer, "House");
    assertThat(table.spaces()).isEqualTo(1);
    assertThat(table.moreOnTime().mean()).isEqualTo(20);
    assertThat(table.lessOnTime().mean()).isEqualTo(-20);
    assertThat(table.plantsPerSpaceMore()).isEqualTo(20);
    assertThat(table.plantsPerSpaceLess()).isEqualTo(-20);
  }

  @Test
  void theOnlyPlaceThatJamsComesFirst() throws BadQuestionException, InterruptedException {
    assertThat(ask(farm(10), 0).worths())
        .extracting(w -> w.place().name())
        .startsWith("House")
        .containsExactlyInAnyOrder("House", "Mats", "Yard");
  }

  /** On ten spaces 10 trays wait for 10 days and 10 for 20; on eleven 11 for 10 and 8 for 20. */
  @Test
  void itIsToldWhichStageThePlaceHoldsUp() throws BadQuestionException, InterruptedException {
    Bottlenecks.Worth table = worth(ask(farm(10), 0), "House");
    for (Step step : Step.values()) {
      double change = table.moreWaiting().get(step.ordinal()).mean();
      assertThat(change).as(step.word()).isEqualTo(step == Step.LEAVE ? 270 - 300.0 : 0);
    }
  }

  @Test
  void endlessTablesAreWorthExactlyNothing() throws BadQuestionException, InterruptedException {
    crop.dampingOff = new Crop.DampingOff(.3, .5);
    crop.germination = new Crop.Germination(.8, 100, .02);
    Bottlenecks answer = ask(farm(10).withEndlessRoom(), 3);
    Difference nothing = new Difference(0, 0, 0, 0, null);
    for (Bottlenecks.Worth worth : answer.worths()) {
      assertThat(worth.moreOnTime()).isEqualTo(nothing);
      assertThat(worth.lessOnTime()).isEqualTo(nothing);
      assertThat(worth.moreWaiting()).containsOnly(nothing);
    }
    assertThat(answer.steps()).isEmpty();
  }

  @Test
  void aPlaceThatNothingWaitsForIsWorthExactlyNothing()
      throws BadQuestionException, InterruptedException {
    crop.dampingOff = new Crop.DampingOff(.3, .5);
    Bottlenecks answer = ask(farm(10), 0);
    for (String idle : List.of("Mats", "Yard")) {
      assertThat(worth(answer, idle).moreOnTime()).isEqualTo(new Difference(0, 0, 0, 0, null));
      assertThat(worth(answer, idle).lessOnTime()).isEqualTo(new Difference(0, 0, 0, 0, null));
    }
    assertThat(worth(answer, "House").moreOnTime().isClear()).isTrue();
  }

  @Test
  void theStairStopsWhereNothingClearlyHelps() throws BadQuestionException, InterruptedException {
    Bottlenecks answer = ask(farm(12), 5);
    assertThat(answer.isExhausted()).isTrue();
    assertThat(answer.steps()).extracting(s -> s.place().size()).containsExactly(12., 13., 14.);
    assertThat(answer.steps()).extracting(s -> s.place().name()).containsOnly("House");
    assertThat(answer.steps()).extracting(Bottlenecks.Step::spacesBought).containsExactly(1, 2, 3);
    assertThat(answer.steps()).extracting(s -> s.gain().mean()).containsExactly(20., 20., 20.);
    assertThat(answer.steps()).extracting(s -> s.gainSoFar().mean()).containsExactly(20., 40., 60.);
  }

  @Test
  void theStairHasAsManyStepsAsAreAskedFor() throws BadQuestionException, InterruptedException {
    assertThat(ask(farm(10), 0).steps()).isEmpty();
    assertThat(ask(farm(10), 2).steps()).hasSize(2);
    assertThat(ask(farm(10), 2).isExhausted()).isFalse();
  }

  /** Nine mats do for nine spaces on the table, but not for ten; and so on, up to fifteen. */
  @Test
  void aPlaceThatWasUselessIsTheNextOneOnceAnotherHasGrown()
      throws BadQuestionException, InterruptedException {
    Scenario wide = farm(9);
    List<Place> places = new ArrayList<>(wide.places());
    places.set(0, places.get(0).withSpaces(9));
    Bottlenecks answer = ask(wide.withPlaces(places), 20);
    assertThat(worth(answer, "Mats").moreOnTime()).isEqualTo(new Difference(0, 0, 0, 0, null));
    List<Bottlenecks.Step> stair = answer.steps();
    assertThat(stair)
        .extracting(s -> s.place().name())
        .hasSize(12)
        .startsWith("House", "Mats", "House", "Mats");
    assertThat(stair.get(11).gainSoFar().mean()).isEqualTo(300 - 180);
  }

  @Test
  void moneyIsToldWhereItIsAsked() throws BadQuestionException, InterruptedException {
    assertThat(worth(ask(farm(10), 0), "House").moreMargin()).isNull();
    Difference margin = worth(ask(new Money().in(farm(10)), 0), "House").moreMargin();
    // Twenty plants that were late are on time: 0.95 for 0.40.
    assertThat(margin).isNotNull();
    assertThat(margin == null ? 0 : margin.mean()).isEqualTo(11);
  }

  @Test
  void stepsBelowNoneAreRefused() {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> ask(farm(10), -1))
        .withMessage("steps must be 0 or more, was -1");
  }

  @Test
  void oneSeasonIsRefused() {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(
            () ->
                Bottlenecking.bottlenecks(farm(10), new RunSettings(5, 1, null, 2), 1, share -> {}))
        .withMessageContaining("--seasons 2 or more");
  }

  /** Three places, a tenth more and a tenth less of each: six intervals hold together. */
  @Test
  void theIntervalsOfMoreAndOfLessHoldTogether() throws BadQuestionException, InterruptedException {
    crop.dampingOff = new Crop.DampingOff(.3, .5);
    Difference more = worth(ask(farm(10), 0), "House").moreOnTime();
    double t = new TDistribution(null, 39).inverseCumulativeProbability(1 - .05 / 12);
    assertThat(more.halfWidth() / more.se()).isCloseTo(t, within(1e-9));
  }

  @Test
  void threadsChangeNoDigit() throws BadQuestionException, InterruptedException {
    crop.dampingOff = new Crop.DampingOff(.3, .5);
    Scenario scenario = farm(10);
    Bottlenecks one =
        Bottlenecking.bottlenecks(scenario, new RunSettings(5, 20, null, 1), 2, share -> {});
    Bottlenecks three =
        Bottlenecking.bottlenecks(scenario, new RunSettings(5, 20, null, 3), 2, share -> {});
    assertThat(three.worths()).isEqualTo(one.worths());
    assertThat(three.steps()).isEqualTo(one.steps());
  }

  @Test
  void progressEndsAtTheWhole() throws BadQuestionException, InterruptedException {
    ConcurrentLinkedQueue<Double> told = new ConcurrentLinkedQueue<>();
    Bottlenecking.bottlenecks(farm(14), SETTINGS, 5, told::add);
    assertThat(told).contains(1.0).allMatch(share -> share > 0 && share <= 1);
  }

  /**
   * The example's table against two forecasts of ten times the seasons, on other luck: within 4
   * standard errors of the difference, which two right answers miss once in 15,000. A tenth less
   * must not pass for a tenth more.
   */
  @Test
  void aWorthIsWhatForecastsAtTenTimesTheSeasonsSay()
      throws BadQuestionException, InterruptedException, FaultsException {
    Scenario example =
        ScenarioReader.read(Path.of("src/test/resources/propcap/example/scenario.yaml"));
    Bottlenecks answer =
        Bottlenecking.bottlenecks(example, new RunSettings(5, 25, null, 2), 0, share -> {});
    Bottlenecks.Worth table = worth(answer, "House 1");
    assertThat(table.spaces()).isEqualTo(33);
    RunSettings tenTimes = new RunSettings(77, 250, null, 2);
    List<Place> larger =
        example.places().stream()
            .map(p -> p.name().equals("House 1") ? p.withSpaces(363) : p)
            .toList();
    Difference forced =
        Paired.difference(
            onTime(Forecasting.forecast(example, tenTimes, share -> {})),
            onTime(Forecasting.forecast(example.withPlaces(larger), tenTimes, share -> {})),
            true,
            .95,
            1);
    assertThat(standardErrorsApart(table.moreOnTime(), forced)).isLessThan(4);
    assertThat(standardErrorsApart(table.lessOnTime(), forced)).isGreaterThan(4);
  }

  private static double standardErrorsApart(Difference one, Difference other) {
    return Math.abs(one.mean() - other.mean()) / Math.hypot(one.se(), other.se());
  }

  private static double[] onTime(Forecast forecast) {
    return forecast.rows().stream().mapToDouble(Forecast.SeasonRow::onTime).toArray();
  }
}
