package propcap.evidence.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import propcap.evidence.stages.TrayEvidence.Count;
import propcap.evidence.stages.TrayEvidence.Leg;
import propcap.evidence.stages.TrayEvidence.Readiness;
import propcap.evidence.stages.TrayEvidence.Ripening;
import propcap.evidence.stages.TrayEvidence.Untold;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Labour;
import propcap.farm.LoggedEvent;
import propcap.farm.LoggedTray;
import propcap.farm.Loss;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.WeatherYear;

/**
 * By hand: March and April of 2026 and 2027, rounds at noon, none on Sundays; a table held at 20 C
 * and one outdoors; the crop's base is 0 C and it holds for 7 days. 1 March 2027 is a Monday.
 */
class TrayReadingTest {
  private static final Place WARM =
      new Place("Warm", PlaceKind.TABLE, 10, new Climate.Constant(20), 0, null);
  private static final Place COLD =
      new Place("Cold", PlaceKind.TABLE, 10, new Climate.Outdoor(), 0, null);
  private final Crops crops = new Crops();
  private @Nullable Place table = WARM;

  /** In 2026 it was 10 C all along, in 2027 14 C, and the nights just as warm. */
  private static TableWarmth warmth(Crop crop) {
    Season season = new Season(LocalDate.of(2027, 3, 1), LocalDate.of(2027, 4, 30));
    List<WeatherYear> years =
        IntStream.of(0, 1).mapToObj(y -> year(season, 2026 + y, 10 + 4 * y)).toList();
    Place mats = new Place("Mats", PlaceKind.HEAT_BENCH, 9, new Climate.Constant(20), 0, null);
    Place yard = new Place("Yard", PlaceKind.HARDENING, 9, new Climate.Outdoor(), 0, null);
    return new TableWarmth(
        new Scenario(
            "hand",
            season,
            0,
            new Rounds(LocalTime.NOON, Set.of(DayOfWeek.SUNDAY)),
            List.of(mats, WARM, COLD, yard),
            Map.of(crop.name(), crop),
            List.of(),
            years,
            null,
            Labour.NOT_LIMITED));
  }

  private static WeatherYear year(Season season, int year, double tempC) {
    double[] temps = new double[season.days()];
    Arrays.fill(temps, tempC);
    return new WeatherYear(year, temps, temps);
  }

  private static LoggedTray.Entry at(LoggedEvent event, String date, @Nullable Integer plants) {
    return new LoggedTray.Entry(event, LocalDate.parse(date), plants);
  }

  /** Read out of a log that ends on 20 April 2027 with a tray that was found ready. */
  private TrayReading.Read readAll(LoggedTray.Entry... entries) {
    Crop crop = crops.make();
    LoggedTray tray = tray(entries);
    LoggedTray last =
        tray(at(LoggedEvent.OFF_HEAT, "2027-04-01", 10), at(LoggedEvent.READY, "2027-04-20", 10));
    return TrayReading.of(tray, crop, warmth(crop), new LogKeeping(List.of(tray, last), 61));
  }

  private LoggedTray tray(LoggedTray.Entry... entries) {
    return new LoggedTray("s", "1", crops.name, Objects.requireNonNull(table), List.of(entries));
  }

  private TrayEvidence read(LoggedTray.Entry... entries) {
    return readAll(entries).evidence();
  }

  private static double noon(String date) {
    return LocalDate.parse(date).toEpochDay() + 0.5;
  }

  private static Leg leg(int plants, int lost, Set<Loss> losses, String from, String to) {
    return new Leg(new Count(plants, lost), losses, noon(from), noon(to));
  }

  @Test
  void beingReadyStandsForTheTimeSinceTheRoundBefore() {
    TrayEvidence tray =
        read(at(LoggedEvent.OFF_HEAT, "2027-03-01", 10), at(LoggedEvent.READY, "2027-03-06", 9));
    // Five whole days of 20 degrees, from noon to noon, and four up to the round before.
    assertThat(tray.ripening()).isEqualTo(new Ripening(80, 100));
    assertThat(tray.readiness()).isEqualTo(Readiness.WRITTEN);
    assertThat(tray.of(Loss.GROWING_ON)).contains(new Count(10, 1));
  }

  @Test
  void afterARestDayTheRoundBeforeIsTwoDaysBack() {
    TrayEvidence tray =
        read(at(LoggedEvent.OFF_HEAT, "2027-03-01", 10), at(LoggedEvent.READY, "2027-03-08", 10));
    assertThat(tray.ripening()).isEqualTo(new Ripening(100, 140));
  }

  @Test
  void theRecordsOwnRowsCountWhereItHasThemAndTheMeanOfItsYearsElsewhere() {
    table = COLD;
    assertThat(upTo("2026-03-02", "2026-03-07")).isCloseTo(50, within(1e-9));
    assertThat(upTo("2027-03-01", "2027-03-06")).isCloseTo(70, within(1e-9));
    assertThat(upTo("2019-03-01", "2019-03-06")).isCloseTo(60, within(1e-9));
  }

