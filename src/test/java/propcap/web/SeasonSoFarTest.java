package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import propcap.farm.Scenario;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.SoFarAsked;
import propcap.files.text.UnsavedTexts;
import propcap.study.forecast.Forecasting;
import propcap.web.desk.Desk;
import propcap.web.question.Outlook;

/** The log of the season kept on the page, and the forecast that goes on from it. */
class SeasonSoFarTest extends Served {
  private static final String HEADER = "sowing,tray,event,date,plants,place,trays\n";

  @BeforeEach
  void aPageOfOneMorningInMarch() {
    on("2027-03-10");
  }

  private void on(String day) {
    assertThat(browser.post("/api/day", Map.of("day", day)).statusCode()).isEqualTo(200);
  }

  private void keepLog() {
    assertThat(browser.edit(Map.of("do", "keep-log")).statusCode()).isEqualTo(200);
  }

  private HttpResponse<String> write(String sowing, String event, String date, int trays) {
    return row(Map.of("sowing", sowing, "event", event, "date", date, "trays", "" + trays));
  }

  private HttpResponse<String> row(Map<String, String> keys) {
    return browser.edit(Map.of("do", "log", "keys", keys));
  }

  private JsonObject soFar() {
    return browser.state().getAsJsonObject("soFar");
  }

  private List<String> groups() {
    return StreamSupport.stream(soFar().getAsJsonArray("groups").spliterator(), false)
        .map(JsonElement::getAsJsonObject)
        .map(
            g ->
                g.get("sowing").getAsString()
                    + " "
                    + g.get("stage").getAsString()
                    + " "
                    + g.get("place").getAsString()
                    + " "
                    + g.getAsJsonArray("trays").size())
        .toList();
  }

  private void save() {
    HttpResponse<String> saved = browser.post("/api/save", Map.of());
    assertThat(saved.statusCode()).as(saved.body()).isEqualTo(200);
  }

  @Test
  void aLogIsBegunBesideTheScenarioOnceItIsSaved() throws Exception {
    assertThat(soFar().get("file").getAsString()).isEmpty();
    keepLog();
    assertThat(soFar().get("file").getAsString()).isEqualTo("log.csv");
    assertThat(folder.resolve("log.csv")).doesNotExist();
    save();
    assertThat(folder.resolve("log.csv")).hasContent(HEADER);
    assertThat(Files.readString(scenario)).isEqualTo(Farm.SCENARIO + "so-far: log.csv\n");
    assertThat(browser.edit(Map.of("do", "keep-log")).body()).contains("names a log already");
  }

  @Test
  void aFileOfTheGrowersIsNoNewLog() throws Exception {
    Files.writeString(folder.resolve("log.csv"), "mine");
    keepLog();
    save();
    assertThat(Files.readString(folder.resolve("log.csv"))).isEqualTo("mine");
    assertThat(Files.readString(folder.resolve("log-2.csv"))).isEqualTo(HEADER);
  }

  @Test
  void whatStandsWhereAndWhatIsDueFollowsEachRow() {
    keepLog();
    assertThat(groups())
        .containsExactly(
            "cabbage-1 to be sown, due 20 February  12", "lettuce-1 to be sown, due 1 March  12");
    write("cabbage-1", "sown", "2027-02-20", 6);
    write("cabbage-1", "off-heat", "2027-03-09", 4);
    assertThat(groups())
        .containsExactly(
            "cabbage-1 to be sown, due 20 February  6",
            "cabbage-1 growing on House 4",
            "cabbage-1 in the heat Chamber 2",
            "lettuce-1 to be sown, due 1 March  12");
    assertThat(soFar().get("line").getAsString())
        .isEqualTo("From 10 March on: 6 trays stand in the house.");
  }

  @Test
  void aRowGoesAtTheEndInTheColumnsOfTheFileAndCanBeTakenBack() throws Exception {
    Files.writeString(
        folder.resolve("mine.csv"),
        "# kept by Ida\r\nevent,date,sowing,tray,plants\r\nsown,2027-02-20,cabbage-1,1-6,\r\n");
    Files.writeString(scenario, Farm.SCENARIO + "so-far: mine.csv\n");
    serveAnew();
    on("2027-03-10");
    String before = Files.readString(folder.resolve("mine.csv"));
    row(
        Map.of(
            "sowing",
            "cabbage-1",
            "tray",
            "2-3",
            "event",
            "counted",
            "date",
            "2027-03-01",
            "plants",
            "40"));
    save();
    assertThat(Files.readString(folder.resolve("mine.csv")))
        .isEqualTo(before + "counted,2027-03-01,cabbage-1,2-3,40\r\n");
    assertThat(write("cabbage-1", "off-heat", "2027-03-02", 2).body())
        .contains("mine.csv has no column trays; add it to its header");
    browser.edit(Map.of("do", "take-back", "row", 1));
    save();
    assertThat(Files.readString(folder.resolve("mine.csv"))).isEqualTo(before);
  }

