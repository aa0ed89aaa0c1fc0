package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The forecast follows a change by itself, and is made once. */
class OutlookTest extends Served {
  private News news;

  @BeforeEach
  void aPage() throws Exception {
    news = new News(browser);
  }

  @AfterEach
  void close() throws IOException {
    news.close();
  }

  private JsonObject forecast() {
    return JsonParser.parseString(browser.get("/api/forecast").body()).getAsJsonObject();
  }

  @Test
  void aChangeIsForecastWithoutBeingAskedFor() throws Exception {
    assertThat(browser.spaces("House", 8).statusCode()).isEqualTo(200);
    news.await("forecast", told -> true);
    assertThat(forecast().get("version")).isEqualTo(browser.state().get("version"));
  }

  @Test
  void whatIsInTheMakingOrDoneIsNotBegunAnew() throws Exception {
    List<Long> begun = List.of(study(), study());
    assertThat(begun.get(1)).isEqualTo(begun.get(0));
    news.forecast();
    browser.post("/api/outlook", Map.of("file", ""));
    news.await("forecast", told -> true);
    assertThat(browser.get("/api/studies").body()).isEqualTo("[]");
  }

  /** The rule is that of every answer; where another is put beside it nothing was changed. */
  @Test
  void aChangeIsToldByWhatMattersAndPuttingBesideIsNone() throws Exception {
    assertThat(news.forecast().has("change")).isFalse();
    browser.spaces("House", 79);
    JsonObject next = news.forecast();
    assertThat(next.getAsJsonObject("change").get("told").getAsString())
        .isEqualTo("The last change makes no difference to the plants on time.");
    assertThat(next.getAsJsonObject("change").get("weight").getAsString()).isEmpty();
    browser.spaces("House", 8);
    JsonObject worse = news.forecast();
    assertThat(worse.getAsJsonObject("change").get("weight").getAsString()).isEqualTo("down");
    browser.post("/api/what-if", Map.of("title", "What if 1"));
    assertThat(news.forecast().get("change")).isEqualTo(worse.get("change"));
  }

  /** What one sowing has beyond its need makes up for no other. */
  @Test
  void plantsNeededAndAllPlantsAreToldApart() throws Exception {
    JsonObject told = news.forecast();
    assertThat(told.getAsJsonObject("needed").get("value").getAsString()).endsWith(" of 1,840");
    assertThat(told.get("onTime").getAsString())
        .startsWith("With those beyond what a sowing needs, ");
  }

  @Test
  void eachSowingIsToldWithItsStages() throws Exception {
    browser.post("/api/outlook", Map.of("file", ""));
    news.await("forecast", told -> true);
    JsonObject sowing = forecast().getAsJsonArray("sowings").get(0).getAsJsonObject();
    assertThat(sowing.get("id").getAsString()).isEqualTo("cabbage-1");
    assertThat(sowing.get("mark").getAsString()).isIn("●", "◐", "○");
    assertThat(sowing.get("chance").getAsString()).endsWith("%");
    List<JsonObject> bars =
        sowing.getAsJsonArray("bars").asList().stream().map(b -> b.getAsJsonObject()).toList();
    assertThat(bars)
        .extracting(b -> b.get("stage").getAsString())
        .containsSubsequence("in the heat", "on the table", "hardening off");
    // One begins where the one before ends, and none waits longer than it lasts.
    for (int i = 0; i < bars.size(); i++) {
      double from = bars.get(i).get("from").getAsDouble();
      double to = bars.get(i).get("to").getAsDouble();
      assertThat(bars.get(i).get("waits").getAsDouble()).isBetween(0.0, to - from);
      if (i > 0) {
        assertThat(from).isEqualTo(bars.get(i - 1).get("to").getAsDouble());
      }
    }
  }

  /** The number of the last study that there is once the forecast has been asked for. */
  private long study() {
    browser.post("/api/outlook", Map.of("file", ""));
    return JsonParser.parseString(browser.get("/api/studies").body())
        .getAsJsonArray()
        .get(0)
        .getAsJsonObject()
        .get("id")
        .getAsLong();
  }
}
