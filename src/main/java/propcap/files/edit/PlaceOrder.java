package propcap.files.edit;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import propcap.files.edit.YamlText.Step;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.WrittenScenario;
import propcap.files.text.UnsavedTexts;

/**
 * A place moved among the others, in the scenario's text. Where it stands there may be said by the
 * order of the list or by {@code after}, so each way to write it is read again before it is taken.
 */
final class PlaceOrder {
  private static final String PLACES = "places";

  private final Path scenario;
  private final UnsavedTexts unsaved;
  private final String text;
  private final List<String> order;
  private final List<String> wanted;
  private final String first;
  private final String second;

  private PlaceOrder(Path scenario, UnsavedTexts unsaved, String text, String name, boolean isUp) {
    this.scenario = scenario;
    this.unsaved = unsaved;
    this.text = text;
    this.order = order(unsaved);
    int at = order.indexOf(name);
    int upper = isUp ? at - 1 : at;
    if (at < 0 || upper < 0 || upper + 1 >= order.size()) {
      throw new IllegalArgumentException(
          "there is no place " + (isUp ? "above " : "below ") + name + " to change with");
    }
    this.first = order.get(upper);
    this.second = order.get(upper + 1);
    List<String> swapped = new ArrayList<>(order);
    Collections.swap(swapped, upper, upper + 1);
    this.wanted = List.copyOf(swapped);
  }

  /**
   * The scenario's text with a place one up or down.
   *
   * @throws IllegalArgumentException where it cannot be written there, with the reason
   */
  static String moved(Path scenario, UnsavedTexts unsaved, String text, String name, boolean isUp) {
    return new PlaceOrder(scenario, unsaved, text, name, isUp).moved();
  }

  private List<String> order(UnsavedTexts texts) {
    return WrittenScenario.of(scenario, texts).places().stream()
        .map(WrittenScenario.Entry::name)
        .toList();
  }

  private String moved() {
    int faults = ScenarioReader.read(scenario, unsaved).faults().size();
    List<Function<String, @Nullable String>> ways =
        List.of(
            this::withNeighboursSwapped,
            t -> without(t, second),
            t -> without(t, first),
            this::inOrder,
            this::withSecondBehindTheOneAbove,
            t -> after(t, first, second));
    for (Function<String, @Nullable String> way : ways) {
      String changed = way.apply(text);
      if (changed != null && isAsWanted(changed, faults)) {
        return changed;
      }
    }
    throw new IllegalArgumentException(why());
  }

  private String why() {
    if (!YamlText.has(text, List.of(Step.to("extends")))) {
      return second + " is written as a place like another (like: ...), which must stand above it";
    }
    return order.indexOf(first) == 0 && YamlText.has(text, PlaceKeys.of(second))
        ? "a scenario that changes another puts "
            + second
            + " behind a place of that, and not first"
        : "the order of "
            + first
            + " and "
            + second
            + " is written in the plan that this scenario changes; move it there";
  }

  private boolean isAsWanted(String changed, int faults) {
    UnsavedTexts trial = unsaved.with(scenario, changed);
    return order(trial).equals(wanted)
        && ScenarioReader.read(scenario, trial).faults().size() <= faults;
  }

  private @Nullable String withNeighboursSwapped(String from) {
    List<String> names = YamlItems.names(from, PLACES);
    int at = names.indexOf(first);
    return at >= 0 && names.indexOf(second) == at + 1 ? YamlItems.swapped(from, PLACES, at) : null;
  }

  private @Nullable String withSecondBehindTheOneAbove(String from) {
    int above = order.indexOf(first) - 1;
    return above < 0 ? null : after(from, second, order.get(above));
  }

  private static @Nullable String after(String from, String name, String other) {
    return YamlText.has(from, PlaceKeys.of(name))
        ? YamlText.set(from, EditedKeys.path(PlaceKeys.of(name), "after"), other)
        : null;
  }

  private static String without(String from, String name) {
    return YamlText.remove(from, EditedKeys.path(PlaceKeys.of(name), "after"));
  }

  /** All in the order of the list, and nothing said by {@code after}. */
  private @Nullable String inOrder(String from) {
    String changed = from;
    List<String> names = new ArrayList<>(YamlItems.names(from, PLACES));
    if (!names.containsAll(wanted) || names.size() != wanted.size()) {
      return null;
    }
    for (String name : names) {
      changed = without(changed, name);
    }
    for (int to = 0; to < wanted.size(); to++) {
      for (int at = names.indexOf(wanted.get(to)); at > to; at--) {
        changed = YamlItems.swapped(changed, PLACES, at - 1);
        Collections.swap(names, at - 1, at);
      }
    }
    return changed;
  }
}
