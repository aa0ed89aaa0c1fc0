package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.net.URLEncoder;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import propcap.disk.FileSet;
import propcap.files.edit.Starter;

/** What the page gets from the server: the state, forecasts, answers, and news of them. */
class PageTest extends Served {
  private News news;

  @BeforeEach
  void aPage() throws Exception {
    news = new News(browser);
  }

  @AfterEach
  void close() throws IOException {
    news.close();
  }

  private static JsonObject json(HttpResponse<String> reply) {
    assertThat(reply.statusCode()).as(reply.body()).isEqualTo(200);
    return JsonParser.parseString(reply.body()).getAsJsonObject();
  }

  @Test
  void theForecastComesFromFewSpringsFirstAndThenFromAll() throws Exception {
    browser.post("/api/outlook", Map.of("file", ""));
    news.await("forecast", told -> true);
    // It may be whole already by the time it is fetched; what counts is that it gets there.
    JsonObject first = json(browser.get("/api/forecast"));
    assertThat(first.get("seasons").getAsInt()).isIn(20, 100, 1000);
    JsonObject whole = news.forecast();
    assertThat(whole.get("seasons").getAsInt()).isEqualTo(1000);
    assertThat(whole.get("verdict").getAsString())
        .isEqualTo("◐ 0 of 2 sowings are safe and 2 at risk.");
  }

  @Test
  void aScenarioMayHaveSpacesAndAmpersandsInItsName() throws Exception {
    String name = "house & yard + 1.yaml";
    Files.writeString(folder.resolve(name), "extends: small.yaml\nname: House & yard\n");
    assertThat(browser.post("/api/open-beside", Map.of("name", name)).statusCode()).isEqualTo(200);
    String path = "/api/state?file=" + URLEncoder.encode(name, StandardCharsets.UTF_8);
    assertThat(json(browser.get(path)).get("shown").getAsString()).isEqualTo(name);
  }

  @Test
  void lessRoomBringsFewerPlants() throws Exception {
    double before = news.forecast().get("mean").getAsDouble();
    assertThat(browser.spaces("House", 8).statusCode()).isEqualTo(200);
    assertThat(news.forecast().get("mean").getAsDouble()).isLessThan(before);
  }

  @Test
  void theSectionsAreThoseOfTheReport() throws Exception {
    news.forecast();
    browser.post("/api/forecast/save", Map.of());
    String report = Files.readString(folder.resolve("results/small/report.html"));
    for (String id : List.of("plants", "room", "waiting", "losses", "moves")) {
      String section = browser.get("/api/section?id=" + id).body().strip();
      assertThat(report).as(id).contains(section);
    }
    assertThat(report).contains(browser.get("/report.css").body().strip());
  }

  /** Whoever sits at the page has no options to give. */
  @Test
  void resultsThatCannotBeSavedAreRefusedInThePagesWords() throws Exception {
    news.forecast();
    Path results = folder.resolve("results/small");
    Files.createDirectories(results);
    Path notes = Files.writeString(results.resolve("report.html"), "my own notes");
    assertThat(browser.post("/api/forecast/save", Map.of()).body())
        .contains("this is none of Propcap's making; move it elsewhere")
        .doesNotContain("--");
    Files.delete(notes);

    browser.post("/api/forecast/save", Map.of());
    Path kept = FileSet.outOfSight(results, "forecast");
    Files.writeString(kept, Files.readString(kept).replace("small.yaml", "north/small.yaml"));
    assertThat(browser.post("/api/forecast/save", Map.of()).body())
        .contains("this holds the results of ", "north/small.yaml, not of ", "; move it elsewhere")
        .doesNotContain("--");
  }

  @Test
  void aFaultIsShownAtItsFieldInTheCheckersWords() {
    browser.edit(Map.of("do", "place", "name", "Chamber", "key", "spaces", "value", "many"));
    JsonObject fault = browser.state().getAsJsonArray("faults").get(0).getAsJsonObject();
    assertThat(fault.get("list").getAsString()).isEqualTo("places");
    assertThat(fault.get("row").getAsInt()).isZero();
    assertThat(fault.get("key").getAsString()).isEqualTo("spaces");
    assertThat(fault.get("words").getAsString())
        .isEqualTo("spaces of Chamber is 'many'; a whole number from 0 to 1000000");
  }

  @Test
  void anAnswerIsSavedWhereAndAsTheCommandWouldSaveIt() throws Exception {
    String file =
        json(browser.post("/api/what-if", Map.of("title", "More"))).get("file").getAsString();
    assertThat(
            browser
                .post(
                    "/api/edit",
                    Map.of(
                        "file",
                        file,
                        "version",
                        browser.state().get("version").getAsLong(),
                        "edits",
                        List.of(
                            Map.of(
                                "do", "place", "name", "Chamber", "key", "spaces", "value", "30"))))
                .statusCode())
        .isEqualTo(200);
    long id = browser.ask(Map.of("question", "compare"));
    news.study(id, "done");
    JsonObject answer = json(browser.get("/api/answer?id=" + id));
    assertThat(answer.get("html").getAsString())
        .contains("More")
        .contains("<svg")
        .contains("<table");
    json(browser.post("/api/answer/save", Map.of("id", id)));
    assertThat(folder.resolve("results/small-compare/comparison.html")).exists();
    assertThat(folder.resolve("results/small-compare/comparison.json")).exists();
  }

