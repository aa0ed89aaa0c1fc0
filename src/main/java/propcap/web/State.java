package propcap.web;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.files.scenario.WrittenScenario;
import propcap.files.text.Fault;
import propcap.files.text.OnDisk;
import propcap.files.weather.ExampleWeather;
import propcap.report.Defaults;
import propcap.web.desk.DeskView;
import propcap.web.desk.Folder;
import propcap.web.question.Questions;
import propcap.web.request.Reply;

/** What the page shows of the desk, as JSON. */
final class State {
  private final DeskView view;

  private State(DeskView view) {
    this.view = view;
  }

  static JsonObject of(DeskView view) throws IOException {
    return new State(view).json();
  }

  private JsonObject json() throws IOException {
    Folder folder = view.folder();
    JsonObject json = new JsonObject();
    json.addProperty("version", view.version());
    json.addProperty("base", folder.name(view.scenario()));
    json.addProperty("shown", folder.name(view.shown()));
    json.add("scenarios", Reply.words(view.scenarios().stream().map(folder::name).toList()));
    json.add("titles", Reply.words(view.titles()));
    json.add(
        "changed",
        Reply.words(view.texts().texts().keySet().stream().map(folder::name).sorted().toList()));
    json.add("conflicts", Reply.words(view.conflicts().stream().map(folder::name).toList()));
    json.addProperty("canUndo", view.canUndo());
    json.addProperty("canRedo", view.canRedo());
    json.addProperty("isRestored", view.isRestored());
    json.add("files", Reply.words(folder.scenarios()));
    json.add("records", Reply.words(folder.records()));
    json.add(
        "kinds", Reply.words(List.of(PlaceKind.values()).stream().map(PlaceKind::word).toList()));
    json.add(
        "defaults",
        new Gson()
            .toJsonTree(
                Map.of("crop", Defaults.CROP, "place", Defaults.PLACE, "head", Defaults.HEAD)));
    json.add("questions", new Gson().toJsonTree(Questions.forms()));
    WrittenScenario written = view.reading().written();
    json.add("head", entry(written.head()));
    json.addProperty("isExampleWeather", isExampleWeather(written.head()));
    json.add("places", entries(written.places()));
    json.add("crops", entries(written.crops()));
    json.add("sowings", entries(written.sowings()));
    json.add("log", entries(written.log()));
    json.add("soFar", new Gson().toJsonTree(SoFarTab.of(view)));
    json.add("faults", told(view.reading().faults(), written));
    json.addProperty("toFind", view.reading().faults().size() - view.reading().others().size());
    json.add("warnings", told(view.reading().warnings(), written));
    view.reading().scenario().ifPresent(s -> json.addProperty("years", years(s)));
    return json;
  }

  /** A record that was taken and not saved yet is the grower's own. */
  private boolean isExampleWeather(WrittenScenario.Entry head) throws IOException {
    WrittenScenario.Cell named = head.cells().get("weather");
    if (named == null) {
      return false;
    }
    Path record = named.spot().file().toAbsolutePath().resolveSibling(named.text()).normalize();
    return !view.texts().texts().containsKey(record)
        && ExampleWeather.is(view.folder().disk().shown(record));
  }

  private static String years(Scenario scenario) {
    return "%s whole years, %s to %s"
        .formatted(
            scenario.weather().size(),
            scenario.weather().get(0).year(),
            scenario.weather().get(scenario.weather().size() - 1).year());
  }

  private JsonArray entries(List<WrittenScenario.Entry> entries) {
    JsonArray array = new JsonArray();
    entries.forEach(e -> array.add(entry(e)));
    return array;
  }

  /** Each key's text; and which of them the shown scenario has written itself. */
  private JsonObject entry(WrittenScenario.Entry entry) {
    JsonObject cells = new JsonObject();
    JsonArray own = new JsonArray();
    entry
        .cells()
        .forEach(
            (key, cell) -> {
              cells.addProperty(key, cell.text());
              if (isOwn(cell.spot().file())) {
                own.add(key);
              }
            });
    JsonObject json = new JsonObject();
    json.addProperty("name", entry.name());
    json.addProperty("isOwn", isOwn(entry.spot().file()));
    json.add("cells", cells);
    json.add("own", own);
    return json;
  }

  private boolean isOwn(Path file) {
    return OnDisk.key(file).equals(view.shown());
  }

  private static JsonArray told(List<Fault> faults, WrittenScenario written) {
    return new Gson()
        .toJsonTree(faults.stream().map(fault -> FieldFault.of(fault, written)).toList())
        .getAsJsonArray();
  }
}
