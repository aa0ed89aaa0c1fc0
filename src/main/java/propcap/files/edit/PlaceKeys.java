package propcap.files.edit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.files.edit.YamlText.Step;
import propcap.files.scenario.WrittenScenario;

/** The places in a scenario's text. A scenario that changes another's has its changes alone. */
final class PlaceKeys {
  private static final String CLIMATE = "climate.";

  private PlaceKeys() {}

  /** The way to a place. */
  static List<Step> of(String name) {
    return List.of(Step.to("places"), Step.toItem("name", name));
  }

  /** The text with a key of a place put; an empty value takes it out. */
  static String set(String text, WrittenScenario written, String name, String key, String value) {
    if (!key.startsWith(CLIMATE) || YamlText.has(text, EditedKeys.path(of(name), "climate"))) {
      return YamlText.put(text, EditedKeys.path(of(name), key), value);
    }
    // A scenario that changes a climate writes all of it.
    Map<String, String> climate = new LinkedHashMap<>();
    for (WrittenScenario.Entry place : written.places()) {
      if (place.name().equals(name)) {
        place.cells().forEach((each, cell) -> climate.put(each, cell.text()));
      }
    }
    climate.keySet().removeIf(each -> !each.startsWith(CLIMATE));
    climate.put(key, value);
    Map<String, String> keys = new LinkedHashMap<>();
    climate.forEach((each, word) -> keys.put(each.substring(CLIMATE.length()), word));
    return setClimate(text, name, keys);
  }

  /** The text with a place's climate as a whole. */
  static String setClimate(String text, String name, Map<String, String> climate) {
    Map<String, String> given = EditedKeys.given(climate);
    return YamlText.put(text, EditedKeys.path(of(name), "climate"), given.isEmpty() ? "" : given);
  }

  /** The text with a place more. */
  static String add(String text, Map<String, String> keys) {
    Map<String, String> others = new LinkedHashMap<>(keys);
    String name = others.remove("name");
    return EditedKeys.put(text, of(name == null ? "" : name), others);
  }
}
