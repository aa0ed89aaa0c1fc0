package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Scenario;
import propcap.files.edit.ScenarioEditor;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.UnsavedTexts;
import propcap.report.Defaults;
import propcap.web.desk.Desk;

/** What the page shows in grey is what an empty field means. */
class DefaultsTest {
  private static final String BARE =
      """
      crops:
        cabbage:
          cells: 72
          germination: {rate: 90 %}
          emergence: {base: 1 C, optimum: 25 C, ceiling: 38 C, at: 20 C, half-by: 3.5 days, most-by: 5.5 days}
          germinate-in: [Chamber]
          growing-on: {base: 4 C, optimum: 24 C, at: 16 C, takes: 28 days, holds: 10 days}
          potting-on: {when: always, takes: 9 days, holds: 8 days, pots-per-tray: 18}
          hardening: {takes: 7 days}
        lettuce:
          cells: 72
          germination: {rate: 90 %}
          emergence: {base: 1 C, optimum: 25 C, ceiling: 38 C, at: 20 C, half-by: 3.5 days, most-by: 5.5 days}
          germinate-in: [Chamber]
          growing-on: {base: 4 C, optimum: 24 C, at: 16 C, takes: 28 days, holds: 10 days}
          hardening: {takes: 7 days}
      """;

  @TempDir Path folder;

  /**
   * What is read of all that has defaults; the weather record does not tell whether it is equal.
   */
  private List<Object> with(
      Map<String, String> crop, Map<String, String> place, Map<String, String> of)
      throws Exception {
    Path scenario = Farm.in(folder);
    Files.writeString(folder.resolve("crops.yaml"), BARE);
    Files.writeString(
        scenario,
        Farm.SCENARIO.replace("{heat-to: 14 C, lift: 5, vent-at: 26 C}", "{heat-to: 14 C}"));
    ScenarioEditor editor = new ScenarioEditor(scenario, UnsavedTexts.none());
    for (Map.Entry<String, String> key : crop.entrySet()) {
      editor.setCrop("cabbage", key.getKey(), key.getValue());
    }
    for (Map.Entry<String, String> key : place.entrySet()) {
      editor.setPlace("House", key.getKey(), key.getValue());
    }
    for (Map.Entry<String, String> key : of.entrySet()) {
      editor.setHead(key.getKey(), key.getValue());
    }
    Scenario read = ScenarioReader.read(scenario, editor.unsaved()).sound();
    return List.of(read.crops(), read.places(), read.frostAtC(), read.rounds(), read.labour());
  }

  @Test
  void writtenOutTheyChangeNothing() throws Exception {
    List<Object> bare = with(Map.of(), Map.of(), Map.of());
    assertThat(with(Defaults.CROP, Defaults.PLACE, Defaults.HEAD)).isEqualTo(bare);
    for (String key : Defaults.CROP.keySet()) {
      assertThat(with(Map.of(key, other(Defaults.CROP.get(key))), Map.of(), Map.of()))
          .as(key)
          .isNotEqualTo(bare);
    }
  }

  /** The same unit with a number a little higher: the twin that must not pass. */
  private static String other(String text) {
    String number = text.split("[ %]", 2)[0];
    return text.equals("0")
        ? "0.5"
        : Integer.parseInt(number) + 1 + text.substring(number.length());
  }

  @Test
  void thePageHasNoneOfItsOwn() throws Exception {
    String page = Files.readString(Path.of("src/main/resources/propcap/web/crops.js"));
    for (Map.Entry<String, String> key : Defaults.CROP.entrySet()) {
      String row =
          page.lines()
              .filter(l -> l.contains("'" + key.getKey() + "',"))
              .collect(Collectors.joining());
      assertThat(row).as(key.getKey()).isNotEmpty().doesNotContain(key.getValue());
    }
    assertThat(State.of(new Desk(Farm.in(folder)).view("")).getAsJsonObject("defaults").toString())
        .contains("\"leave-at\":\"50 %\"");
  }
}