  private static final Map<String, Object> LETTUCE_2 =
      Map.of(
          "do",
          "add-sowing",
          "keys",
          Map.of(
              "id", "lettuce-2",
              "crop", "lettuce",
              "sow", "2027-03-08",
              "trays", "12",
              "plants-needed", "880",
              "bed-from", "2027-04-20",
              "bed-by", "2027-05-12"));

  /** The forecast needs no comparison: it comes, and why nothing stands beside it is told. */
  @Test
  void scenariosInDifferentCurrenciesAreNotSubtracted() throws Exception {
    Files.writeString(
        folder.resolve("euros.yaml"),
        """
        extends: small.yaml
        name: Euros
        money:
          currency: EUR
          plants: {default: {worth: 0.3, late: 0.1, short: 0.4}}
          tray: 1
          pot-tray: 2
        """);
    Files.writeString(
        folder.resolve("dollars.yaml"),
        "extends: euros.yaml\nname: Dollars\nmoney: {currency: USD}\n");
    json(browser.post("/api/open-beside", Map.of("name", "euros.yaml")));
    json(browser.post("/api/open-beside", Map.of("name", "dollars.yaml")));
    browser.post("/api/outlook", Map.of("file", ""));
    JsonObject failed =
        news.await("study", told -> told.get("stage").getAsString().equals("failed"));
    assertThat(failed.get("trouble").getAsString())
        .startsWith("Euros reckons in EUR and Dollars in USD");
    JsonObject forecast = json(browser.get("/api/forecast"));
    assertThat(forecast.get("isWhole").getAsBoolean()).isTrue();
    assertThat(forecast.get("sideBySide").getAsString()).isEmpty();
  }

  @Test
  void aQuestionThatIsStoppedIsOver() throws Exception {
    long id = browser.ask(Map.of("question", "bottleneck", "steps", 20));
    news.study(id, "running");
    json(browser.post("/api/stop", Map.of("id", id)));
    news.study(id, "stopped");
    assertThat(browser.get("/api/answer?id=" + id).statusCode()).isEqualTo(404);
    assertThat(browser.get("/api/studies").body()).isEqualTo("[]");
  }

  /** Nobody waits in line to be told of a slip. */
  @Test
  void whatAQuestionNamesIsLookedAtBeforeItWaits() {
    for (Map<String, Object> asked :
        List.<Map<String, Object>>of(
            Map.of("question", "shift", "match", "tulip", "from", -7, "to", 7, "step", 7),
            Map.of(
                "question",
                "plan",
                "goal",
                90,
                "earlier",
                1,
                "later",
                1,
                "minutes",
                1,
                "giveUp",
                "tulip"),
            Map.of("question", "latest", "match", "tulip", "goal", 90, "crop", ""),
            size("House", "80", "tulip"))) {
      HttpResponse<String> refused = browser.post("/api/ask", asked);
      assertThat(refused.statusCode()).as(asked.toString()).isEqualTo(400);
      assertThat(refused.body()).contains("no sowing's id matches 'tulip'", "cabbage or cabbage-1");
    }
    assertThat(browser.get("/api/studies").body()).isEqualTo("[]");
  }

  private static Map<String, Object> size(String place, String least, String match) {
    return Map.of(
        "question",
        "size",
        "place",
        place,
        "from",
        40,
        "to",
        80,
        "step",
        40,
        "seasons",
        100,
        "measure",
        "met",
        "least",
        least,
        "match",
        match);
  }

  @Test
  void aCropsNameWithoutAStarIsUnderstood() throws Exception {
    long id =
        browser.ask(
            Map.of("question", "shift", "match", "lettuce", "from", -1, "to", 0, "step", 1));
    news.study(id, "done");
  }

  @Test
  void sideBySideEachPlanIsOfItsOwnSowings() throws Exception {
    json(browser.post("/api/what-if", Map.of("title", "More")));
    String plan = browser.get("/api/state?file=more.yaml").body();
    long version = JsonParser.parseString(plan).getAsJsonObject().get("version").getAsLong();
    json(
        browser.post(
            "/api/edit",
            Map.of("version", version, "file", "more.yaml", "edits", List.of(LETTUCE_2))));
    JsonObject forecast = news.forecast();
    while (forecast.get("sideBySide").getAsString().isEmpty()) {
      news.await("forecast", told -> true);
      forecast = json(browser.get("/api/forecast"));
    }
    assertThat(forecast.get("sideBySide").getAsString()).contains("of 2", "of 3");
    String changed = browser.get("/api/state?file=more.yaml").body();
    assertThat(JsonParser.parseString(changed).getAsJsonObject().getAsJsonArray("changed"))
        .extracting(JsonElement::getAsString)
        .containsExactly("more.yaml");
  }

