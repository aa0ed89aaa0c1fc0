package propcap.files.scenario;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.LoggedTray;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.files.log.LogDates;
import propcap.files.log.LogRow;
import propcap.files.log.LogTray;
import propcap.files.log.LogTrays;
import propcap.files.text.CsvFile;
import propcap.files.text.Fault;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.FilePosition;
import propcap.files.text.SourceText;
import propcap.past.WrittenTray;

/**
 * Reads a log of trays of any year, {@code sowing,tray,event,date,plants}, to learn from it. A
 * column {@code crop} names crops of sowings that are not in the scenario's plan, a column {@code
 * place} on the row of {@code off-heat} the table.
 */
public final class TrayLogReader {
  private TrayLogReader() {}

  /**
   * A log that was read.
   *
   * @param scenario whose crops, plan, places and weather the log was read with
   * @param trays in the order in which they come first
   * @param warnings what in all these files can be meant but seldom is; none stops anything
   */
  public record TrayLog(Scenario scenario, List<LoggedTray> trays, List<Fault> warnings) {
    public TrayLog {
      trays = List.copyOf(trays);
      warnings = List.copyOf(warnings);
    }
  }

  /**
   * Reads a log and the scenario that says what its sowings are.
   *
   * @throws FaultsException with all faults of all these files, if there is any
   */
  public static TrayLog read(Path log, Path scenarioYaml) throws FaultsException {
    Faults faults = new Faults();
    Optional<Scenario> scenario = ScenarioReader.read(scenarioYaml, faults);
    List<LoggedTray> trays =
        SourceText.read(log, FilePosition.whole(log), faults)
            .map(source -> LogRow.table(source, faults))
            .map(table -> trays(table, scenario, faults))
            .orElse(List.of());
    faults.check();
    return new TrayLog(scenario.orElseThrow(), trays, faults.warnings());
  }

  private static List<LoggedTray> trays(CsvFile table, Optional<Scenario> scenario, Faults faults) {
    LogDates dates = new LogDates();
    List<LogRow> rows = table.fields().stream().map(LogRow::read).toList();
    LogTrays trays = new LogTrays(rows, scenario, Set.of());
    for (LogRow row : rows) {
      LocalDate date = row.date();
      // Whether a crop was always potted on in another year, today's crop list does not say.
      List<LogTray> its = trays.of(row, Crop.PottingOn.When.IF_HELD);
      if (date != null && scenario.isPresent()) {
        Season season = scenario.get().season();
        dates.add(row.fields(), date, season);
        row.event().filter(LoggedEvent::isTimed).ifPresent(e -> inSeason(row, date, season));
      }
      trays.add(row, its);
      scenario.ifPresent(s -> cellsHold(row, its, s));
    }
    scenario.ifPresent(s -> dates.doubt(s.season(), faults));
    if (rows.isEmpty() && !faults.any()) {
      faults.add(FilePosition.whole(table.file()), "no tray in the log", "at least one row");
    }
    List<LoggedTray> logged = new ArrayList<>();
    if (scenario.isPresent() && !faults.any()) {
      trays.all().forEach(t -> tray(t, scenario.get()).ifPresent(logged::add));
    }
    return logged;
  }

  /** What can be learned from; empty where nothing was written after the heat. */
  private static Optional<LoggedTray> tray(LogTray tray, Scenario scenario) {
    List<LoggedTray.Entry> entries =
        tray.entries().stream()
            .filter(e -> e.event() != LoggedEvent.COUNTED)
            .map(e -> new LoggedTray.Entry(e.event(), e.date(), e.plants()))
            .toList();
    Optional<String> table = tray.at(LoggedEvent.OFF_HEAT).map(WrittenTray.Entry::place);
    return entries.isEmpty()
        ? Optional.empty()
        : tray.crop()
            .map(
                crop ->
                    new LoggedTray(
                        tray.sowing(), tray.name(), crop, table(table, scenario), entries));
  }

  /** The one of a name; the first that is open where none is written. */
  private static Place table(Optional<String> name, Scenario scenario) {
    return scenario.places().stream()
        .filter(p -> name.map(p.name()::equals).orElse(p.kind() == PlaceKind.TABLE && p.isOpen()))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("a scenario has an open table"));
  }

  /** A tray of other cells than the list's can be meant. */
  private static void cellsHold(LogRow row, List<LogTray> trays, Scenario scenario) {
    Double plants = row.plants();
    for (LogTray tray : trays) {
      Crop its = tray.crop().map(scenario.crops()::get).orElse(null);
      if (its != null && plants != null && plants > its.cells() && tray.isFirstTooMany()) {
        row.fields()
            .doubt(
                "plants",
                "more than the " + its.cells() + " cells of a tray of " + its.name(),
                "the plants of one tray");
      }
    }
  }

  private static void inSeason(LogRow row, LocalDate date, Season season) {
    if (dayIn(season, date).isEmpty()) {
      row.fields()
          .fault(
              "date",
              "date " + date + " is in no year's season",
              "a date from "
                  + season.start().toString().substring(5)
                  + " to "
                  + season.end().toString().substring(5)
                  + ", as in the scenario, of any year");
    }
  }

  /** The same day of the year in the scenario's season. */
  private static Optional<LocalDate> dayIn(Season season, LocalDate date) {
    LocalDate that = date.withYear(season.start().getYear());
    return Stream.of(that, that.plusYears(1)).filter(season::contains).findFirst();
  }
}
