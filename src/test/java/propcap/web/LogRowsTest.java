package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** A row is looked at before it is written in the log, and a wrong one is not written. */
class LogRowsTest extends Served {
  private static final String HEADER = "sowing,tray,event,date,plants,place,trays\n";

  @BeforeEach
  void aLogOnAMorningInMarch() {
    browser.edit(Map.of("do", "keep-log"));
    browser.post("/api/day", Map.of("day", "2027-03-10"));
  }

  private static Map<String, Object> row(String... cells) {
    Map<String, String> keys = new LinkedHashMap<>();
    List<String> columns = List.of("sowing", "tray", "event", "date", "plants", "place", "trays");
    for (int i = 0; i < cells.length; i++) {
      if (!cells[i].isEmpty()) {
        keys.put(columns.get(i), cells[i]);
      }
    }
    return Map.of("do", "log", "keys", keys);
  }

  /** What is told of rows that were to be written: the field of each fault and its words. */
  private List<String> written(List<Map<String, Object>> rows) {
    HttpResponse<String> reply =
        browser.post(
            "/api/edit",
            Map.of("version", browser.state().get("version").getAsLong(), "edits", rows));
    assertThat(reply.statusCode()).as(reply.body()).isEqualTo(200);
    JsonArray faults =
        JsonParser.parseString(reply.body()).getAsJsonObject().getAsJsonArray("faults");
    return faults == null ? List.of() : all(faults).map(LogRowsTest::told).toList();
  }

  private static Stream<JsonObject> all(JsonArray array) {
    return StreamSupport.stream(array.spliterator(), false).map(JsonElement::getAsJsonObject);
  }

  private static String told(JsonObject fault) {
    return fault.get("key").getAsString() + ": " + fault.get("words").getAsString();
  }

  private List<String> written(String... cells) {
    return written(List.of(row(cells)));
  }

  private int rows() {
    return browser.state().getAsJsonArray("log").size();
  }

  private JsonObject soFar() {
    return browser.state().getAsJsonObject("soFar");
  }

  @Test
  void aWrongRowIsToldByItsFieldAndNotWritten() {
    assertThat(written("cabbage-1", "", "sown", "2027-02-20", "", "", "6")).isEmpty();
    JsonObject before = browser.state();
    assertThat(written("cabbage-1", "", "moved-out", "2027-03-01", "", "", "6"))
        .singleElement()
        .asString()
        .startsWith("event: moved-out of 6 trays of cabbage-1, but the log has none");
    assertThat(written("cabbage-1", "", "off-heat", "2027-03-01", "5000", "", "6"))
        .singleElement()
        .asString()
        .startsWith("plants: plants is '5000', more than the");
    assertThat(written("cabbage-1", "", "off-heat", "2027-03-11", "", "", "6"))
        .singleElement()
        .asString()
        .startsWith("date: date 2027-03-11 is not before the morning of");
    assertThat(written("cabbage-1", "", "off-heat", "some day", "", "", "6"))
        .singleElement()
        .asString()
        .startsWith("date: date is 'some day'");
    assertThat(browser.state()).isEqualTo(before);
    assertThat(browser.state().getAsJsonArray("faults")).isEmpty();
    assertThat(soFar().getAsJsonArray("groups")).isNotEmpty();
  }

  @Test
  void ofSeveralRowsAllAreWrittenOrNone() {
    assertThat(
            written(
                List.of(
                    row("cabbage-1", "1-2", "sown", "2027-02-20"),
                    row("cabbage-1", "4-3", "sown", "2027-02-20"))))
        .singleElement()
        .asString()
        .startsWith("tray: tray is '4-3'");
    assertThat(rows()).isZero();
    assertThat(
            written(
                List.of(
                    row("cabbage-1", "1-2", "sown", "2027-02-20"),
                    row("cabbage-1", "3-4", "sown", "2027-02-20"))))
        .isEmpty();
    assertThat(rows()).isEqualTo(2);
  }

  /** What is wrong already stays as it is; a row is refused for what it brings itself. */
  @Test
  void aRightRowIsWrittenBesideAWrongOneOfTheSpreadsheet() throws Exception {
    browser.post("/api/save", Map.of());
    Files.writeString(folder.resolve("log.csv"), HEADER + "cabbage-1,,swon,2027-02-20,,,6\n");
    serveAnew();
    browser.post("/api/day", Map.of("day", "2027-03-10"));
    assertThat(browser.state().getAsJsonArray("faults")).hasSize(1);
    assertThat(written("lettuce-1", "", "sown", "2027-03-01", "", "", "2")).isEmpty();
    assertThat(rows()).isEqualTo(2);
    assertThat(written("lettuce-1", "", "sown", "2027-03-02", "", "Nowhere", "2"))
        .singleElement()
        .asString()
        .startsWith("place: no place 'Nowhere'");
    assertThat(rows()).isEqualTo(2);
  }

