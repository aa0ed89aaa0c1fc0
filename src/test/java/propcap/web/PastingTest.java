package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** A pasted table, looked at and written. */
class PastingTest extends Served {
  private static final String HEADING =
      "Sowing\tCrop\tSow on\tTrays\tPlants needed\tBed from\tBed by\n";
  private static final String NEW = "c-2\tcabbage\t13/3/2027\t12\t900\t20/4/2027\t10/5/2027\n";

  private HttpResponse<String> send(String text, Map<String, String> more) {
    Map<String, Object> body = new HashMap<>(more);
    body.put("text", text);
    body.put("version", browser.state().get("version").getAsLong());
    return browser.post("/api/paste", body);
  }

  private JsonObject paste(String text, Map<String, String> more) {
    HttpResponse<String> response = send(text, more);
    assertThat(response.statusCode()).as(response.body()).isEqualTo(200);
    return JsonParser.parseString(response.body()).getAsJsonObject();
  }

  private JsonObject cells(int row) {
    return browser
        .state()
        .getAsJsonArray("sowings")
        .get(row)
        .getAsJsonObject()
        .getAsJsonObject("cells");
  }

  private int rows() {
    return browser.state().getAsJsonArray("sowings").size();
  }

  private static JsonObject row(JsonObject told, int row) {
    return told.getAsJsonArray("rows").get(row).getAsJsonObject();
  }

  private static String fault(JsonObject told, int row, String column) {
    JsonElement words = row(told, row).getAsJsonObject("faults").get(column);
    return words == null ? "" : words.getAsString();
  }

  @Test
  void lookingWritesNothing() {
    JsonObject told = paste(HEADING + NEW, Map.of());
    assertThat(told.get("isWritten").getAsBoolean()).isFalse();
    assertThat(told.get("added").getAsInt()).isEqualTo(1);
    assertThat(told.get("wrong").getAsInt()).as("%s", told).isZero();
    assertThat(rows()).isEqualTo(2);
    assertThat(browser.state().get("canUndo").getAsBoolean()).isFalse();
  }

  @Test
  void whatIsRightIsWrittenAtOnceAndTakenBackAtOnce() {
    String table = HEADING + "cabbage-1\tcabbage\t20/2/2027\t14\t960\t15/4/2027\t10/5/2027\n" + NEW;
    JsonObject told = paste(table, Map.of("write", "right"));
    assertThat(told.get("isWritten").getAsBoolean()).as("%s", told).isTrue();
    assertThat(told.get("changed").getAsInt()).isEqualTo(1);
    assertThat(told.get("added").getAsInt()).isEqualTo(1);
    assertThat(cells(0).get("trays").getAsString()).isEqualTo("14");
    assertThat(cells(2).get("sow").getAsString()).isEqualTo("2027-03-13");
    assertThat(browser.state().getAsJsonArray("faults")).isEmpty();
    browser.post("/api/undo", Map.of());
    assertThat(rows()).isEqualTo(2);
    assertThat(cells(0).get("trays").getAsString()).isEqualTo("12");
    assertThat(browser.state().get("canUndo").getAsBoolean()).isFalse();
  }

  @Test
  void whatIsWrongIsToldAtItsCellsAllAtOnce() {
    String table =
        HEADING
            + "c-2\tcabage\t13/3/2027\ttwelve\t900\t20/4/2027\t10/5/2027\n"
            + "cabbage-1\tcabbage\tsoon\t12\t#REF!\t15/4/2027\t10/5/2027\n"
            + "c-3\tcabbage\t13/3/2027\t12\t900\t20/5/2027\t10/5/2027\n"
            + "c-3\tcabbage\t13/3/2027\t12\t900\t20/4/2027\t10/5/2027\n";
    JsonObject told = paste(table, Map.of("write", "right"));
    assertThat(told.get("isWritten").getAsBoolean()).isFalse();
    assertThat(rows()).isEqualTo(2);
    assertThat(fault(told, 0, "crop")).contains("cabbage");
    assertThat(fault(told, 0, "trays")).contains("twelve");
    assertThat(fault(told, 1, "sow")).contains("a date such as 2027-03-28");
    assertThat(fault(told, 1, "plants-needed")).contains("no value");
    assertThat(fault(told, 2, "bed-by")).contains("before bed-from");
    assertThat(fault(told, 3, "id")).contains("again");
    assertThat(told.getAsJsonArray("others")).isEmpty();
  }

