package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;

/**
 * What comes in few springs has no plus or minus: it is said in how many springs it was seen. One
 * tray of ten cells, which damping-off takes altogether in one spring of fifty.
 */
class RareOutcomesTest {
  private static final RunSettings SETTINGS = new RunSettings(3, 100, null, 1);

  private static Forecast forecast(double chance) throws InterruptedException {
    Crops crop = new Crops();
    crop.dampingOff = new Crop.DampingOff(chance, 1);
    Farms farm = new Farms();
    farm.crops = List.of(crop.make());
    farm.sowings.add(Farms.sowing("sowing", 0, 1));
    Scenario scenario = farm.make();
    return Forecasting.forecast(scenario, SETTINGS, share -> {});
  }

  private static JsonObject losses(Forecast forecast) {
    return JsonParser.parseString(SummaryJson.of(forecast, "1"))
        .getAsJsonObject()
        .getAsJsonObject("losses");
  }

  @Test
  void whatWasSeenInFewSpringsHasNoLimitsAndNoErrorInTheJson() throws InterruptedException {
    JsonObject lost = losses(forecast(.02)).getAsJsonObject("growing-on");
    int seen = lost.get("unlike").getAsInt();
    assertThat(seen).isBetween(1, 4);
    assertThat(lost.get("mean").getAsDouble()).isCloseTo(seen / 10.0, within(1e-12));
    for (String error : List.of("se", "low", "high")) {
      assertThat(lost.get(error).isJsonNull()).as(error).isTrue();
    }
  }

  @Test
  void whatWasNeverSeenIsNotWithoutError() throws InterruptedException {
    JsonObject lost = losses(forecast(.02)).getAsJsonObject("unplanted");
    assertThat(lost.get("unlike").getAsInt()).isZero();
    assertThat(lost.get("se").isJsonNull()).isTrue();
    assertThat(lost.get("high").isJsonNull()).isTrue();
  }

  @Test
  void whatWasSeenOftenHasItsLimits() throws InterruptedException {
    JsonObject lost = losses(forecast(.3)).getAsJsonObject("growing-on");
    assertThat(lost.get("low").getAsDouble()).isBetween(1.0, lost.get("mean").getAsDouble());
    assertThat(lost.get("high").getAsDouble()).isBetween(lost.get("mean").getAsDouble(), 5.0);
  }
}