  /** One change of a what-if that stands beside the plan. */
  private String inWhatIf(Map<String, ?> edit) {
    HttpResponse<String> reply =
        browser.post(
            "/api/edit",
            Map.of(
                "file",
                "more.yaml",
                "version",
                browser.state().get("version").getAsLong(),
                "edits",
                List.of(edit)));
    assertThat(reply.statusCode()).as(reply.body()).isEqualTo(200);
    return reply.body();
  }

  @Test
  void aRowOfAWhatIfIsLookedAtInTheOneHouse() {
    browser.post("/api/what-if", Map.of("title", "More"));
    assertThat(inWhatIf(row("cabbage-1", "", "off-heat", "2027-03-01", "", "", "6")))
        .contains("off-heat of 6 trays of cabbage-1, but the log has none");
    assertThat(rows()).isZero();
  }

  /** More spaces of a what-if are none in which trays have stood. */
  @Test
  void aRowOfAWhatIfMustHaveHadRoomInThePlansHouse() {
    browser.post("/api/what-if", Map.of("title", "More"));
    inWhatIf(Map.of("do", "place", "name", "Chamber", "key", "spaces", "value", "20"));
    assertThat(inWhatIf(row("cabbage-1", "", "sown", "2027-03-01", "", "", "12")))
        .contains("Chamber has 12 trays on 2027-03-01 and 6 spaces");
    assertThat(rows()).isZero();
  }

  @Test
  void anOverfullPlaceIsWrittenOnceTheGrowerGoesOnAllTheSame() {
    assertThat(written("cabbage-1", "", "sown", "2027-03-01", "", "", "12"))
        .singleElement()
        .asString()
        .contains("Chamber has 12 trays on 2027-03-01 and 6 spaces");
    assertThat(rows()).isZero();
    browser.post("/api/day", Map.of("day", "2027-03-10", "overfull", "true"));
    assertThat(written("cabbage-1", "", "sown", "2027-03-01", "", "", "12")).isEmpty();
    assertThat(rows()).isOne();
  }

  /** Cabbage has a stand window of 5 days: off the heat until 5 March, it may be counted. */
  @Test
  void plantsAreAskedForWhereTheyMayBeWritten() {
    written("cabbage-1", "", "sown", "2027-02-20", "", "", "6");
    JsonObject inHeat =
        all(soFar().getAsJsonArray("groups"))
            .filter(g -> g.get("place").getAsString().equals("Chamber"))
            .findFirst()
            .orElseThrow();
    Map<String, String> until = new LinkedHashMap<>();
    Map<String, String> asked = new LinkedHashMap<>();
    all(inHeat.getAsJsonArray("next"))
        .forEach(
            next -> {
              asked.put(next.get("event").getAsString(), next.get("plants").getAsString());
              until.put(next.get("event").getAsString(), next.get("countedUntil").getAsString());
            });
    assertThat(asked)
        .containsEntry("off-heat", "Plants in each")
        .containsEntry("counted", "Showing in each");
    assertThat(until).containsEntry("off-heat", "2027-03-05").containsEntry("counted", "");
    assertThat(written("cabbage-1", "", "off-heat", "2027-03-06", "60", "", "1"))
        .singleElement()
        .asString()
        .startsWith("plants: plants is '60', but the last seedlings are up 5 days after off-heat");
    assertThat(written("cabbage-1", "", "off-heat", "2027-03-05", "60", "", "1")).isEmpty();
  }

  @Test
  void aLogElsewhereIsReadAndTheTabSaysWhatToDo() throws Exception {
    Path other = Farm.in(Files.createDirectory(folder.resolve("farm")));
    Files.writeString(other, Farm.SCENARIO + "so-far: ../mine.csv\n");
    Files.writeString(folder.resolve("mine.csv"), HEADER + "cabbage-1,,sown,2027-02-20,,,6\n");
    serveAnew(other);
    browser.post("/api/day", Map.of("day", "2027-03-10"));
    assertThat(soFar().get("readOnly").getAsString())
        .isEqualTo(
            "The log ../mine.csv lies outside the scenario’s folder, where the page writes nothing:"
                + " it is read, and not written in. To write in it here, move it beside small.yaml"
                + " and put so-far: mine.csv there.");
    assertThat(soFar().getAsJsonArray("groups")).hasSize(3);
  }
}
