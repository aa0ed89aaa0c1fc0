package propcap.evidence;

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
import propcap.evidence.TrayEvidence.Count;
import propcap.evidence.TrayEvidence.Ripening;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.LoggedTray;
import propcap.farm.Loss;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.TrayEvent;
import propcap.farm.WeatherYear;

/**
 * By hand: March and April of 2026 and 2027, rounds at noon, none on Sundays; a table held at 20 C
 * and one outdoors; the crop's base is 0 C and it holds for 7 days. 1 March 2027 is a Monday.
 */
class TrayReadingTest {
  private static final Place WARM =
      new Place("Warm", PlaceKind.TABLE, 10, new Climate.Constant(20), 0);
  private static final Place COLD =
      new Place("Cold", PlaceKind.TABLE, 10, new Climate.Outdoor(), 0);
  private final Crops crops = new Crops();
  private @Nullable Place table = WARM;

  /** In 2026 it was 10 C all along, in 2027 14 C, and the nights just as warm. */
  private static TableWarmth warmth(Crop crop) {
    Season season = new Season(LocalDate.of(2027, 3, 1), LocalDate.of(2027, 4, 30));
    List<WeatherYear> years =
        IntStream.of(0, 1).mapToObj(y -> year(season, 2026 + y, 10 + 4 * y)).toList();
    Place mats = new Place("Mats", PlaceKind.HEAT_BENCH, 9, new Climate.Constant(20), 0);
    Place yard = new Place("Yard", PlaceKind.HARDENING, 9, new Climate.Outdoor(), 0);
    return new TableWarmth(
        new Scenario(
            "hand",
            season,
            0,
            new Rounds(LocalTime.NOON, Set.of(DayOfWeek.SUNDAY)),
            List.of(mats, WARM, COLD, yard),
            Map.of(crop.name(), crop),
            List.of(),
            years));
  }

  private static WeatherYear year(Season season, int year, double tempC) {
    double[] temps = new double[season.days()];
    Arrays.fill(temps, tempC);
    return new WeatherYear(year, temps, temps);
  }

  private static LoggedTray.Entry at(TrayEvent event, String date, @Nullable Integer plants) {
    return new LoggedTray.Entry(event, LocalDate.parse(date), plants);
  }

  private TrayEvidence read(LoggedTray.Entry... entries) {
    Crop crop = crops.make();
    LoggedTray tray =
        new LoggedTray("s", "1", crop.name(), Objects.requireNonNull(table), List.of(entries));
    return TrayReading.of(tray, crop, warmth(crop), crop.growingOn().holdsDays());
  }

  @Test
  void beingReadyStandsForTheTimeSinceTheRoundBefore() {
    TrayEvidence tray =
        read(at(TrayEvent.OFF_HEAT, "2027-03-01", 10), at(TrayEvent.READY, "2027-03-06", 9));
    // Five whole days of 20 degrees, from noon to noon, and four up to the round before.
    assertThat(tray.ripening()).isEqualTo(new Ripening(80, 100));
    assertThat(tray.growingOn()).isEqualTo(new Count(10, 1));
  }

  @Test
  void afterARestDayTheRoundBeforeIsTwoDaysBack() {
    TrayEvidence tray =
        read(at(TrayEvent.OFF_HEAT, "2027-03-01", 10), at(TrayEvent.READY, "2027-03-08", 10));
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
    TrayEvidence tray = read(at(TrayEvent.OFF_HEAT, offHeat, 10), at(TrayEvent.READY, ready, 9));
    return Objects.requireNonNull(tray.ripening()).upTo();
  }

  @Test
  void aMoveAloneOnlySaysReadyByThen() {
    TrayEvidence tray =
        read(at(TrayEvent.OFF_HEAT, "2027-03-01", 10), at(TrayEvent.MOVED_OUT, "2027-03-11", 9));
    assertThat(tray.ripening()).isEqualTo(new Ripening(0, 200));
    assertThat(Objects.requireNonNull(tray.ripening()).isTimed()).isFalse();
  }