  @Test
  void whatIsWrongIsWrittenOnceItIsSeen() {
    String table = HEADING + "c-2\tcabbage\tsoon\t12\t900\t20/4/2027\t10/5/2027\n";
    assertThat(paste(table, Map.of("write", "seen")).get("isWritten").getAsBoolean()).isTrue();
    assertThat(cells(2).get("sow").getAsString()).isEqualTo("soon");
  }

  @Test
  void whatIsLeftOutMustBeSeenFirst() {
    String table = "Sowing\tTrays\tNotes\ncabbage-1\t14\tnice\n";
    JsonObject told = paste(table, Map.of("write", "right"));
    assertThat(told.get("isWritten").getAsBoolean()).isFalse();
    assertThat(told.getAsJsonArray("leftOut").get(0).getAsString()).isEqualTo("column “Notes”");
    assertThat(cells(0).get("trays").getAsString()).isEqualTo("12");
  }

  @Test
  void aDateThatIsNotClearIsAskedWhateverIsSaid() {
    String table = "Sowing\tSow on\ncabbage-1\t1/3/2027\n";
    JsonObject told = paste(table, Map.of("write", "seen"));
    assertThat(told.get("isWritten").getAsBoolean()).isFalse();
    JsonObject unclear = told.getAsJsonObject("unclear");
    assertThat(unclear.get("day").getAsString()).isEqualTo("2027-03-01");
    assertThat(unclear.get("month").getAsString()).isEqualTo("2027-01-03");
    JsonObject said = paste(table, Map.of("write", "right", "order", "day"));
    assertThat(said.get("isWritten").getAsBoolean()).as("%s", said).isTrue();
    assertThat(cells(0).get("sow").getAsString()).isEqualTo("2027-03-01");
  }

  @Test
  void rowsWithoutAnIdGetOneThatNoneHas() {
    String table =
        """
        Crop\tSow on\tTrays\tPlants needed\tBed from\tBed by
        cabbage\t1 Mar\t2\t90\t20 Apr\t10 May
        cabbage\t8 Mar\t2\t90\t20 Apr\t12 May
        """;
    assertThat(paste(table, Map.of("write", "right")).get("isWritten").getAsBoolean()).isTrue();
    assertThat(cells(2).get("id").getAsString()).isEqualTo("cabbage-2");
    assertThat(cells(3).get("id").getAsString()).isEqualTo("cabbage-3");
  }

  @Test
  void aCropWithACapitalLetterIsTheOneOfThatName() {
    String table =
        """
        Crop\tSow on\tTrays\tPlants needed\tBed from\tBed by
        Cabbage\t1 Mar\t2\t90\t20 Apr\t10 May
        """;
    assertThat(paste(table, Map.of("write", "right")).get("isWritten").getAsBoolean()).isTrue();
    assertThat(cells(2).get("crop").getAsString()).isEqualTo("cabbage");
  }

  @Test
  void noRowGetsTheIdOfOneBelowIt() {
    String row = "cabbage\t13/3/2027\t12\t900\t20/4/2027\t10/5/2027\n";
    String table = HEADING + "\t" + row + "cabbage-2\t" + row;
    assertThat(paste(table, Map.of("write", "right")).get("isWritten").getAsBoolean()).isTrue();
    assertThat(cells(2).get("id").getAsString()).isEqualTo("cabbage-3");
    assertThat(cells(3).get("id").getAsString()).isEqualTo("cabbage-2");
  }

  /** Neither of two rows for one sowing is lost without a word. */
  @Test
  void aSowingThatComesTwiceIsTold() {
    JsonObject told =
        paste("Sowing\tTrays\ncabbage-1\t14\ncabbage-1\t15\n", Map.of("write", "right"));
    assertThat(told.get("isWritten").getAsBoolean()).isFalse();
    assertThat(told.getAsJsonArray("rows"))
        .anyMatch(r -> r.getAsJsonObject().getAsJsonObject("faults").has("id"));
  }

