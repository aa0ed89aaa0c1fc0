package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Test;

/** What is wrong with money and hands is told at its field. */
class MoneyFaultsAtFieldsTest extends Served {
  @Test
  void eachFaultNamesTheFieldThatItIsAbout() {
    head("money.currency", "EUR");
    assertThat(keys()).containsExactlyInAnyOrder("money.tray", "money.pot-tray", "money.plants");
    browser.edit(Map.of("do", "price", "name", "cabbage", "key", "worth", "value", "dear"));
    assertThat(keys())
        .containsExactlyInAnyOrder(
            // Lettuce, which is sown, has no prices.
            "money",
            "money.tray",
            "money.pot-tray",
            "money.plants.cabbage.worth",
            "money.plants.cabbage.late",
            "money.plants.cabbage.short");
    head("labour.minutes.move", "4/plant");
    assertThat(keys()).contains("labour.minutes.move");
  }

  private void head(String key, String value) {
    assertThat(browser.edit(Map.of("do", "head", "key", key, "value", value)).statusCode())
        .isEqualTo(200);
  }

  private List<String> keys() {
    return StreamSupport.stream(browser.state().getAsJsonArray("faults").spliterator(), false)
        .map(JsonElement::getAsJsonObject)
        .map(f -> f.get("key").getAsString())
        .toList();
  }
}
