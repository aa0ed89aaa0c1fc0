package propcap.study.shift;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.BadQuestionException;
import propcap.study.Money;
import propcap.study.RunSettings;
import propcap.study.Stats;
import propcap.study.statistics.Difference;

/**
 * A tray is ready for the beds 15 days after it was sown, keeps for 7 more, hardens for 3 and is
 * out 4 days after its move; the bed is free from day 40 to day 45.
 */
class ShiftingTest {
  private static final RunSettings SETTINGS = new RunSettings(9, 50, null, 2);
  private static final Difference NOTHING = Difference.NONE;

  private final Farms farm = new Farms();
  private final Crops crop = new Crops();

  /** Sown on day 7; each day that a ready plug is held too long loses one plant of twenty. */
  private Scenario held() {
    crop.overheldLossPerDay = .05;
    return sown(Farms.sowing("early-1", 7, 4, 40, 45), Farms.sowing("other", 7, 1, 40, 45));
  }

  private Scenario sown(Sowing... sowings) {
    farm.crops = List.of(crop.make());
    farm.sowings = List.of(sowings);
    return farm.make();
  }

  private static Shifts shift(Scenario scenario, String match, int from, int to, int step)
      throws BadQuestionException, InterruptedException {
    return Shifting.shift(scenario, List.of(match), from, to, step, SETTINGS, share -> {});
  }

  private static Shifts.Point point(Shifts.Group group, int days) {
    return group.points().stream().filter(p -> p.days() == days).findFirst().orElseThrow();
  }

  /**
   * A plug sown on day 7 is held from 29 on and waits for a bed of day 40: sown later it loses
   * less.
   */
  @Test
  void whatIsProposedIsTheGroupOnItsBestDayAndNothingElse() throws Exception {
    Scenario held = held();
    Shifts shifts = shift(held, "early*", -7, 14, 7);
    int best = shifts.groups().get(0).clearlyBest().orElseThrow().days();
    assertThat(best).isPositive();
    List<Sowing> proposed = shifts.proposed().orElseThrow().sowings();
    assertThat(proposed)
        .containsExactly(held.sowings().get(0).shifted(best), held.sowings().get(1));
    assertThat(shift(held, "early*", 0, 0, 1).proposed()).isEmpty();
  }

  @ParameterizedTest
  @CsvSource({"-7, 14, 7", "3, 9, 3", "-6, -2, 2", "-5, 5, 3", "0, 0, 1"})
  void noShiftIsAlwaysTriedAndDiffersByExactlyNothing(int from, int to, int step)
      throws BadQuestionException, InterruptedException {
    crop.dampingOff = new Crop.DampingOff(.3, .5);
    Shifts.Group group = shift(new Money().in(held()), "early*", from, to, step).groups().get(0);
    assertThat(group.points()).extracting(Shifts.Point::days).contains(0, from).isSorted();
    assertThat(group.points()).extracting(Shifts.Point::days).doesNotHaveDuplicates();
    assertThat(point(group, 0).toUnshifted()).isEqualTo(NOTHING);
    assertThat(point(group, 0).allToUnshifted()).isEqualTo(NOTHING);
    assertThat(point(group, 0).marginToUnshifted()).isEqualTo(NOTHING);
  }

  /**
   * Sown on 28 it is ready on 43 and out on 47, late; on 21 ready on 36, which keeps until it is
   * out on 40, with all its plants; earlier ones are held too long.
   */
  @Test
  void theBestDayIsTheOneThatNeitherHoldsNorDelays()
      throws BadQuestionException, InterruptedException {
    Shifts.Group group = shift(held(), "early*", -7, 21, 7).groups().get(0);
    assertThat(group.sowings()).containsExactly("early-1");
    assertThat(group.best()).isEqualTo(14);
    assertThat(group.asGood()).containsExactly(14);
    assertThat(point(group, 14).onTime()).isEqualTo(Stats.always(40, SETTINGS.seasons()));
    assertThat(point(group, 21).onTime().mean()).isZero();
    assertThat(point(group, 21).late().mean()).isEqualTo(40);
    assertThat(point(group, 14).toUnshifted().low()).isPositive();
    assertThat(point(group, -7).toUnshifted().high()).isNegative();
    assertThat(point(group, 14).met().mean()).isEqualTo(1);
  }

  /**
   * Held for D days too long each plant is kept with a chance of .95^D: 11 days and a half on the
   * unshifted day (ready on 21.83 or so, kept to 28.83, out at 8:00 on 40). Mean of 200 trays of
   * ten, in 4.5 binomial standard errors: once in 150,000.
   */
  @Test
  void whatHoldingCostsIsTheTextsFormula() throws BadQuestionException, InterruptedException {
    Shifts.Point unshifted = point(shift(held(), "early*", 0, 0, 1).groups().get(0), 0);
    double kept = Math.pow(.95, 40 + 1 / 3.0 - (7 + 5 + 1 / 3.0 + 10 + 7));
    assertThat(unshifted.onTime().mean() / 40)
        .isBetween(
            kept - 4.5 * Math.sqrt(kept * (1 - kept) / 2000),
            kept + 4.5 * Math.sqrt(kept * (1 - kept) / 2000));
  }

