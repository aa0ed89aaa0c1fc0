package propcap.files.edit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.files.edit.YamlText.Step;
import propcap.files.scenario.WrittenScenario;

/** The weeks with extra people in a scenario's text. A scenario that changes another's has all. */
final class ExtraHands {
  private static final List<Step> EXTRA = List.of(Step.to("labour"), Step.to("extra"));
  private static final String CELLS = "labour.extra.";

  private ExtraHands() {}

  /** The text with keys of a row put; an empty text takes a key out. */
  static String set(String text, WrittenScenario written, int row, Map<String, String> keys) {
    String changed = own(text, written);
    for (Map.Entry<String, String> key : keys.entrySet()) {
      List<Step> path = Step.below(row(changed, row), Step.to(key.getKey()));
      changed = YamlText.put(changed, path, key.getValue());
    }
    return changed;
  }

  /** The text with a row more. */
  static String add(String text, WrittenScenario written, Map<String, String> keys) {
    String own = own(text, written);
    List<Step> row = Step.below(EXTRA, Step.toRow(rows(written).size()));
    return YamlText.set(own, row, EditedKeys.given(keys));
  }

  /** The text without a row. */
  static String remove(String text, WrittenScenario written, int row) {
    String own = own(text, written);
    return YamlText.remove(own, row(own, row));
  }

  private static List<Step> row(String text, int row) {
    List<Step> path = Step.below(EXTRA, Step.toRow(row));
    if (!YamlText.has(text, path)) {
      throw new IllegalArgumentException("there are no extra people in row " + (row + 1));
    }
    return path;
  }

  /** The list is changed as a whole, so that of another scenario is written here first. */
  private static String own(String text, WrittenScenario written) {
    List<Map<String, String>> rows = rows(written);
    return rows.isEmpty() || YamlText.has(text, EXTRA) ? text : YamlText.set(text, EXTRA, rows);
  }

  private static List<Map<String, String>> rows(WrittenScenario written) {
    List<Map<String, String>> rows = new ArrayList<>();
    written
        .head()
        .cells()
        .forEach(
            (key, cell) -> {
              if (key.startsWith(CELLS)) {
                String[] way = key.substring(CELLS.length()).split("\\.", 2);
                while (rows.size() <= Integer.parseInt(way[0])) {
                  rows.add(new LinkedHashMap<>());
                }
                rows.get(Integer.parseInt(way[0])).put(way[1], cell.text());
              }
            });
    return rows;
  }
}
