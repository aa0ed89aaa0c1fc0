package propcap.files.edit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.files.edit.YamlText.Step;

/** A key as a grower changes it, such as {@code climate.constant}, and as YAML has it. */
final class EditedKeys {
  private EditedKeys() {}

  static List<Step> keys(String key) {
    return Arrays.stream(key.split("\\.", -1)).map(Step::to).toList();
  }

  static List<Step> path(List<Step> start, String key) {
    List<Step> path = new ArrayList<>(start);
    path.addAll(keys(key));
    return path;
  }

  /** Some keys hold lists of words. */
  static Object value(String key, String text) {
    boolean isList = key.equals("germinate-in") || key.equals("rounds.rest");
    return isList && !text.isBlank()
        ? Arrays.stream(text.split(",", -1)).map(String::strip).filter(w -> !w.isEmpty()).toList()
        : text;
  }

  static Map<String, String> given(Map<String, String> keys) {
    Map<String, String> given = new LinkedHashMap<>(keys);
    given.values().removeIf(String::isBlank);
    return given;
  }

  /** The text with these keys put one by one, so that they end up in a map of their own. */
  static String put(String text, List<Step> above, Map<String, String> keys) {
    String changed = text;
    for (Map.Entry<String, Object> key : nested(given(keys)).entrySet()) {
      changed = YamlText.set(changed, Step.below(above, Step.to(key.getKey())), key.getValue());
    }
    return changed;
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> nested(Map<String, String> keys) {
    Map<String, Object> nested = new LinkedHashMap<>();
    keys.forEach(
        (key, text) -> {
          Map<String, Object> map = nested;
          List<Step> steps = keys(key);
          for (Step step : steps.subList(0, steps.size() - 1)) {
            map = (Map<String, Object>) map.computeIfAbsent(step.key(), k -> new LinkedHashMap<>());
          }
          map.put(steps.get(steps.size() - 1).key(), value(key, text));
        });
    return nested;
  }
}
