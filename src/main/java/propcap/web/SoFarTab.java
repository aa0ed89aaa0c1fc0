package propcap.web;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.files.edit.CsvText;
import propcap.files.scenario.WrittenScenario;
import propcap.report.PageWords;
import propcap.web.desk.DeskView;
import propcap.web.desk.Readings;
import propcap.web.request.RefusedException;

/**
 * What the page shows of the season so far.
 *
 * @param file that the log is kept in; empty where none is
 * @param isLogged whether that file is there and can be written in
 * @param readOnly why the page does not write in it, and what to do; empty where it does
 * @param isWinter whether the log is left aside
 * @param line how the forecast stands to the day, in a sentence; empty where there is no log
 * @param today the day by the grower, the log or the clock
 * @param whyToday why it is this one
 * @param isChosen whether it is the grower's
 * @param isClock whether it is the clock's
 * @param afterLast the morning after the log's last row; empty where there is none
 * @param columns of the log
 * @param events all that can be written
 * @param groups trays that stand alike, and those to be sown; none while something is to mend
 */
record SoFarTab(
    String file,
    boolean isLogged,
    String readOnly,
    boolean isWinter,
    boolean isOverfull,
    String line,
    String today,
    String whyToday,
    boolean isChosen,
    boolean isClock,
    String afterLast,
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
   * @param plants what those counted are, in words; empty where nobody counts them
   * @param countedUntil the last day of which they may be written by now; empty: any
   * @param standWindow days after leaving the heat until the last seedlings are up
   */
  record Next(
      String event,
      List<String> places,
      boolean isAlone,
      String plants,
      String countedUntil,
      double standWindow) {}

  static SoFarTab of(DeskView view) {
    Optional<Path> file = view.reading().written().logFile();
    Optional<Scenario> scenario = view.reading().scenario();
    SoFar soFar = scenario.map(Scenario::soFar).orElse(null);
    String readOnly = file.map(f -> readOnly(view, f)).orElse("");
    List<String> columns =
        file.filter(f -> readOnly.isEmpty()).map(f -> columns(view, f)).orElse(List.of());
    return new SoFarTab(
        file.map(f -> view.folder().name(f)).orElse(""),
        !columns.isEmpty(),
        readOnly,
        view.day().isWinter(),
        view.day().isOverfull(),
        file.isEmpty() ? "" : line(view.day(), scenario),
        held(view.today(), view.reading().written()).toString(),
        whyToday(view),
        view.day().chosen() != null,
        view.today().equals(view.clock()) && view.day().chosen() == null,
        Readings.lastRow(view.reading().written()).map(d -> d.plusDays(1).toString()).orElse(""),
        columns,
        LoggedEvent.words(),
        file.isEmpty() || soFar == null
            ? List.of()
            : StandingTrays.of(scenario.orElseThrow(), soFar));
  }

  private static String readOnly(DeskView view, Path log) {
    try {
      var unused = view.folder().inside(log);
      return "";
    } catch (RefusedException e) {
      return "The log "
          + view.folder().name(log)
          + " lies outside the scenario’s folder, where the page writes nothing: it is read, and"
          + " not written in. To write in it here, move it beside "
          + view.folder().name(view.scenario())
          + " and put so-far: "
          + log.getFileName()
          + " there.";
    }
  }

  private static String whyToday(DeskView view) {
    LocalDate today = view.today();
    String isHeld =
        held(today, view.reading().written()).equals(today)
            ? ""
            : " is outside the season: its nearest is taken.";
    if (view.day().chosen() != null) {
      return isHeld.isEmpty()
          ? "The day that you chose; it stays until you choose another or Propcap is stopped."
          : written(today) + isHeld;
    }
    if (today.equals(view.clock())) {
      return isHeld.isEmpty()
          ? "The clock’s day."
          : "The clock’s day, " + written(today) + "," + isHeld;
    }
    return "The morning after the log’s last row, since the clock’s day, "
        + written(view.clock())
        + (view.clock().isBefore(today) ? ", is before it." : ", is after the season.");
  }

  private static String written(LocalDate day) {
    return day.format(DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH));
  }

  /** None where it cannot be written in; why, its reader tells. */
  private static List<String> columns(DeskView view, Path file) {
    try {
      return CsvText.columns(view.texts().text(file));
    } catch (IOException | IllegalArgumentException e) {
      return List.of();
    }
  }

  /** A day, or the season's nearest. */
  private static LocalDate held(LocalDate day, WrittenScenario written) {
    LocalDate notBefore = Readings.seasonDay(written, "start").filter(day::isBefore).orElse(day);
    return Readings.seasonDay(written, "end").filter(notBefore::isAfter).orElse(notBefore);
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
    return "From %s on: %s %s in the house."
        .formatted(
            PageWords.day(soFar.today(), scenario.orElseThrow().season()),
            PageWords.plural(trays, "tray"),
            trays == 1 ? "stands" : "stand");
  }
}
