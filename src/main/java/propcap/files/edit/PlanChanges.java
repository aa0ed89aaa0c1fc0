package propcap.files.edit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.files.edit.YamlText.Step;
import propcap.files.scenario.SowingPlan;

/**
 * The changes that an extending scenario makes to another's sowing plan, in its text: an item for
 * each sowing that is changed, added or removed, and no copy of the plan.
 */
final class PlanChanges {
  private static final Step SOWINGS = Step.to("sowings");
  private static final List<String> TO_FIND = List.of("sow", "trays");

  private PlanChanges() {}

  /** Whether a change can be of this sowing alone: there is an id, and no star in it. */
  static boolean isPlain(String id) {
    return !id.isBlank() && !id.contains("*");
  }

  /** The text with columns of a sowing changed; where it was added here, in its own item. */
  static String set(String text, String id, Map<String, String> columns) {
    List<Step> added = List.of(SOWINGS, Step.toItem("add", id));
    boolean isAdded = YamlText.has(text, added);
    List<Step> item = isAdded ? added : List.of(SOWINGS, Step.toItem("match", id));
    String changed = text;
    for (Map.Entry<String, String> column : columns.entrySet()) {
      if (!column.getKey().equals("id")) {
        changed =
            YamlText.set(changed, Step.below(item, Step.to(column.getKey())), column.getValue());
      }
    }
    // Last, for the item is found by it.
    return isAdded && columns.containsKey("id")
        ? YamlText.set(changed, Step.below(item, Step.to("add")), columns.getOrDefault("id", ""))
        : changed;
  }

  /**
   * The text with a sowing more. A date or trays that are empty are to be found; what else is empty
   * is left out.
   *
   * @throws IllegalArgumentException where the text adds one of that id already
   */
  static String add(String text, Map<String, String> columns) {
    String id = columns.getOrDefault("id", "");
    List<Step> item = List.of(SOWINGS, Step.toItem("add", id));
    if (YamlText.has(text, item)) {
      throw new IllegalArgumentException("there is a sowing " + id + " already");
    }
    Map<String, String> row = new LinkedHashMap<>();
    for (String column : SowingPlan.KNOWN.subList(1, SowingPlan.KNOWN.size())) {
      String cell = columns.getOrDefault(column, "");
      if (!cell.isBlank() || (TO_FIND.contains(column) && columns.containsKey(column))) {
        row.put(column, cell);
      }
    }
    return YamlText.set(text, item, row);
  }

  /**
   * The text without a sowing.
   *
   * @param isAddedHere whether the text itself adds it
   */
  static String remove(String text, String id, boolean isAddedHere) {
    String changed = text;
    for (String key : List.of("match", "add")) {
      changed = YamlText.remove(changed, List.of(SOWINGS, Step.toItem(key, id)));
    }
    return isAddedHere
        ? changed
        : YamlText.set(changed, List.of(SOWINGS, Step.toItem("remove", id)), Map.of());
  }
}