  @Test
  void whatIsNotMovedStaysAsItIs() throws BadQuestionException, InterruptedException {
    // There is room for all, so the other sowing does not feel it.
    Shifts.Group group = shift(held(), "early*", 14, 14, 1).groups().get(0);
    assertThat(point(group, 14).toUnshifted().mean())
        .isEqualTo(point(group, 14).allToUnshifted().mean());
    assertThat(point(group, 14).allOnTime().mean() - point(group, 14).onTime().mean())
        .isCloseTo(
            point(group, 0).allOnTime().mean() - point(group, 0).onTime().mean(), within(1e-9));
  }

  @Test
  void aFlatResponseHasNoWorseDay() throws BadQuestionException, InterruptedException {
    Scenario easy = sown(Farms.sowing("a", 10, 2));
    Shifts.Group group = shift(easy, "a", -6, 6, 3).groups().get(0);
    assertThat(group.asGood()).containsExactly(-6, -3, 0, 3, 6);
    assertThat(group.best()).isZero();
    assertThat(group.points()).extracting(Shifts.Point::toUnshifted).containsOnly(NOTHING);
  }

  /**
   * A late plant at 0.95 and one on time at 0.10: then the best day is the one that is too late.
   */
  @Test
  void whereMoneyIsAskedTheBestDayIsTheOneThatEarnsMost()
      throws BadQuestionException, InterruptedException {
    Money odd = new Money();
    odd.worth = Money.amount("0.10");
    odd.late = Money.amount("0.95");
    Shifts.Group group = shift(odd.in(held()), "early*", 0, 21, 7).groups().get(0);
    assertThat(group.best()).isEqualTo(21);
  }

  @Test
  void groupsAreMovedEachByItself() throws BadQuestionException, InterruptedException {
    Shifts shifts =
        Shifting.shift(held(), List.of("early*", "other"), 0, 14, 7, SETTINGS, share -> {});
    assertThat(shifts.groups()).extracting(Shifts.Group::match).containsExactly("early*", "other");
    Shifts alone = shift(held(), "other", 0, 14, 7);
    assertThat(shifts.groups().get(1)).isEqualTo(alone.groups().get(0));
  }

  @Test
  void threadsChangeNoDigit() throws BadQuestionException, InterruptedException {
    Shifts one =
        Shifting.shift(
            held(), List.of("*"), -7, 14, 7, new RunSettings(9, 50, null, 1), share -> {});
    assertThat(shift(held(), "*", -7, 14, 7).groups()).isEqualTo(one.groups());
  }

  @ParameterizedTest
  @CsvSource({
    "-8, 7, early-1, 8 days earlier, 2027-02-28",
    "0, 53, early-1, 53 days later, 2027-04-30"
  })
  void aShiftOutOfTheSeasonIsRefusedWithTheSowingsId(
      int from, int to, String id, String moved, String date) {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> shift(held(), "*", from, to, to - from))
        .withMessageContaining(id)
        .withMessageContaining(moved)
        .withMessageContaining(date)
        .withMessageContaining("try less, or lengthen the season");
  }

  @ParameterizedTest
  @CsvSource({"14, -14, 7", "-14, 14, 0", "-14, 14, -7"})
  void aLadderOfDaysThatIsEmptyIsRefused(int from, int to, int step) {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> shift(held(), "*", from, to, step))
        .withMessageContaining("; say such as --from -14 --to 14 --step 7");
  }

  @Test
  void aLadderThatNobodyWouldClimbIsRefused() {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> shift(held(), "*", 0, Integer.MAX_VALUE, 1))
        .withMessageContaining("2147483648")
        .withMessageContaining("take a larger step");
  }

  @Test
  void noGroupAtAllIsRefused() {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> Shifting.shift(held(), List.of(), 0, 7, 7, SETTINGS, share -> {}))
        .withMessageContaining("--match \"tomato*\"");
  }

  @Test
  void oneSeasonIsRefused() {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(
            () ->
                Shifting.shift(
                    held(), List.of("*"), 0, 7, 7, new RunSettings(9, 1, null, 2), share -> {}))
        .withMessageContaining("--seasons 2 or more");
  }

  @ParameterizedTest
  @ValueSource(strings = {"late*", ""})
  void aGroupOfNoSowingsIsRefused(String match) {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> shift(held(), match, -7, 7, 7))
        .withMessageContaining("no sowing's id matches '" + match + "'");
  }

  @Test
  void progressEndsAtTheWhole() throws BadQuestionException, InterruptedException {
    ConcurrentLinkedQueue<Double> told = new ConcurrentLinkedQueue<>();
    Shifting.shift(held(), List.of("*", "other"), 0, 7, 7, SETTINGS, told::add);
    assertThat(told).contains(1.0).allMatch(share -> share > 0 && share <= 1);
  }
}
