package propcap.farm;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** How warm a place is, and how the days of a season are counted. */
class ClimateAndSeasonTest {
  /** Heated to 14 C, lifted 5 C by the sun, vents at 26 C. */
  private final Climate house = new Climate.Heated(14, 5, 26);

  @Test
  void onColdDaysTheHeatingHoldsTheHouse() {
    assertThat(house.meanC(-10)).isEqualTo(14);
    assertThat(house.meanC(9)).isEqualTo(14);
  }

  @Test
  void onMildDaysTheSunLiftsTheHouse() {
    assertThat(house.meanC(9.5)).isEqualTo(14.5);
    assertThat(house.meanC(20)).isEqualTo(25);
  }

  @Test
  void onHotDaysTheVentsHoldTheHouse() {
    assertThat(house.meanC(21)).isEqualTo(26);
    assertThat(house.meanC(35)).isEqualTo(26);
  }

  @Test
  void aChamberKeepsItsTemperatureAndTheYardHasTheWeathers() {
    assertThat(new Climate.Constant(22).meanC(-5)).isEqualTo(22);
    assertThat(new Climate.Outdoor().meanC(-5)).isEqualTo(-5);
  }

  private final Season season = new Season(LocalDate.of(2027, 12, 30), LocalDate.of(2028, 3, 1));

  /** 2 days of December, 31 of January, 29 of February, 1 of March. */
  @Test
  void bothEndsOfASeasonCount() {
    assertThat(season.days()).isEqualTo(63);
    assertThat(new Season(season.start(), season.start()).days()).isEqualTo(1);
  }

  @Test
  void daysAreNumberedFromTheFirst() {
    assertThat(season.dayOf(LocalDate.of(2027, 12, 30))).isZero();
    assertThat(season.dayOf(LocalDate.of(2028, 3, 1))).isEqualTo(62);
    assertThat(season.dayOf(LocalDate.of(2027, 12, 25))).isEqualTo(-5);
    assertThat(season.dayOf(LocalDate.of(2028, 3, 2))).isEqualTo(63);
  }

  @Test
  void aDaysDateIsTheInverseOfADatesDay() {
    for (int day = -10; day < 80; day++) {
      assertThat(season.dayOf(season.date(day))).isEqualTo(day);
    }
  }

  @Test
  void aSeasonContainsItsEndsAndNothingBeyond() {
    assertThat(season.contains(season.start())).isTrue();
    assertThat(season.contains(season.end())).isTrue();
    assertThat(season.contains(season.start().minusDays(1))).isFalse();
    assertThat(season.contains(season.end().plusDays(1))).isFalse();
  }

  @Test
  void roundsRestOnTheirDaysOfTheWeek() {
    Rounds rounds = new Rounds(LocalTime.of(6, 0), Set.of(DayOfWeek.SUNDAY));
    assertThat(rounds.isWorkingDay(LocalDate.of(2027, 3, 6))).isTrue();
    assertThat(rounds.isWorkingDay(LocalDate.of(2027, 3, 7))).isFalse();
    assertThat(rounds.shareOfDay()).isEqualTo(0.25);
  }

  /** Common practice: the first walk comes before the day's other work, rest days or not. */
  @Test
  void unlessToldOtherwiseTheRoundIsAtEightEveryDay() {
    assertThat(Rounds.everyDay().shareOfDay()).isEqualTo(8 / 24.0);
    assertThat(Rounds.everyDay().rest()).isEmpty();
  }
}
