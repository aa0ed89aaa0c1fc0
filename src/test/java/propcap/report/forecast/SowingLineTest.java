package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import propcap.farm.Farms;
import propcap.report.forecast.SowingLine.Bar;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecasting;

/**
 * Two trays that are sown on the round of one day where one table is: both could leave the heat 5
 * days later; one does, and the other waits for the 10 days on which that grows.
 */
class SowingLineTest {
  @Test
  void aBarIsTheMeanStayOfTheTraysAndHatchedIsHowLongATrayWaits() throws Exception {
    Farms farm = new Farms();
    farm.house = 1;
    farm.sowings.add(Farms.sowing("a", 3, 2));
    SowingLine line =
        SowingLine.of(Forecasting.forecast(farm.make(), new RunSettings(1, 4, null, 1), done -> {}))
            .get(0);
    Bar heat = line.bars().get(0);
    assertThat(heat.stage()).isEqualTo("in the heat");
    assertThat(heat.from()).isCloseTo(0, within(0.5));
    assertThat(heat.to() - heat.from()).isCloseTo(10, within(1e-9));
    assertThat(heat.waits()).isCloseTo(5, within(1e-9));
    Bar table = line.bars().get(1);
    assertThat(table.from()).isEqualTo(heat.to());
    assertThat(table.to() - table.from()).isCloseTo(10, within(1e-9));
    assertThat(table.waits()).isZero();
  }
}
