package propcap.farm;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.Labour.Extra;
import propcap.farm.Labour.Minutes;

class LabourTest {
  private static final LocalDate MONDAY = LocalDate.of(2027, 4, 5);

  @Test
  void extraPeopleComeOnTheirFirstDayAndStayThroughTheirLast() {
    Labour labour =
        new Labour(12, Minutes.DEFAULT, List.of(new Extra(MONDAY, MONDAY.plusDays(4), 8)));

    assertThat(labour.hoursOn(MONDAY.minusDays(1))).isEqualTo(12);
    assertThat(labour.hoursOn(MONDAY)).isEqualTo(20);
    assertThat(labour.hoursOn(MONDAY.plusDays(4))).isEqualTo(20);
    assertThat(labour.hoursOn(MONDAY.plusDays(5))).isEqualTo(12);
  }

  @Test
  void hoursOfExtraPeopleAddUp() {
    Extra week = new Extra(MONDAY, MONDAY.plusDays(6), 8);
    Labour labour = new Labour(12, Minutes.DEFAULT, List.of(week, new Extra(MONDAY, MONDAY, 2.5)));

    assertThat(labour.hoursOn(MONDAY)).isEqualTo(22.5);
  }

  @Test
  void otherUsualHoursLeaveTheExtraOnes() {
    Labour labour = new Labour(12, Minutes.DEFAULT, List.of(new Extra(MONDAY, MONDAY, 8)));

    assertThat(labour.withHoursPerDay(10).hoursOn(MONDAY)).isEqualTo(18);
    assertThat(Labour.NOT_LIMITED.isLimited()).isFalse();
    assertThat(Labour.NOT_LIMITED.withHoursPerDay(10).isLimited()).isTrue();
  }

  /**
   * Rutgers NJAES, "Bedding Plants, Greenhouse Costs of Production Budget", table 2, seconds a
   * flat: 35 + 144 + 16 + 14 + 40 = 249 for seedlings of a small grower by hand. Without the 14 s
   * of irrigating: fill and sow 179 s, two moves of 16 and 40 s.
   */
  @Test
  void aPublishedFlatOfSeedlingsTakesItsPublishedTime() {
    Minutes rutgers = new Minutes(179 / 60.0, 28 / 60.0, 0, 0, 0);

    double seconds = 3600 * (rutgers.hours(WorkKind.SOW, 1) + rutgers.hours(WorkKind.MOVE, 2)) + 14;

    assertThat(seconds).isCloseTo(249, within(1e-9));
    assertThat(Minutes.DEFAULT.sow()).isCloseTo(179 / 60.0, within(0.02));
    assertThat(Minutes.DEFAULT.move()).isBetween(16 / 60.0, 40.2 / 60.0);
  }

  /**
   * Fisher, Adegbola and Hodges (Greenhouse Grower; HortScience 53(8), 2018): 282 to 1,360 cuttings
   * a worker-hour; in all 1,316,111 cuttings in 2,109 hours, 624 an hour.
   */
  @Test
  void theDefaultRateOfPottingIsTheSlowEndOfThePublishedOnes() {
    assertThat(Minutes.DEFAULT.hours(WorkKind.POT_ON, 282)).isCloseTo(1, within(0.02));
    assertThat(new Minutes(0, 0, 0, 60 * 2109 / 1_316_111.0, 0).hours(WorkKind.POT_ON, 624))
        .isCloseTo(1, within(0.001));
  }

  /** Watts, "Vegetable Gardening": most men set fewer than 5,000 plants a day, of ten hours. */
  @Test
  void theDefaultRateOfPlantingOutIsWithinMostPeoplesReach() {
    assertThat(Minutes.DEFAULT.hours(WorkKind.PLANT_OUT, 5000)).isGreaterThan(10);
  }

  @Test
  void hoursAndMinutesAreNeverNegative() {
    assertThatThrownBy(() -> new Labour(-1, Minutes.DEFAULT, List.of()))
        .hasMessage("hours a day must be 0 or more, were -1.0");
    assertThatThrownBy(() -> new Minutes(1, 1, 1, -0.1, 1))
        .hasMessage("minutes to pot on must be 0 or more, was -0.1");
    assertThatThrownBy(() -> new Extra(MONDAY, MONDAY.minusDays(1), 8))
        .isInstanceOf(IllegalArgumentException.class);
  }
}
