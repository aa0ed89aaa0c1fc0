package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is wrong with money and hands is told at its field. */
class MoneyFaultsAtFieldsTest {
  @TempDir Path folder;

  @Test
  void eachFaultNamesTheFieldThatItIsAbout() throws Exception {
    try (Server server = Server.start(Farm.in(folder), 0, "test")) {
      Browser browser = new Browser(server.newLink());
      head(browser, "money.currency", "EUR");
      assertThat(keys(browser))
          .containsExactlyInAnyOrder("money.tray", "money.pot-tray", "money.plants");
      browser.edit(Map.of("do", "price", "name", "cabbage", "key", "worth", "value", "dear"));
      assertThat(keys(browser))
          .containsExactlyInAnyOrder(
              // Lettuce, which is sown, has no prices.
              "money",
              "money.tray",
              "money.pot-tray",
              "money.plants.cabbage.worth",
              "money.plants.cabbage.late",
              "money.plants.cabbage.short");
      head(browser, "labour.minutes.move", "4/plant");
      assertThat(keys(browser)).contains("labour.minutes.move");
    }
  }

  private static void head(Browser browser, String key, String value) {
    assertThat(browser.edit(Map.of("do", "head", "key", key, "value", value)).statusCode())
        .isEqualTo(200);
  }

  private static List<String> keys(Browser browser) {
    return StreamSupport.stream(browser.state().getAsJsonArray("faults").spliterator(), false)
        .map(JsonElement::getAsJsonObject)
        .map(f -> f.get("key").getAsString())
        .toList();
  }
}
