package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.Loss;
import propcap.report.Forecasts;
import propcap.study.forecast.Forecast;

class SummaryJsonTest {
  private final Forecast spring = Forecasts.spring();
  private final JsonObject summary = parse(spring);

  private static JsonObject parse(Forecast forecast) {
    return JsonParser.parseString(SummaryJson.of(forecast, "1.2")).getAsJsonObject();
  }

  private static void isStat(JsonElement stat) {
    assertThat(stat.getAsJsonObject().keySet())
        .containsExactly("mean", "se", "low", "high", "unlike", "p10", "p50", "p90");
  }

  @Test
  void theSummaryHasExactlyTheKeysThatOthersRead() {
    assertThat(summary.keySet())
        .containsExactlyInAnyOrder(
            "scenario",
            "version",
            "seasons",
            "seed",
            "trays",
            "release",
            "total",
            "sowings",
            "losses",
            "places",
            "waiting",
            "hands");
    JsonObject total = summary.getAsJsonObject("total");
    assertThat(total.keySet()).containsExactly("onTime", "late", "cellsSown");
    total.asMap().values().forEach(SummaryJsonTest::isStat);
    JsonObject waiting = summary.getAsJsonObject("waiting");
    assertThat(waiting.keySet()).containsExactly("sow", "leave", "pot", "harden");
    waiting.asMap().values().forEach(SummaryJsonTest::isStat);
  }

  @Test
  void everySowingIsThereInTheOrderOfThePlan() {
    JsonArray sowings = summary.getAsJsonArray("sowings");
    assertThat(sowings).hasSize(42);
    for (int s = 0; s < sowings.size(); s++) {
      JsonObject sowing = sowings.get(s).getAsJsonObject();
      assertThat(sowing.keySet())
          .containsExactly(
              "id",
              "crop",
              "trays",
              "needed",
              "onTime",
              "late",
              "chanceMet",
              "chanceMetLow",
              "chanceMetHigh",
              "firstOut",
              "medianOut",
              "lastOut");
      isStat(sowing.get("onTime"));
      isStat(sowing.get("late"));
      assertThat(sowing.get("id").getAsString()).isEqualTo(spring.sowings().get(s).sowing().id());
    }
  }

  @Test
  void everyCauseOfLossAndEveryPlaceIsThere() {
    JsonObject losses = summary.getAsJsonObject("losses");
    assertThat(losses.keySet())
        .containsExactly(List.of(Loss.values()).stream().map(Loss::word).toArray(String[]::new));
    losses.asMap().values().forEach(SummaryJsonTest::isStat);
    JsonArray places = summary.getAsJsonArray("places");
    assertThat(places).hasSize(6);
    for (JsonElement element : places) {
      JsonObject place = element.getAsJsonObject();
      assertThat(place.keySet())
          .containsExactly("name", "kind", "spaces", "meanUse", "peak", "fullDays");
      isStat(place.get("peak"));
      isStat(place.get("fullDays"));
    }
    assertThat(places.get(1).getAsJsonObject().get("kind").getAsString()).isEqualTo("heat-bench");
  }

  @Test
  void numbersKeepEveryDigit() {
    double mean =
        summary.getAsJsonObject("total").getAsJsonObject("onTime").get("mean").getAsDouble();
    assertThat(mean).isEqualTo(spring.onTime().mean());
  }

  @Test
  void datesAreIsoAndNullWhereThereIsNone() {
    JsonObject release = summary.getAsJsonObject("release");
    assertThat(release.get("onion").getAsString()).isEqualTo("2027-03-20");
    assertThat(release.get("squash").isJsonNull()).isTrue();
    JsonObject never = parse(Forecasts.bare()).getAsJsonArray("sowings").get(0).getAsJsonObject();
    assertThat(never.get("firstOut").isJsonNull()).isTrue();
  }

  @Test
  void nothingSaysHowTheWorkWasShared() {
    assertThat(summary.toString()).doesNotContain("thread").doesNotContain("precision");
  }

  @Test
  void aNumberThatIsNotFiniteIsRefused() {
    for (double bad : new double[] {Double.NaN, Double.POSITIVE_INFINITY}) {
      Forecast broken = Forecasts.withOnTime(spring, bad);
      assertThatIllegalArgumentException().isThrownBy(() -> SummaryJson.of(broken, "1.2"));
    }
  }
}