  /** As a spreadsheet may have it; one that is written here is looked at before. */
  @Test
  void aWrongRowIsToldAtItsRowInTheReadersWordsAndTakenBack() throws Exception {
    keepLog();
    save();
    Files.writeString(
        folder.resolve("log.csv"),
        HEADER + "cabbage-1,,sown,2027-02-20,,,6\ncabbage-1,,moved-out,2027-03-01,,,6\n");
    serveAnew();
    on("2027-03-10");
    JsonArray faults = browser.state().getAsJsonArray("faults");
    assertThat(faults).isNotEmpty();
    JsonObject fault = faults.get(0).getAsJsonObject();
    assertThat(fault.get("list").getAsString()).isEqualTo("log");
    assertThat(fault.get("row").getAsInt()).isOne();
    assertThat(fault.get("words").getAsString())
        .contains("moved-out of 6 trays of cabbage-1, but the log has none on the tables for it");
    browser.edit(Map.of("do", "take-back", "row", 1));
    assertThat(browser.state().getAsJsonArray("faults")).isEmpty();
    assertThat(browser.state().getAsJsonArray("log")).hasSize(1);
  }

  /** Whoever writes in the evening what was done that day goes on from the next morning. */
  @Test
  void whatIsWrittenOfTodayEndsItsRound() {
    keepLog();
    write("cabbage-1", "sown", "2027-03-10", 6);
    assertThat(browser.state().getAsJsonArray("faults")).isEmpty();
    assertThat(soFar().get("line").getAsString()).startsWith("From 11 March on: 6 trays");
    assertThat(soFar().get("today").getAsString()).isEqualTo("2027-03-10");
    assertThat(write("cabbage-1", "sown", "2027-03-11", 6).body())
        .contains("2027-03-11 is not before the morning of 2027-03-11", "or 2027-03-11 as today")
        .doesNotContain("--");
  }

  @Test
  void theForecastGoesOnFromTodayAndAlsoIsThatOfWinter() throws Exception {
    try (News news = new News(browser)) {
      double winter = news.forecast().get("mean").getAsDouble();
      keepLog();
      write("cabbage-1", "sown", "2027-03-01", 4);
      write("cabbage-1", "sown", "2027-03-09", 2);
      double now = news.forecast().get("mean").getAsDouble();
      save();
      Scenario from10March =
          ScenarioReader.read(
                  scenario, UnsavedTexts.none(), SoFarAsked.on(LocalDate.parse("2027-03-10")))
              .sound();
      assertThat(now)
          .isEqualTo(
              Forecasting.forecast(from10March, Outlook.settings(from10March, 1000), done -> {})
                  .onTime()
                  .mean())
          .isNotEqualTo(winter);
      browser.post("/api/day", Map.of("winter", "true"));
      assertThat(soFar().get("line").getAsString()).startsWith("As before the season");
      assertThat(news.forecast().get("mean").getAsDouble()).isEqualTo(winter);
    }
  }

  @Test
  void aWhatIfGoesOnFromTheSameHouse() throws Exception {
    keepLog();
    write("cabbage-1", "sown", "2027-03-01", 6);
    String file =
        JsonParser.parseString(browser.post("/api/what-if", Map.of("title", "More")).body())
            .getAsJsonObject()
            .get("file")
            .getAsString();
    JsonObject state =
        JsonParser.parseString(browser.get("/api/state?file=" + file).body()).getAsJsonObject();
    assertThat(state.getAsJsonObject("soFar").get("line").getAsString())
        .isEqualTo("From 10 March on: 6 trays stand in the house.");
    // What is written while it is looked at is written in the one log.
    Map<String, Object> edit = new HashMap<>();
    edit.put("file", file);
    edit.put("version", state.get("version").getAsLong());
    edit.put(
        "edits",
        List.of(
            Map.of(
                "do",
                "log",
                "keys",
                Map.of("sowing", "cabbage-1", "event", "off-heat", "date", "2027-03-09"))));
    assertThat(browser.post("/api/edit", edit).statusCode()).isEqualTo(200);
    assertThat(browser.state().getAsJsonArray("log")).hasSize(2);
  }

  /** By the log's reader they would be faults. */
  @Test
  void onlyWhatCanComeIsOffered() throws Exception {
    Files.writeString(
        folder.resolve("sowings.csv"),
        Farm.PLAN + "tomato-1,tomato,,2027-02-10,4,200,2027-04-15,2027-05-20,,\n");
    keepLog();
    for (String id : List.of("cabbage-1", "tomato-1")) {
      write(id, "sown", "2027-02-20", 2);
      write(id, "off-heat", "2027-03-05", 2);
    }
    assertThat(next("cabbage-1")).containsExactly("moved-out", "outbreak", "ready", "thrown-out");
    assertThat(next("tomato-1")).containsExactly("potted-on", "outbreak", "ready", "thrown-out");
    write("tomato-1", "potted-on", "2027-03-08", 2);
    assertThat(next("tomato-1")).containsExactly("moved-out", "thrown-out");
    assertThat(browser.state().getAsJsonArray("faults")).isEmpty();
  }

