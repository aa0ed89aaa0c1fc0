package propcap.study.bottleneck;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.TDistribution;
import org.junit.jupiter.api.Test;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Place;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;
import propcap.study.BadQuestionException;
import propcap.study.Money;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;
import propcap.study.money.Investment;
import propcap.study.size.Sizing;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Strata;

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

  private static Bottlenecks.Trial fewer(Bottlenecks.Worth worth) {
    return Objects.requireNonNull(worth.fewer());
  }

  @Test
  void aTenthOfATableThatJamsIsWorthTheTraysThatItTakes()
      throws BadQuestionException, InterruptedException {
    Bottlenecks answer = ask(farm(10), 0);
    assertThat(answer.onTime().mean()).isEqualTo(200);
    Bottlenecks.Worth table = worth(answer, "House");
    assertThat(table.more().spaces()).isEqualTo(1);
    assertThat(table.more().onTime().mean()).isEqualTo(20);
    assertThat(fewer(table).onTime().mean()).isEqualTo(-20);
    assertThat(answer.safe()).isEqualTo(20);
    assertThat(table.more().safe()).isEqualTo(22);
    assertThat(fewer(table).safe()).isEqualTo(18);
    assertThat(table.more().plantsForEach()).isEqualTo(20);
    assertThat(fewer(table).plantsForEach()).isEqualTo(-20);
  }

  @Test
  void theFirstStepIsWhatIsProposed() throws BadQuestionException, InterruptedException {
    Scenario farm = farm(10);
    assertThat(ask(farm, 2).proposed()).hasValue(Sizing.sized(farm, List.of("House"), List.of(11)));
    assertThat(ask(farm, 0).proposed()).isEmpty();
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
    for (RoomWait step : RoomWait.values()) {
      double change = table.moreWaiting().get(step.ordinal()).mean();
      assertThat(change).as(step.word()).isEqualTo(step == RoomWait.LEAVE ? 270 - 300.0 : 0);
    }
  }

  @Test
  void endlessTablesAreWorthExactlyNothing() throws BadQuestionException, InterruptedException {
    crop.dampingOff = new Crop.DampingOff(.3, .5);
    crop.germination = new Crop.Germination(.8, 100, .02);
    Bottlenecks answer = ask(farm(10).withEndlessRoom(), 3);
    Difference nothing = Difference.NONE;
    for (Bottlenecks.Worth worth : answer.worths()) {
      assertThat(worth.more().onTime()).isEqualTo(nothing);
      assertThat(fewer(worth).onTime()).isEqualTo(nothing);
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
      assertThat(worth(answer, idle).more().onTime()).isEqualTo(Difference.NONE);
      assertThat(fewer(worth(answer, idle)).onTime()).isEqualTo(Difference.NONE);
    }
    assertThat(worth(answer, "House").more().onTime().isClear()).isTrue();
  }

  @Test
  void theStairStopsWhereNothingClearlyHelps() throws BadQuestionException, InterruptedException {
    Bottlenecks answer = ask(farm(12), 5);
    assertThat(answer.isExhausted()).isTrue();
    assertThat(answer.steps()).extracting(s -> s.place().size()).containsExactly(12., 13., 14.);
    assertThat(answer.steps()).extracting(s -> s.place().name()).containsOnly("House");
    assertThat(answer.steps()).extracting(Bottlenecks.Step::spacesAdded).containsExactly(1, 2, 3);
    assertThat(answer.steps())
        .extracting(s -> s.trial().onTime().mean())
        .containsExactly(20., 20., 20.);
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
    assertThat(worth(answer, "Mats").more().onTime()).isEqualTo(Difference.NONE);
    List<Bottlenecks.Step> stair = answer.steps();
    assertThat(stair)
        .extracting(s -> s.place().name())
        .hasSize(12)
        .startsWith("House", "Mats", "House", "Mats");
    assertThat(stair.get(11).gainSoFar().mean()).isEqualTo(300 - 180);
  }

  @Test
  void moneyIsToldWhereItIsAsked() throws BadQuestionException, InterruptedException {
    assertThat(worth(ask(farm(10), 0), "House").more().margin()).isNull();
    Difference margin = worth(ask(new Money().in(farm(10)), 0), "House").more().margin();
    // Twenty plants that were late are on time: 0.95 for 0.40.
    assertThat(margin).isNotNull();
    assertThat(margin == null ? 0 : margin.mean()).isEqualTo(11);
  }

  @Test
  void stepsBelowNoneAreRefused() {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> ask(farm(10), -1))
        .withMessage("steps must be from 0 to 100, was -1");
  }

  @Test
  void oneSeasonIsRefused() {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(
            () ->
                Bottlenecking.bottlenecks(farm(10), new RunSettings(5, 1, null, 2), 1, share -> {}))
        .withMessageContaining("--seasons 2 or more");
  }

  /**
   * Three places: a tenth more and a tenth less of each in plants, and waiting at four steps, are 6
   * + 12 intervals; with money 6 more; and each step after the first picks of three places, each
   * with plants, with margin and with plants so far. A place of one space has no tenth less.
   */
  @Test
  void allIntervalsOfAnAnswerHoldTogether() throws BadQuestionException, InterruptedException {
    crop.dampingOff = new Crop.DampingOff(.3, .5);
    Scenario priced = new Money().in(farm(10));
    assertThat(ask(farm(10), 0).intervals()).isEqualTo(18);
    assertThat(ask(farm(10), 1).intervals()).isEqualTo(18);
    assertThat(ask(farm(10), 3).intervals()).isEqualTo(18 + 2 * 6);
    assertThat(ask(priced, 0).intervals()).isEqualTo(24);
    assertThat(ask(priced, 3).intervals()).isEqualTo(24 + 2 * 9);
    assertThat(ask(farm(1), 0).intervals()).isEqualTo(17);
    Difference more = worth(ask(priced, 3), "House").more().onTime();
    double t = new TDistribution(null, 39).inverseCumulativeProbability(1 - .05 / (2 * 42));
    assertThat(more.halfWidth() / more.se()).isBetween(t - 1e-9, t + 2);
  }

  @Test
  void ofOneSpaceNoneFewerIsTried() throws BadQuestionException, InterruptedException {
    assertThat(worth(ask(farm(1), 0), "House").fewer()).isNull();
  }

  /** Twenty plants more on time are 11.00 more a season; ten years at 6 % have the factor 7.36. */
  @Test
  void whatATenthMoreIsWorthFollowsFromThePlacesCost()
      throws BadQuestionException, InterruptedException {
    assertThat(tenth("0").pays()).isEqualTo(Investment.Pays.YES);
    // 800 for 10 spaces are 80 for one, and 11.00 x 7.36009 = 80.96.
    assertThat(tenth("800").pays()).isEqualTo(Investment.Pays.YES);
    assertThat(tenth("820").pays()).isEqualTo(Investment.Pays.NO);
    assertThat(worth(ask(new Money().in(farm(10)), 0), "House").more().pays())
        .isEqualTo(Investment.Pays.NOT_KNOWN);
    assertThat(worth(ask(farm(10), 0), "House").more().pays()).isEqualTo(Investment.Pays.NOT_KNOWN);
  }

  private Bottlenecks.Trial tenth(String buy) throws BadQuestionException, InterruptedException {
    return worth(ask(priced(buy), 0), "House").more();
  }

  private Scenario priced(String buy) {
    return Money.withCost(new Money().in(farm(10)), "House", 10, Money.cost(buy, 10, "30", "0"));
  }

  @Test
  void whatCostsMoreThanItBringsIsNoStep() throws BadQuestionException, InterruptedException {
    assertThat(ask(priced("820"), 3).steps()).isEmpty();
    assertThat(ask(priced("820"), 3).isExhausted()).isTrue();
    Bottlenecks pays = ask(priced("800"), 3);
    assertThat(pays.steps()).hasSize(3);
    // Each at the price that the place was written with, though it has grown since.
    assertThat(pays.steps())
        .extracting(s -> Objects.requireNonNull(s.trial().worth()).buy())
        .allSatisfy(buy -> assertThat(buy).isEqualByComparingTo("80"));
  }

  /** Late plants at a higher price than those on time: more room only lowers the margin. */
  @Test
  void whatLowersTheMarginNeverPaysEvenWithoutACost()
      throws BadQuestionException, InterruptedException {
    Money money = new Money();
    money.late = Money.amount("2");
    Bottlenecks answer = ask(money.in(farm(10)), 2);
    assertThat(worth(answer, "House").more().onTime().isMore()).isTrue();
    assertThat(worth(answer, "House").more().pays()).isEqualTo(Investment.Pays.NO);
    assertThat(answer.steps()).isEmpty();
  }

  /**
   * With twenty mats ten trays come up for ten spaces on the table, and ten wait ten days and go
   * leggy: an eighth of them is left. With eighteen two of those are sown five days later, wait
   * five days, and two fifths are left.
   */
  @Test
  void fewerSpacesThatHelpAreFound() throws BadQuestionException, InterruptedException {
    farm.stretchLossPerDay = .2;
    Scenario wide = farm(10);
    List<Place> places = new ArrayList<>(wide.places());
    places.set(0, places.get(0).withSpaces(20));
    Bottlenecks answer =
        Bottlenecking.bottlenecks(
            wide.withPlaces(places), new RunSettings(5, 200, null, 2), 0, share -> {});
    Bottlenecks.Trial mats = fewer(worth(answer, "Mats"));
    assertThat(mats.spaces()).isEqualTo(2);
    assertThat(mats.onTime().isMore()).isTrue();
    // 2 x 10 x (0.8^4 - 0.8^9), and a little less, for they are ready some hours before the round.
    assertThat(mats.onTime().mean()).isBetween(4.5, 5.5);
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
    assertThat(table.more().spaces()).isEqualTo(33);
    RunSettings tenTimes = new RunSettings(77, 250, null, 2);
    List<Place> larger =
        example.places().stream()
            .map(p -> p.name().equals("House 1") ? p.withSpaces(363) : p)
            .toList();
    Difference forced =
        Paired.difference(
            onTime(Forecasting.forecast(example, tenTimes, share -> {})),
            onTime(Forecasting.forecast(example.withPlaces(larger), tenTimes, share -> {})),
            Strata.of(example, tenTimes.seed(), tenTimes.seasons()));
    assertThat(standardErrorsApart(table.more().onTime(), forced)).isLessThan(4);
    assertThat(standardErrorsApart(fewer(table).onTime(), forced)).isGreaterThan(4);
  }

  private static double standardErrorsApart(Difference one, Difference other) {
    return Math.abs(one.mean() - other.mean()) / Math.hypot(one.se(), other.se());
  }

  private static double[] onTime(Forecast forecast) {
    return forecast.rows().stream().mapToDouble(Forecast.SeasonRow::onTime).toArray();
  }
}