  /** The rows that are shown may be others than those that follow in the file. */
  @Test
  void whatIsPastedInAFieldGoesDownTheRowsThatAreShown() {
    JsonObject told =
        paste("20\t1,000\n21\t900", Map.of("write", "right", "from", "trays", "rows", "1,0"));
    assertThat(told.get("isWritten").getAsBoolean()).as("%s", told).isTrue();
    assertThat(cells(1).get("trays").getAsString()).isEqualTo("20");
    assertThat(cells(1).get("plants-needed").getAsString()).isEqualTo("1000");
    assertThat(cells(0).get("trays").getAsString()).isEqualTo("21");
  }

  @Test
  void aWhatIfHoldsTheLinesAlone() throws Exception {
    browser.post("/api/what-if", Map.of("title", "More"));
    String table = HEADING + "cabbage-1\tcabbage\t20/2/2027\t14\t960\t15/4/2027\t10/5/2027\n" + NEW;
    JsonObject told = paste(table, Map.of("write", "right", "file", "more.yaml"));
    assertThat(told.get("isWritten").getAsBoolean()).as("%s", told).isTrue();
    assertThat(rows()).isEqualTo(2);
    browser.post("/api/save", Map.of("over", "false"));
    assertThat(Files.readString(folder.resolve("more.yaml")))
        .contains("match: cabbage-1", "add: c-2")
        .doesNotContain("lettuce");
    assertThat(Files.readString(folder.resolve("sowings.csv"))).isEqualTo(Farm.PLAN);
  }

  @Test
  void aWrongWordOfAWhatIfIsToldAtItsCellToo() {
    browser.post("/api/what-if", Map.of("title", "More"));
    String table = HEADING + NEW.replace("12\t900", "many\t900");
    JsonObject told = paste(table, Map.of("write", "right", "file", "more.yaml"));
    assertThat(fault(told, 0, "trays")).contains("many");
  }

  @Test
  void anEmptyPlanTakesATable() throws Exception {
    Files.writeString(
        folder.resolve("sowings.csv"), Farm.PLAN.lines().findFirst().orElse("") + "\n");
    serveAnew();
    JsonObject told = paste(HEADING + NEW, Map.of("write", "right"));
    assertThat(told.get("isWritten").getAsBoolean()).as("%s", told).isTrue();
    assertThat(browser.state().getAsJsonArray("faults")).isEmpty();
  }

  @Test
  void thousandsOfRowsAreWrittenInOneStepAndMoreAreRefused() {
    String table =
        HEADING
            + IntStream.range(0, 2_000)
                .mapToObj(i -> NEW.replace("c-2", "x-" + i))
                .collect(Collectors.joining());
    assertThat(paste(table, Map.of("write", "right")).get("added").getAsInt()).isEqualTo(2_000);
    assertThat(rows()).isEqualTo(2_002);
    browser.post("/api/undo", Map.of());
    assertThat(rows()).isEqualTo(2);
    HttpResponse<String> refused = send(HEADING + NEW.repeat(5_001), Map.of());
    assertThat(refused.statusCode()).isEqualTo(400);
    assertThat(refused.body()).contains("more than 5000 rows at once");
  }

  @Test
  void hostileRequestsAreRefusedInWords() {
    assertThat(send("x\ty", Map.of("rows", "-1")).statusCode()).isEqualTo(400);
    assertThat(send("x".repeat(2_001) + "\ty", Map.of()).statusCode()).isEqualTo(400);
    assertThat(send("a\tb", Map.of("columns", "no-such,id")).statusCode()).isEqualTo(400);
    assertThat(send("a\tb", Map.of("columns", "id,id")).statusCode()).isEqualTo(400);
    assertThat(send("=cmd|'/C calc'!A0\tcabbage", Map.of("write", "right")).body())
        .contains("\"isWritten\":false");
  }
}