  /** Its best until then is an answer: nobody's minutes are lost. */
  @Test
  void aSearchForABetterPlanThatIsStoppedAnswers() throws Exception {
    long id =
        browser.ask(Map.of("question", "plan", "goal", 90, "earlier", 1, "later", 1, "minutes", 1));
    news.await(
        "study", told -> told.get("id").getAsLong() == id && told.get("share").getAsDouble() > 0);
    json(browser.post("/api/stop", Map.of("id", id)));
    news.study(id, "done");
    JsonObject answer = json(browser.get("/api/answer?id=" + id));
    assertThat(answer.get("html").getAsString()).contains("<table");
  }

  private static Map<String, Object> latest(String crop, String bedBy) {
    return Map.of(
        "question", "latest", "match", "", "goal", 90, "crop", crop, "plants", 50, "bedBy", bedBy);
  }

  @Test
  void untilWhenToSowIsAnsweredOfACropBesidesThePlan() throws Exception {
    long id = browser.ask(latest("lettuce", "2027-02-27"));
    news.study(id, "done");
    assertThat(json(browser.get("/api/answer?id=" + id)).get("html").getAsString())
        .contains("new lettuce")
        .contains("The last day to sow")
        .contains("What was filled in")
        .contains("<svg");
    assertThat(browser.post("/api/ask", latest("lettuce", "soon")).body())
        .contains("bedBy must be a day such as 2027-07-01");
    assertThat(browser.post("/api/ask", latest("tulip", "2027-02-27")).body())
        .contains("the crop list lacks 'tulip'");
  }

  /** Who left trays empty can ask for them, and for nothing else. */
  /** The log, the plan and other tables lie in the same folder. */
  @Test
  void onlyWeatherRecordsAreOfferedAndAnInventedOneIsToldAsSuch() throws Exception {
    Files.writeString(folder.resolve("log.csv"), "date,sowing,event,trays\n");
    assertThat(browser.state().getAsJsonArray("records").toString()).isEqualTo("[\"weather.csv\"]");
    assertThat(browser.state().get("isExampleWeather").getAsBoolean()).isFalse();
    Path begun = Files.createDirectory(folder.resolve("begun"));
    assertThat(Starter.write(begun)).anyMatch(file -> file.endsWith("weather.csv"));
    for (Path example :
        List.of(begun.resolve("weather.csv"), Path.of("demo-data", "weather.csv"))) {
      Files.copy(example, folder.resolve("weather.csv"), StandardCopyOption.REPLACE_EXISTING);
      assertThat(browser.state().get("isExampleWeather").getAsBoolean()).isTrue();
    }
  }

  @Test
  void whatIsLeftEmptyIsFoundByThoseWhoCan() throws Exception {
    browser.post(
        "/api/edit",
        Map.of(
            "file",
            "",
            "version",
            browser.state().get("version").getAsLong(),
            "edits",
            List.of(Map.of("do", "sowing", "row", 1, "keys", Map.of("trays", "")))));
    assertThat(browser.state().get("toFind").getAsInt()).isOne();
    assertThat(browser.state().getAsJsonArray("faults")).hasSize(1);
    assertThat(browser.state().getAsJsonArray("faults").toString())
        .contains("leave it empty, and under Questions “Is there a better plan?” finds it")
        .doesNotContain("propcap");
    assertThat(browser.post("/api/ask", Map.of("question", "bottleneck", "steps", 1)).body())
        .contains("mend the faults");
    long id =
        browser.ask(Map.of("question", "plan", "goal", 90, "earlier", 0, "later", 0, "minutes", 1));
    json(browser.post("/api/stop", Map.of("id", id)));
  }

  /** A form for each, in their order; a field that hangs on the plan is filled in by the page. */
  @Test
  void theQuestionsAreServedWithTheirFields() throws Exception {
    JsonArray questions = browser.state().getAsJsonArray("questions");
    List<String> names = new ArrayList<>();
    questions.forEach(each -> names.add(each.getAsJsonObject().get("name").getAsString()));
    assertThat(names)
        .containsExactly(
            "compare", "bottleneck", "size", "shift", "latest", "plan", "calendar", "order", "now");
    JsonObject goal =
        questions.get(5).getAsJsonObject().getAsJsonArray("fields").get(0).getAsJsonObject();
    assertThat(goal.get("key").getAsString()).isEqualTo("goal");
    assertThat(goal.get("value").getAsString()).isEqualTo("90");
  }

  @Test
  void aQuestionThatMakesNoSenseSaysWhatWould() {
    assertThat(browser.post("/api/ask", Map.of("question", "compare")).body())
        .contains("put a what-if beside");
    assertThat(browser.post("/api/ask", size("Chambre", "90", "*")).body())
        .contains("no place is named 'Chambre'; there are Chamber, House, Yard");
    assertThat(browser.post("/api/ask", size("House", "lots", "*")).statusCode()).isEqualTo(400);
  }
}