  /** What can come next of the trays that stand. */
  private List<String> next(String sowing) {
    return StreamSupport.stream(soFar().getAsJsonArray("groups").spliterator(), false)
        .map(JsonElement::getAsJsonObject)
        .filter(g -> g.get("sowing").getAsString().equals(sowing))
        .filter(g -> !g.get("place").getAsString().isEmpty())
        .flatMap(g -> StreamSupport.stream(g.getAsJsonArray("next").spliterator(), false))
        .map(n -> n.getAsJsonObject().get("event").getAsString())
        .toList();
  }

  private String answered(News news, Map<String, ?> question) throws Exception {
    long id = browser.ask(question);
    news.study(id, "done");
    return browser.get("/api/answer?id=" + id).body();
  }

  /** In winter there is time for lettuce by 1 May; on 20 April it is too late for it. */
  @Test
  void aNewSowingIsOnNoDayThatHasBeen() throws Exception {
    Map<String, Object> lettuce = new HashMap<>();
    lettuce.putAll(Map.of("question", "latest", "goal", 90, "crop", "lettuce", "plants", 50));
    lettuce.put("bedBy", "2027-05-01");
    try (News news = new News(browser)) {
      keepLog();
      on("2027-04-20");
      assertThat(answered(news, lettuce)).contains("new lettuce: on no working day that is");
      browser.post("/api/day", Map.of("winter", "true"));
      assertThat(answered(news, lettuce)).contains("new lettuce: sow by");
    }
  }

  @Test
  void aRowThatMayBeMissingIsAskedForBesideTheForecast() throws Exception {
    try (News news = new News(browser)) {
      keepLog();
      write("cabbage-1", "sown", "2027-02-20", 6);
      on("2027-02-24");
      assertThat(news.forecast().get("doubts").getAsJsonArray()).isEmpty();
      on("2027-03-24");
      assertThat(news.forecast().get("doubts").getAsJsonArray())
          .singleElement()
          .asString()
          .contains("cabbage-1: by the log 6 trays have been in the heat for 32 days");
    }
  }

  @Test
  void aDateThatIsLeftEmptyIsFilledInWithNoDayThatHasBeen() throws Exception {
    String header = Farm.PLAN.lines().findFirst().orElseThrow();
    Files.writeString(
        folder.resolve("sowings.csv"),
        header + ",sow-to\nlettuce-1,lettuce,,,12,880,2027-04-15,2027-05-05,,,2027-03-20\n");
    try (News news = new News(browser)) {
      keepLog();
      on("2027-03-24");
      long id =
          browser.ask(
              Map.of("question", "plan", "goal", 90, "earlier", 0, "later", 0, "minutes", 1));
      JsonObject over = news.study(id, "failed");
      assertThat(over.get("trouble").getAsString())
          .startsWith("no working day is left on which these may be sown: lettuce-1");
    }
  }

  @Test
  void noFileOutsideTheFolderCanBeTakenForALog() {
    for (String key : List.of("so-far", "weather-so-far")) {
      assertThat(browser.edit(Map.of("do", "head", "key", key, "value", "../x.csv")).body())
          .contains("is no table in the scenario's folder");
    }
  }

  @Test
  void savedAsAnotherTheLogOfTheFirstStaysAsItWas() throws Exception {
    keepLog();
    save();
    write("cabbage-1", "sown", "2027-03-01", 6);
    browser.post("/api/save-as", Map.of("name", "small-2.yaml"));
    assertThat(Files.readString(folder.resolve("log.csv"))).isEqualTo(HEADER);
    assertThat(Files.readString(folder.resolve("small-2-so-far.csv")))
        .isEqualTo(HEADER + "cabbage-1,,sown,2027-03-01,,,6\n");
  }

  @Test
  void todayIsTheClocksHeldWithinTheSeason() throws Exception {
    Files.writeString(folder.resolve("log.csv"), HEADER);
    Files.writeString(scenario, Farm.SCENARIO + "so-far: log.csv\n");
    Clock may = Clock.fixed(Instant.parse("2027-05-02T09:00:00Z"), ZoneOffset.UTC);
    assertThat(SoFarTab.of(new Desk(scenario, may).view("")).line())
        .isEqualTo("From 2 May on: 0 trays stand in the house.");
    Clock before = Clock.fixed(Instant.parse("2026-11-02T09:00:00Z"), ZoneOffset.UTC);
    assertThat(SoFarTab.of(new Desk(scenario, before).view("")).today()).isEqualTo("2027-01-11");
  }
}