  @Test
  void pottingOnIsBeingReadyWherePlugsAreAlwaysPottedOn() {
    LoggedTray.Entry[] log = {
      at(TrayEvent.OFF_HEAT, "2027-03-01", 10), at(TrayEvent.POTTED_ON, "2027-03-06", 9)
    };
    assertThat(read(log).ripening()).isEqualTo(new Ripening(0, 100));
    crops.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 5, 10, 10, 0);
    assertThat(read(log).ripening()).isEqualTo(new Ripening(80, 100));
  }

  @Test
  void aTrayThatWasReadyAtOnceHasNoDegreeDaysAndTellsNothing() {
    assertThat(
            read(at(TrayEvent.OFF_HEAT, "2027-03-01", 10), at(TrayEvent.READY, "2027-03-01", 10))
                .ripening())
        .isNull();
  }

  @Test
  void lossesGoToTheStageBetweenTheirCounts() {
    TrayEvidence tray =
        read(
            at(TrayEvent.OFF_HEAT, "2027-03-01", 100),
            at(TrayEvent.OUTBREAK, "2027-03-04", 80),
            at(TrayEvent.READY, "2027-03-08", 78),
            at(TrayEvent.POTTED_ON, "2027-03-10", 75),
            at(TrayEvent.MOVED_OUT, "2027-03-29", 74),
            at(TrayEvent.PLANTED_OUT, "2027-04-05", 70));
    assertThat(tray.growingOn()).isEqualTo(new Count(100, 22));
    assertThat(tray.outbreakSeen()).isTrue();
    assertThat(tray.potting()).isEqualTo(new Count(78, 3));
    assertThat(tray.hardening()).isEqualTo(new Count(74, 4));
    assertThat(tray.waitedDays()).isEqualTo(2);
    // Ready on the 8th, potted two days later; of the pots nobody knows when they were ready.
    assertThat(tray.held())
        .containsExactly(new TrayEvidence.Held(new Count(78, 3), 0, 2, Loss.POTTING));
  }

  @Test
  void whatPlugsLoseBeyondTheDaysThatTheyKeepIsNoLossOfAStage() {
    TrayEvidence tray =
        read(
            at(TrayEvent.OFF_HEAT, "2027-03-01", 100),
            at(TrayEvent.READY, "2027-03-06", 98),
            at(TrayEvent.MOVED_OUT, "2027-03-16", 90),
            at(TrayEvent.PLANTED_OUT, "2027-03-22", 80));
    // 10 days, 3 beyond the 7 that they keep; then 6 more.
    assertThat(tray.growingOn()).isEqualTo(new Count(100, 2));
    assertThat(tray.hardening()).isNull();
    assertThat(tray.held())
        .containsExactly(
            new TrayEvidence.Held(new Count(98, 8), 0, 10, Loss.OVERHELD),
            new TrayEvidence.Held(new Count(90, 10), 10, 16, Loss.HARDENING));
    assertThat(tray.held()).extracting(held -> held.daysBeyond(7)).containsExactly(3.0, 6.0);
  }

  @Test
  void aKillingNightThatIsRecordedKeepsTheTrayOutOfTheHardeningLosses() {
    LoggedTray.Entry[] log = {
      at(TrayEvent.MOVED_OUT, "2026-03-16", 90), at(TrayEvent.PLANTED_OUT, "2026-03-23", 80)
    };
    assertThat(read(log).hardening()).isEqualTo(new Count(90, 10));
    crops.hardening = new Crop.Hardening(3, 2, 10, 0.1, 0, 1, 0);
    assertThat(read(log).hardening()).isNull();
  }

  @Test
  void aTrayThatDiedLostAllAndOneThrownOutAliveTellsNothing() {
    assertThat(
            read(
                    at(TrayEvent.OFF_HEAT, "2027-03-01", 100),
                    at(TrayEvent.THROWN_OUT, "2027-03-06", 0))
                .growingOn())
        .isEqualTo(new Count(100, 100));
    assertThat(
            read(
                    at(TrayEvent.OFF_HEAT, "2027-03-01", 100),
                    at(TrayEvent.THROWN_OUT, "2027-03-06", 60))
                .growingOn())
        .isNull();
  }

  @Test
  void aTrayWithOneLineTellsNothingAndBreaksNothing() {
    for (TrayEvent event : TrayEvent.values()) {
      TrayEvidence tray = read(at(event, "2027-03-01", null));
      assertThat(tray.ripening()).isNull();
      assertThat(tray.growingOn()).isNull();
      assertThat(tray.potting()).isNull();
      assertThat(tray.hardening()).isNull();
    }
  }
}
