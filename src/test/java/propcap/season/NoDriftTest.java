package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.Scenario;

/** A short look at what {@link NoDriftGuaranteeTest} tries at length. */
class NoDriftTest {
  private static final int SEASONS = 60;

  /** Of the twin, whose forecasts cost less. */
  private static final int OF_TWIN = 120;

  private static final int SPRINGS = 40;

  private final Scenario farm = FarmsWithAPast.oneLot();

  private List<FromADayOn.Case> cases(
      int today, PretendedLog.Counting counting, int seasons, FromADayOn.Drawn drawn) {
    return new FromADayOn(farm, today, counting).cases(seasons, SPRINGS, 400, drawn);
  }

  @Test
  void whatComesInTheEndLiesInTheForecastsFromItsLogAsADrawFromThemWould() {
    for (PretendedLog.Counting counting : PretendedLog.Counting.values()) {
      List<FromADayOn.Case> cases = cases(8, counting, SEASONS, FromADayOn.Drawn.GIVEN_THE_LOG);
      for (int sowing = 0; sowing <= farm.sowings().size(); sowing++) {
        Calibration calibration = Calibration.of(cases, sowing, 401);
        assertThat(calibration.holds()).as(counting + " " + sowing + ": " + calibration).isTrue();
      }
    }
  }

  @Test
  void forecastsWhoseLuckIsDrawnAnewAreRefused() {
    List<FromADayOn.Case> cases =
        cases(8, PretendedLog.Counting.STANDS, OF_TWIN, FromADayOn.Drawn.ANEW);
    assertThat(Calibration.of(cases, farm.sowings().size(), 401).holds()).isFalse();
  }
}
