package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.chance.Luck;
import propcap.chance.UsualTray;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.LoggedEvent;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.UnlikelyTray;
import propcap.farm.UnlikelyTray.Kind;
import propcap.farm.WeatherYear;
import propcap.files.scenario.ScenarioReader;
import propcap.past.LogWalk;
import propcap.past.Logged;
import propcap.past.WrittenTray;

/**
 * Rows that are missing or wrong, by hand. Day 0 is Monday 1 March 2027, rounds are at 08:00; a
 * tray sown on day s leaves the heat on day s+5 and grows for 10 days.
 */
class UnlikelyTraysTest {
  private final Farms farm = new Farms();
  private final Crops cosmos = new Crops();

  private List<UnlikelyTray> on(int today, Logged... log) {
    farm.crops = List.of(cosmos.make());
    farm.sowings.clear();
    farm.sowings.add(Farms.sowing("a", 0, 2));
    Scenario scenario = farm.make();
    LogWalk.Walked walked = LogWalk.walk(scenario, Farms.day(today), Logged.log(log));
    return UnlikelyTrays.of(
        scenario.withSoFar(
            new SoFar(
                Farms.day(today),
                walked.trays(),
                scenario.weather().get(0).first(today, scenario.season().start()))));
  }

  @Test
  void whatIsAsThePlanHasItIsLikely() {
    assertThat(on(5, Logged.sown("a", 1, 0))).isEmpty();
    assertThat(on(6, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5))).isEmpty();
    assertThat(
            on(
                17,
                Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5).on(LoggedEvent.MOVED_OUT, 15)))
        .isEmpty();
  }

  @Test
  void aTrayThatShouldHaveLeftTheHeatMayLackARow() {
    assertThat(on(9, Logged.sown("a", 1, 0), Logged.sown("a", 2, 4)))
        .containsExactly(new UnlikelyTray("a", "1", Kind.STILL_IN_HEAT, 9, 5));
    assertThat(on(12, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 11)))
        .containsExactly(new UnlikelyTray("a", "1", Kind.LATE_OFF_HEAT, 11, 5));
  }

  @Test
  void aTrayThatHadNoTableIsInTheHeatWithReason() {
    farm.house = 1;
    assertThat(on(9, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5), Logged.sown("a", 2, 0)))
        .isEmpty();
  }

  @Test
  void aTrayThatLeftTheHeatBeforeItCanHaveShownHasAWrongDay() {
    assertThat(on(9, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 2)))
        .containsExactly(new UnlikelyTray("a", "1", Kind.EARLY_OFF_HEAT, 2, 5));
  }

  @Test
  void aTrayThatShouldHaveMovedOnOrCannotHaveYet() {
    assertThat(on(20, growing()))
        .containsExactly(new UnlikelyTray("a", "1", Kind.STILL_ON_TABLE, 15, 10));
    assertThat(on(20, growing().on(LoggedEvent.MOVED_OUT, 19)))
        .containsExactly(new UnlikelyTray("a", "1", Kind.LATE_FROM_TABLE, 14, 10));
    assertThat(on(20, growing().on(LoggedEvent.MOVED_OUT, 10)))
        .containsExactly(new UnlikelyTray("a", "1", Kind.EARLY_FROM_TABLE, 5, 10));
  }

  /** Of seed this slow next to no tray has enough in a week: then it is pulled all the same. */
  private void pullSlowSeedAfterAWeek() {
    cosmos.emergence = new Crop.Emergence(0, 30, 40, 20, 40, 40 * (1 + 1e-12));
    cosmos.pullAfterDays = 7;
    cosmos.failBelow = 0;
  }

  @Test
  void aTrayThatWasPulledIsNoneThatShowedTooSoon() {
    pullSlowSeedAfterAWeek();
    assertThat(on(9, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 7))).isEmpty();
    assertThat(on(9, Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 6)))
        .containsExactly(new UnlikelyTray("a", "1", Kind.EARLY_OFF_HEAT, 6, 7));
  }

  @Test
  void aTrayThatShouldHaveBeenPulledMayLackARow() {
    pullSlowSeedAfterAWeek();
    assertThat(on(7, Logged.sown("a", 1, 0), Logged.sown("a", 2, 4))).isEmpty();
    assertThat(on(12, Logged.sown("a", 1, 0), Logged.sown("a", 2, 6)))
        .containsExactly(new UnlikelyTray("a", "1", Kind.STILL_IN_HEAT, 12, 7));
  }

  /** Outside it grows for 20 days where it is 10 C and for 10 where it is 20 C. */
  @Test
  void whatIsLikelyInOneYearsWeatherIsNotAskedFor() {
    farm.morePlaces.add(new Place("Frame", PlaceKind.TABLE, 10, new Climate.Outdoor(), 0, null));
    assertThat(movedOutOnDay15(20, 10)).isEmpty();
    assertThat(movedOutOnDay15(10, 20)).isEmpty();
    assertThat(movedOutOnDay15(10, 9))
        .extracting(UnlikelyTray::kind)
        .containsExactly(Kind.EARLY_FROM_TABLE);
  }

  /** What was, of which no temperature is known, in a farm of two years. */
  private List<UnlikelyTray> movedOutOnDay15(double... years) {
    farm.crops = List.of(cosmos.make());
    farm.sowings = List.of(Farms.sowing("a", 0, 2));
    List<WeatherYear> weather = new ArrayList<>();
    for (double year : years) {
      double[] all = new double[60];
      Arrays.fill(all, year);
      weather.add(new WeatherYear(2001 + weather.size(), all, all));
    }
    Scenario scenario = FarmsWithAPast.withWeather(farm.make(), weather);
    Logged tray =
        Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5, "Frame").on(LoggedEvent.MOVED_OUT, 15);
    return UnlikelyTrays.of(
        scenario.withSoFar(
            new SoFar(
                Farms.day(17),
                LogWalk.walk(scenario, Farms.day(17), Logged.log(tray)).trays(),
                List.of())));
  }

  private static Logged growing() {
    return Logged.sown("a", 1, 0).on(LoggedEvent.OFF_HEAT, 5);
  }

  /** In whose tray nothing is left has no plants to move, and throws it out. */
  @Test
  void aTrayThatDiedIsThrownOutAndNotAskedFor() {
    cosmos.loss = 1;
    farm.crops = List.of(cosmos.make());
    farm.sowings.clear();
    farm.sowings.add(Farms.sowing("a", 0, 1));
    FromADayOn dying = new FromADayOn(farm.make(), 30, PretendedLog.Counting.NOTHING);
    List<WrittenTray> log = dying.log(dying.plan().luck(1).reader().season(0));
    assertThat(log.get(0).entries())
        .extracting(WrittenTray.Entry::event)
        .containsExactly(LoggedEvent.SOWN, LoggedEvent.OFF_HEAT, LoggedEvent.THROWN_OUT);
    assertThat(UnlikelyTrays.of(dying.from(log))).isEmpty();
  }

  /** One of a hundred thousand trays is as early or as late: in these seasons next to none. */
  @Test
  void ofSeasonsByTheRulesNextToNoTrayIsUnlikely() throws Exception {
    Scenario scenario = ScenarioReader.read(Path.of("scenarios/spring.yaml"));
    int today = scenario.season().dayOf(LocalDate.of(2027, 5, 10));
    FromADayOn farm = new FromADayOn(scenario, today, PretendedLog.Counting.NOTHING);
    int trays = 0;
    List<UnlikelyTray> unlikely = new ArrayList<>();
    Luck.Reader luck = farm.plan().luck(3).reader();
    for (int season = 0; season < 5; season++) {
      List<WrittenTray> log = farm.log(luck.season(season));
      trays += log.size();
      unlikely.addAll(UnlikelyTrays.of(farm.from(log)));
    }
    assertThat(trays).isGreaterThan(3000);
    assertThat(unlikely).hasSizeLessThan(2);
  }

  /** The median is where the chance is a half, whatever is known of the lot. */
  @Test
  void everyOtherTrayHasLeftByItsMedian() {
    cosmos.germination = new Crop.Germination(0.8, 0, 0);
    cosmos.emergence = new Crop.Emergence(5, 30, 40, 20, 5, 7.5);
    UsualTray tray = new UsualTray(cosmos.make());
    assertThat(tray.canLeaveBy(tray.leavesAfter())).isBetween(0.499, 0.501);
    cosmos.germination = new Crop.Germination(0.8, 50, 0.05);
    UsualTray unsure = new UsualTray(cosmos.make());
    assertThat(unsure.canLeaveBy(unsure.leavesAfter())).isBetween(0.45, 0.55);
    assertThat(unsure.canLeaveBy(1.4 * unsure.leavesAfter()))
        .isLessThan(tray.canLeaveBy(1.4 * tray.leavesAfter()));
  }
}
