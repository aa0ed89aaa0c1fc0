package propcap.files;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import propcap.farm.LoggedTray;
import propcap.farm.Scenario;

/**
 * Reads a log of trays: {@code sowing,tray,event,date,plants}, one event a row, those of a tray in
 * the order of their dates. A column {@code crop} names crops of sowings that are not in the
 * scenario's plan, a column {@code place} on the row of {@code off-heat} the table.
 */
public final class TrayLogReader {
  static final List<String> COLUMNS = List.of("sowing", "tray", "event", "date", "plants");
  static final List<String> OPTIONAL = List.of("crop", "place");
  private static final int MOST_ROWS = 500_000;

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
        CsvFile.read(log, COLUMNS, OPTIONAL, MOST_ROWS, faults)
            .map(table -> trays(table, scenario, faults))
            .orElse(List.of());
    faults.check();
    return new TrayLog(scenario.orElseThrow(), trays, faults.warnings());
  }

  /** A tray's key: the name of its sowing and its own. */
  private record Key(String sowing, String tray) {}

  private static List<LoggedTray> trays(CsvFile table, Optional<Scenario> scenario, Faults faults) {
    Map<Key, LogRows> byKey = new LinkedHashMap<>();
    LogDates dates = new LogDates();
    for (Fields fields : table.fields()) {
      Optional<String> sowing = fields.name("sowing");
      Optional<String> tray = fields.name("tray");
      LocalDate date = fields.date("date");
      LogRows rows =
          sowing.isPresent() && tray.isPresent()
              ? byKey.computeIfAbsent(
                  new Key(sowing.get(), tray.get()), k -> new LogRows(k.sowing(), k.tray()))
              // What is wrong with the row by itself is reported all the same.
              : new LogRows("", "");
      if (date != null) {
        scenario.ifPresent(s -> dates.add(fields, date, s.season()));
      }
      rows.add(fields, date, scenario);
    }
    scenario.ifPresent(s -> dates.doubt(s.season(), faults));
    if (byKey.isEmpty() && !faults.any()) {
      faults.add(FilePosition.whole(table.file()), "no tray in the log", "at least one row");
    }
    List<LoggedTray> trays = new ArrayList<>();
    scenario.ifPresent(s -> byKey.values().forEach(r -> r.tray(s).ifPresent(trays::add)));
    return trays;
  }
}