  private double upTo(String offHeat, String ready) {
    TrayEvidence tray =
        read(at(LoggedEvent.OFF_HEAT, offHeat, 10), at(LoggedEvent.READY, ready, 9));
    return Objects.requireNonNull(tray.ripening()).upTo();
  }

  @Test
  void aMoveAloneOnlySaysReadyByThen() {
    TrayEvidence tray =
        read(
            at(LoggedEvent.OFF_HEAT, "2027-03-01", 10), at(LoggedEvent.MOVED_OUT, "2027-03-11", 9));
    assertThat(tray.ripening()).isEqualTo(new Ripening(0, 200));
    assertThat(tray.readiness()).isEqualTo(Readiness.MOVED);
  }

  /** They may have waited for room, so that potting on is not being ready. */
  @Test
  void pottingOnOnlySaysReadyByThenToo() {
    crops.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 5, 10, 10, 0);
    TrayEvidence tray =
        read(
            at(LoggedEvent.OFF_HEAT, "2027-03-01", 10), at(LoggedEvent.POTTED_ON, "2027-03-06", 9));
    assertThat(tray.ripening()).isEqualTo(new Ripening(0, 100));
    assertThat(tray.readiness()).isEqualTo(Readiness.MOVED);
  }

  /** On 20 April, after 19 days of 20 degrees, it was not ready yet, for else that were written. */
  @Test
  void aTrayStillOnTheTableWasNotReadyWhenTheLogEnds() {
    TrayEvidence tray = read(at(LoggedEvent.OFF_HEAT, "2027-04-01", 10));
    assertThat(tray.readiness()).isEqualTo(Readiness.NOT_YET);
    assertThat(tray.ripening()).isEqualTo(new Ripening(380, Double.POSITIVE_INFINITY));
  }

  @Test
  void aTrayThrownOutWasNotReadyThen() {
    TrayEvidence tray =
        read(
            at(LoggedEvent.OFF_HEAT, "2027-03-01", 10),
            at(LoggedEvent.THROWN_OUT, "2027-03-06", 3));
    assertThat(tray.readiness()).isEqualTo(Readiness.NOT_YET);
    assertThat(tray.ripening()).isEqualTo(new Ripening(100, Double.POSITIVE_INFINITY));
    assertThat(tray.untold()).containsExactly(Untold.THROWN_OUT_ALIVE);
  }

  @Test
  void aTrayOfAnotherYearThatNeverMovedTellsNothing() {
    TrayEvidence tray = read(at(LoggedEvent.OFF_HEAT, "2026-03-02", 10));
    assertThat(tray.readiness()).isEqualTo(Readiness.NOT_SAID);
    assertThat(tray.ripening()).isNull();
  }

  @Test
  void aTrayThatWasReadyAtOnceHasNoDegreeDaysAndTellsNothing() {
    TrayEvidence tray =
        read(at(LoggedEvent.OFF_HEAT, "2027-03-01", 10), at(LoggedEvent.READY, "2027-03-01", 10));
    assertThat(tray.ripening()).isNull();
    assertThat(tray.readiness()).isEqualTo(Readiness.AT_ONCE);
  }

  @Test
  void lossesGoToTheStageBetweenTheirCounts() {
    crops.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 5, 10, 10, 0);
    TrayEvidence tray =
        read(
            at(LoggedEvent.OFF_HEAT, "2027-03-01", 100),
            at(LoggedEvent.OUTBREAK, "2027-03-04", 80),
            at(LoggedEvent.READY, "2027-03-08", 78),
            at(LoggedEvent.POTTED_ON, "2027-03-10", 75),
            at(LoggedEvent.MOVED_OUT, "2027-03-29", 74),
            at(LoggedEvent.PLANTED_OUT, "2027-04-05", 70));
    assertThat(tray.outbreakSeen()).isTrue();
    assertThat(tray.legs())
        .containsExactly(
            leg(100, 22, Set.of(Loss.GROWING_ON), "2027-03-01", "2027-03-08"),
            leg(78, 3, Set.of(Loss.POTTING), "2027-03-08", "2027-03-10"),
            leg(75, 1, Set.of(), "2027-03-10", "2027-03-29"),
            leg(74, 4, Set.of(Loss.HARDENING), "2027-03-29", "2027-04-05"));
    assertThat(tray.waitedDays()).isEqualTo(2);
  }

  /** Ready between noon on Friday and Saturday; it keeps for 7 days. */
  @Test
  void daysOfBeingHeldAreThoseBeyondWhatAPlugKeeps() {
    TrayCourse tray =
        readAll(
                at(LoggedEvent.OFF_HEAT, "2027-03-01", 100),
                at(LoggedEvent.READY, "2027-03-06", 98),
                at(LoggedEvent.MOVED_OUT, "2027-03-16", 90),
                at(LoggedEvent.PLANTED_OUT, "2027-03-22", 80))
            .course();
    assertThat(tray.readyAfter()).isEqualTo(noon("2027-03-05"));
    assertThat(tray.readyBy()).isEqualTo(noon("2027-03-06"));
    // 10 days, 3 beyond the 7; then 6 more.
    assertThat(tray.legs())
        .extracting(leg -> tray.plugBeyond(leg, noon("2027-03-06"), 7))
        .containsExactly(0.0, 3.0, 6.0);
  }

  /** Pots are ready as the list has it: after 5 days at 20 C, on the 15th; they keep for 4. */
  @Test
  void potsAreHeldFromWhenTheListHasThemReady() {
    crops.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 5, 5, 4, 0);
    TrayCourse tray =
        readAll(
                at(LoggedEvent.OFF_HEAT, "2027-03-01", 100),
                at(LoggedEvent.READY, "2027-03-08", 100),
                at(LoggedEvent.POTTED_ON, "2027-03-10", 100),
                at(LoggedEvent.MOVED_OUT, "2027-03-22", 90),
                at(LoggedEvent.PLANTED_OUT, "2027-03-30", 80))
            .course();
    assertThat(tray.potReadyAt()).isEqualTo(noon("2027-03-15"));
    assertThat(tray.legs())
        .extracting(leg -> tray.potBeyond(leg, 4))
        .containsExactly(0.0, 0.0, 3.0, 8.0);
    assertThat(tray.legs())
        .extracting(leg -> tray.plugBeyond(leg, noon("2027-03-08"), 1))
        .containsExactly(0.0, 1.0, 0.0, 0.0);
  }

  /** Without a count of the ready plugs the table and potting on share what was lost. */
  @Test
  void stagesWithoutACountBetweenThemShareWhatWasLost() {
    assertThat(
            read(
                    at(LoggedEvent.OFF_HEAT, "2027-03-01", 100),
                    at(LoggedEvent.OUTBREAK, "2027-03-03", 90),
                    at(LoggedEvent.READY, "2027-03-08", null),
                    at(LoggedEvent.POTTED_ON, "2027-03-10", 80))
                .legs())
        .containsExactly(
            leg(100, 20, Set.of(Loss.GROWING_ON, Loss.POTTING), "2027-03-01", "2027-03-10"));
  }

  @Test
  void howLongPlugsWereHeldIsNotKnownWithoutOffHeatAndReady() {
    TrayEvidence tray =
        read(
            at(LoggedEvent.MOVED_OUT, "2026-03-16", 90),
            at(LoggedEvent.PLANTED_OUT, "2026-03-23", 80));
    assertThat(tray.legs()).isEmpty();
    assertThat(tray.untold()).containsExactly(Untold.HELD_NOT_KNOWN);
  }

  /** Nor of pots of a crop that the list never has potted on. */
  @Test
  void howLongPotsWereHeldIsNotKnownWhereTheListHasNone() {
    TrayEvidence tray =
        read(
            at(LoggedEvent.OFF_HEAT, "2027-03-01", 100),
            at(LoggedEvent.READY, "2027-03-08", 78),
            at(LoggedEvent.POTTED_ON, "2027-03-10", 75),
            at(LoggedEvent.MOVED_OUT, "2027-03-29", 74));
    assertThat(tray.of(Loss.POTTING)).contains(new Count(78, 3));
    assertThat(tray.legs()).hasSize(2);
    assertThat(tray.untold()).containsExactly(Untold.HELD_NOT_KNOWN);
  }

  @Test
  void aKillingNightThatIsRecordedKeepsTheTrayOutOfTheHardeningLosses() {
    LoggedTray.Entry[] log = {
      at(LoggedEvent.READY, "2026-03-14", null),
      at(LoggedEvent.MOVED_OUT, "2026-03-16", 90),
      at(LoggedEvent.PLANTED_OUT, "2026-03-23", 80)
    };
    assertThat(read(log).of(Loss.HARDENING)).contains(new Count(90, 10));
    crops.hardening = new Crop.Hardening(3, 2, 10, 0.1, 0, 1, 0);
    assertThat(read(log).of(Loss.HARDENING)).isEmpty();
    assertThat(read(log).untold()).containsExactly(Untold.KILLING_NIGHT);
  }

  @Test
  void aTrayThatDiedLostAllAndOneThrownOutAliveTellsNothing() {
    assertThat(
            read(
                    at(LoggedEvent.OFF_HEAT, "2027-03-01", 100),
                    at(LoggedEvent.THROWN_OUT, "2027-03-06", 0))
                .of(Loss.GROWING_ON))
        .contains(new Count(100, 100));
    assertThat(
            read(
                    at(LoggedEvent.OFF_HEAT, "2027-03-01", 100),
                    at(LoggedEvent.THROWN_OUT, "2027-03-06", 60))
                .legs())
        .isEmpty();
  }

  @Test
  void aTrayWithOneLineTellsNothingAndBreaksNothing() {
    for (LoggedEvent event : LoggedEvent.values()) {
      TrayEvidence tray = read(at(event, "2027-03-01", null));
      assertThat(tray.readiness() == Readiness.NOT_YET).isEqualTo(event == LoggedEvent.OFF_HEAT);
      assertThat(tray.legs()).isEmpty();
    }
  }
}
