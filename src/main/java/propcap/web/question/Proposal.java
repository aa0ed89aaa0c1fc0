package propcap.web.question;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.files.edit.ScenarioEditor;
import propcap.files.scenario.WrittenScenario;
import propcap.web.request.RefusedException;

/**
 * What an answer would have otherwise, to be put beside the plan: other spaces, other hours, other
 * days, trays and germination places of sowings.
 *
 * @param title what it is called there
 * @param from the scenario of which was asked
 * @param to what the answer proposes, of the same places and sowings
 */
record Proposal(String title, Scenario from, Scenario to) {
  private static final int LONGEST_TITLE = 60;

  Proposal {
    title = title.length() > LONGEST_TITLE ? title.substring(0, LONGEST_TITLE).strip() : title;
  }

  /** One that is called by the first place whose size differs, such as Glasshouse: 310 spaces. */
  static Optional<Proposal> ofSize(Scenario from, Optional<Scenario> to) {
    return to.map(sized -> new Proposal(sizes(from, sized), from, sized));
  }

  static Optional<Proposal> of(String title, Scenario from, Optional<Scenario> to) {
    return to.map(changed -> new Proposal(title, from, changed));
  }

  private static String sizes(Scenario from, Scenario to) {
    return otherPlaces(from, to).stream()
        .findFirst()
        .map(p -> p.name() + ": " + p.spaces() + " spaces")
        .orElseGet(() -> "Hands: " + hours(to) + " hours a day");
  }

  private static List<Place> otherPlaces(Scenario from, Scenario to) {
    return IntStream.range(0, to.places().size())
        .filter(p -> from.places().get(p).spaces() != to.places().get(p).spaces())
        .mapToObj(to.places()::get)
        .toList();
  }

  private static String hours(Scenario scenario) {
    double hours = scenario.labour().hoursPerDay();
    return hours == Math.rint(hours) ? Long.toString(Math.round(hours)) : Double.toString(hours);
  }

  /**
   * Writes it into a what-if of the scenario of which was asked.
   *
   * @throws RefusedException where a place or a sowing is no longer there
   */
  void write(ScenarioEditor editor, WrittenScenario written) throws IOException, RefusedException {
    for (Place place : otherPlaces(from, to)) {
      if (written.places().stream().noneMatch(p -> p.name().equals(place.name()))) {
        throw RefusedException.bad(place.name() + " is in the plan no more; ask again");
      }
      editor.setPlace(place.name(), "spaces", Integer.toString(place.spaces()));
    }
    if (from.labour().hoursPerDay() != to.labour().hoursPerDay()) {
      editor.setHead("labour.hours", hours(to) + "/day");
    }
    Map<Integer, Map<String, String>> rows = rows(written);
    if (!rows.isEmpty()) {
      editor.setSowings(rows);
    }
  }

  private Map<Integer, Map<String, String>> rows(WrittenScenario written) throws RefusedException {
    Map<String, Sowing> before =
        from.sowings().stream().collect(Collectors.toMap(Sowing::id, s -> s));
    Map<String, Sowing> after = to.sowings().stream().collect(Collectors.toMap(Sowing::id, s -> s));
    Map<Integer, Map<String, String>> rows = new LinkedHashMap<>();
    for (int row = 0; row < written.sowings().size(); row++) {
      WrittenScenario.Entry entry = written.sowings().get(row);
      Sowing was = before.get(entry.name());
      Sowing is = after.remove(entry.name());
      if (was == null || is == null) {
        continue;
      }
      Map<String, String> columns = columns(entry, was, is);
      if (!columns.isEmpty()) {
        rows.put(row, columns);
      }
    }
    if (!after.isEmpty()) {
      throw RefusedException.bad(
          after.keySet().iterator().next() + " is in the plan no more; ask again");
    }
    return rows;
  }

  /** What is other than it was asked of, or was empty there. */
  private static Map<String, String> columns(WrittenScenario.Entry entry, Sowing was, Sowing is) {
    Map<String, String> columns = new LinkedHashMap<>();
    put(columns, entry, "sow", was.sow(), is.sow());
    put(columns, entry, "trays", was.trays(), is.trays());
    put(columns, entry, "resow-until", was.resowUntil(), is.resowUntil());
    put(columns, entry, "germinate-in", was.germinateIn(), is.germinateIn());
    return columns;
  }

  private static void put(
      Map<String, String> columns,
      WrittenScenario.Entry entry,
      String column,
      @Nullable Object was,
      @Nullable Object is) {
    if (is != null && (!is.equals(was) || entry.text(column).isEmpty())) {
      columns.put(column, is.toString());
    } else if (is == null && was != null) {
      columns.put(column, "");
    }
  }
}
