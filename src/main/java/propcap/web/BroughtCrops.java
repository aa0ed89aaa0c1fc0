package propcap.web;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import propcap.evidence.stages.StageDays;
import propcap.farm.PlaceKind;
import propcap.files.edit.ScenarioEditor;
import propcap.files.scenario.CropBook;
import propcap.files.scenario.WrittenScenario;
import propcap.web.request.RefusedException;

/** The crops that the program brings, to choose from. */
final class BroughtCrops {
  /** The places that the list names, by what they are. */
  private static final Map<String, PlaceKind> KINDS =
      Map.of("Chamber", PlaceKind.CHAMBER, "Mats", PlaceKind.HEAT_BENCH, "House", PlaceKind.TABLE);

  private BroughtCrops() {}

  /** Each with its kind, its weeks, its lines as written and its sources. */
  static JsonElement json() {
    JsonArray all = new JsonArray();
    for (CropBook.Entry entry : CropBook.ofPropcap().entries()) {
      JsonObject crop = new JsonObject();
      crop.addProperty("name", entry.crop().name());
      crop.addProperty("kind", entry.kind());
      double weeks = StageDays.asGiven(entry.crop()).weeksToBed();
      if (Double.isFinite(weeks)) {
        crop.addProperty("weeks", Math.round(weeks));
      }
      crop.add("also", new Gson().toJsonTree(entry.also()));
      crop.add("values", new Gson().toJsonTree(entry.values()));
      crop.addProperty("text", String.join("\n", entry.text()));
      crop.add("sources", new Gson().toJsonTree(entry.sources()));
      all.add(crop);
    }
    return all;
  }

  /** Copies one into a scenario's list; it germinates where the list has it, in places alike. */
  static void copy(String name, ScenarioEditor editor, WrittenScenario written)
      throws IOException, RefusedException {
    if (written.crops().stream().anyMatch(crop -> crop.name().equals(name))) {
      throw RefusedException.bad("there is a crop " + name + " already");
    }
    CropBook book = CropBook.ofPropcap();
    CropBook.Entry entry =
        book.named(name)
            .orElseThrow(
                () ->
                    RefusedException.bad(
                        "no crop '" + name + "' in the list; " + book.nearest(name)));
    editor.copyCrop(entry, places(entry, written));
  }

  /** A farm that has none of these has a table, on which all come up, if more slowly. */
  private static List<String> places(CropBook.Entry entry, WrittenScenario written) {
    Set<String> places = new LinkedHashSet<>();
    for (String named : entry.crop().germinateIn()) {
      places.addAll(ofKind(KINDS.getOrDefault(named, PlaceKind.TABLE), written));
    }
    return List.copyOf(places.isEmpty() ? ofKind(PlaceKind.TABLE, written) : places);
  }

  private static List<String> ofKind(PlaceKind kind, WrittenScenario written) {
    return written.places().stream()
        .filter(p -> p.text("kind").equals(kind.word()))
        .filter(p -> !p.text("spaces").equals("0"))
        .map(WrittenScenario.Entry::name)
        .toList();
  }
}
