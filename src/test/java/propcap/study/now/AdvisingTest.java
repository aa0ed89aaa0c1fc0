package propcap.study.now;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TinyFarm;
import propcap.farm.TrayPast;
import propcap.past.LogWalk;
import propcap.season.PretendedLog;
import propcap.season.PretendedLog.Counting;
import propcap.season.SeasonPlan;
import propcap.study.Money;
import propcap.study.RunSettings;
import propcap.study.now.SeasonNow.Advice;
import propcap.study.now.SeasonNow.Kind;
import propcap.study.statistics.Difference;

/**
 * Advice worked by hand, on farms on which nothing is left to luck. A tray of cosmos sown on the
 * round of day d leaves the mats on that of day d + 5 (4.5 days later), is ready on that of day d +
 * 15, and after three fit days outside goes into its bed on that of day d + 19.
 */
class AdvisingTest {
  /** Of fewer springs than 20 no difference is told. */
  private static final RunSettings SETTINGS = new RunSettings(1, 40, null, 1);

  private final Farms farm = new Farms();

  private static Sowing sowing(String id, String crop, int day, int trays, int needed, int bedBy) {
    return new Sowing(
        id,
        crop,
        "lot",
        Farms.day(day),
        trays,
        needed,
        Farms.START,
        Farms.day(bedBy),
        null,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  private void addKale() {
    Crops kale = new Crops();
    kale.name = "kale";
    kale.takesDays = 40;
    farm.crops.add(kale.make());
  }

  /** The farm on the morning of a day, all having gone as it must. */
  private Scenario on(int today) {
    return on(farm.make(), today);
  }

  private static Scenario on(Scenario scenario, int today) {
    SeasonPlan plan = new SeasonPlan(scenario);
    var log = PretendedLog.of(plan, plan.luck(1).reader().season(0), today, Counting.STANDS);
    return scenario.withSoFar(
        new SoFar(
            Farms.day(today), LogWalk.walk(scenario, Farms.day(today), log).trays(), List.of()));
  }

  /** The farm in which a plant can be bought in. */
  private Scenario withPrices() {
    return Money.in(farm.make(), requireNonNull(TinyFarm.make().prices()));
  }

  /** After a night in which a dog was at all trays of a sowing. */
  private static Scenario afterTheDog(Scenario scenario, String sowing) {
    SoFar soFar = requireNonNull(scenario.soFar());
    List<TrayPast> trays =
        soFar.trays().stream()
            .map(t -> t.sowing().equals(sowing) ? t.thrownOut(scenario.firstDay() - 1) : t)
            .toList();
    return scenario.withSoFar(soFar.withTrays(trays));
  }

  private static SeasonNow ask(Scenario scenario) throws Exception {
    return AskingNow.ask(scenario, SETTINGS, 0.9, true, done -> {});
  }

  @Test
  void aSowingThatIsGoneIsSownAgainInTheFewestTraysUntilTheLastDayThatWillDo() throws Exception {
    farm.sowings.add(sowing("cosmos-1", "cosmos", 0, 3, 20, 40));
    SeasonNow now = ask(afterTheDog(on(9), "cosmos-1"));

    assertThat(now.advice()).hasSize(1);
    Advice again = now.advice().get(0);
    assertThat(again.kind()).isEqualTo(Kind.SOW_AGAIN);
    // 20 plants, 10 a tray.
    assertThat(again.trays()).isEqualTo(2);
    assertThat(requireNonNull(again.chance()).chance()).isEqualTo(1);
    // 21 + 19 is 40, the last day of its bed.
    assertThat(again.lastDay()).hasValue(21);
    assertThat(now.notHelped()).isEmpty();
  }

  @Test
  void whatIsTooLateIsNotSownAgain() throws Exception {
    farm.sowings.add(sowing("cosmos-1", "cosmos", 6, 3, 20, 40));
    SeasonNow now = ask(afterTheDog(on(22), "cosmos-1"));

    assertThat(now.advice()).isEmpty();
    assertThat(now.notHelped()).extracting(Sowing::id).containsExactly("cosmos-1");
  }

  /** The kale stands on all four tables until day 45; the cosmos waits for one from day 13 on. */
  @Test
  void traysThatAreNotNeededAreGivenUpWhereThatLetsOthersThrough() throws Exception {
    addKale();
    farm.house = 4;
    farm.sowings.add(sowing("kale-1", "kale", 0, 4, 10, 59));
    farm.sowings.add(sowing("cosmos-1", "cosmos", 8, 2, 20, 40));
    SeasonNow now = ask(on(15));

    Advice advice =
        now.advice().stream().filter(a -> a.kind() == Kind.GIVE_UP).findFirst().orElseThrow();
    assertThat(advice.what()).containsExactly("3 of kale-1");
    assertThat(advice.helps()).containsExactly("cosmos-1");
    assertThat(advice.gain().mean()).isEqualTo(1);
    assertThat(now.notHelped()).isEmpty();
  }

  /**
   * Of what is in the mats nothing is known to be spare: it stands on no table. Without it the
   * cosmos could be sown at once, and be in its bed on day 22.
   */
  @Test
  void traysInTheHeatAreNotGivenUp() throws Exception {
    addKale();
    farm.mats = 4;
    farm.sowings.add(sowing("kale-1", "kale", 0, 4, 10, 59));
    farm.sowings.add(sowing("cosmos-1", "cosmos", 1, 2, 20, 23));
    SeasonNow now = ask(on(3));

    assertThat(now.advice()).noneMatch(a -> a.kind() == Kind.GIVE_UP);
    // The mats are full: it could not be sown yet.
    assertThat(now.notBegun()).extracting(Sowing::id).containsExactly("cosmos-1");
  }

  /** The twin of the one above it: with all that it needs, nothing of the kale is spare. */
  @Test
  void traysThatAreNeededAreNotGivenUp() throws Exception {
    addKale();
    farm.house = 4;
    farm.sowings.add(sowing("kale-1", "kale", 0, 4, 40, 59));
    farm.sowings.add(sowing("cosmos-1", "cosmos", 8, 2, 20, 40));
    SeasonNow now = ask(on(15));

    assertThat(now.advice()).noneMatch(a -> a.kind() == Kind.GIVE_UP);
  }

  /** Its two trays bring 20 plants of 30 whatever is done; how it is sown is not decided yet. */
  @Test
  void ofASowingThatIsNotBegunNothingWasTriedAndNothingIsSaid() throws Exception {
    farm.sowings.add(sowing("cosmos-1", "cosmos", 20, 2, 30, 50));
    SeasonNow now = ask(on(withPrices(), 9));

    assertThat(now.advice()).isEmpty();
    assertThat(now.notHelped()).isEmpty();
    assertThat(now.notBegun()).extracting(Sowing::id).containsExactly("cosmos-1");
  }

  /** The twin of the one above it: once sown, what it lacks can be bought in. */
  @Test
  void whatLacksInASowingThatIsBegunIsBoughtIn() throws Exception {
    farm.sowings.add(sowing("cosmos-1", "cosmos", 0, 2, 30, 50));
    SeasonNow now = ask(on(withPrices(), 9));

    assertThat(now.advice())
        .filteredOn(a -> a.kind() == Kind.BUY_IN)
        .extracting(Advice::trays)
        .containsExactly(10);
    assertThat(now.notBegun()).isEmpty();
  }

  /** Its bed's last day was day 25. */
  @Test
  void ofASowingWhoseDayIsPastNothingCanBeTried() throws Exception {
    farm.sowings.add(sowing("cosmos-1", "cosmos", 0, 2, 30, 25));
    SeasonNow now = ask(on(withPrices(), 26));

    assertThat(now.advice()).isEmpty();
    assertThat(now.notHelped()).isEmpty();
    assertThat(now.tooLate()).extracting(Sowing::id).containsExactly("cosmos-1");
  }

  /** To sow again would save one sowing and cost two: it comes last. */
  @Test
  void theMostUsefulComesFirst() {
    Difference one = new Difference(1, 0, 0, 1, null, 40);
    Difference lessTwo = new Difference(-2, 0, 0, 0, null, 40);
    Sowing sowing = sowing("cosmos-1", "cosmos", 0, 3, 20, 40);
    Advice harms = advice(Kind.SOW_AGAIN, sowing, one, lessTwo);
    Advice helps = advice(Kind.BUY_IN, sowing, one, Difference.NONE);
    assertThat(harms.use()).isEqualTo(-1);
    assertThat(helps.use()).isEqualTo(1);
    assertThat(Advising.byUse(List.of(harms, helps))).containsExactly(helps, harms);
  }

  private static Advice advice(Kind kind, Sowing sowing, Difference gain, Difference others) {
    return new Advice(
        kind, sowing, List.of(), List.of(), 4, Advice.NO_DAY, null, gain, others, null);
  }
}
