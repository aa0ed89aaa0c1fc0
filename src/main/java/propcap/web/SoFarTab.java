package propcap.web;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.files.CsvText;
import propcap.files.UnsavedTexts;
import propcap.report.PageWords;

/**
 * What the page shows of the season so far.
 *
 * @param file that the log is kept in; empty where none is
 * @param isLogged whether that file is there and can be written in
 * @param isWinter whether the log is left aside
 * @param line how the forecast stands to the day, in a sentence; empty where there is no log
 * @param today the day by the grower or the clock
 * @param isChosen whether it is the grower's
 * @param columns of the log
 * @param events all that can be written
 * @param groups trays that stand alike, and those to be sown; none while something is to mend
 */
record SoFarTab(
    String file,
    boolean isLogged,
    boolean isWinter,
    boolean isOverfull,
    String line,
    String today,
    boolean isChosen,
    List<String> columns,
    List<String> events,
    List<Group> groups) {

  /**
   * Trays of one sowing that stand alike.
   *
   * @param stage where they are in their life, in words
   * @param place empty where they are not sown yet
   * @param trays their names, lowest number first
   * @param next what can come next, the likeliest first
   */
  record Group(
      String sowing,
      String crop,
      String stage,
      String place,
      List<String> trays,
      List<Next> next) {}

  /**
   * What can come next.
   *
   * @param places where the trays can stand after it
   * @param isAlone whether a number of trays is enough to say which are meant
   */
  record Next(String event, List<String> places, boolean isAlone) {}

  static SoFarTab of(Desk.View view) {
    Optional<Path> file = view.reading().written().logFile();
    Optional<Scenario> scenario = view.reading().scenario();
    List<String> columns = file.map(f -> columns(view, f)).orElse(List.of());
    SoFar soFar = scenario.map(Scenario::soFar).orElse(null);
    LocalDate today = held(view.today(), scenario);
    return new SoFarTab(
        file.map(f -> view.folder().name(f)).orElse(""),
        !columns.isEmpty(),
        view.day().isWinter(),
        view.day().isOverfull(),
        file.isEmpty() ? "" : line(view.day(), scenario),
        today.toString(),
        view.day().chosen() != null,
        columns,
        LoggedEvent.words(),
        file.isEmpty() || soFar == null
            ? List.of()
            : StandingTrays.of(scenario.orElseThrow(), soFar, today));
  }

  /** None where it cannot be written in; why, its reader tells. */
  private static List<String> columns(Desk.View view, Path file) {
    try {
      var texts = new UnsavedTexts(view.draft().texts(), view.folder().disk());
      return CsvText.columns(texts.text(file));
    } catch (IOException | IllegalArgumentException e) {
      return List.of();
    }
  }

  private static LocalDate held(LocalDate today, Optional<Scenario> scenario) {
    if (scenario.isEmpty()) {
      return today;
    }
    LocalDate start = scenario.get().season().start();
    LocalDate end = scenario.get().season().end();
    return today.isBefore(start) ? start : today.isAfter(end) ? end : today;
  }

  private static String line(Readings.Day day, Optional<Scenario> scenario) {
    SoFar soFar = scenario.map(Scenario::soFar).orElse(null);
    if (day.isWinter()) {
      return "As before the season: what the log says is left aside.";
    }
    if (soFar == null) {
      return "";
    }
    int trays = (int) soFar.trays().stream().filter(t -> !t.isGone()).count();
    return "From "
        + PageWords.day(soFar.today(), scenario.orElseThrow().season())
        + " on: "
        + PageWords.plural(trays, "tray")
        + (trays == 1 ? " stands" : " stand")
        + " in the house.";
  }
}
