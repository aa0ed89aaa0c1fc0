package propcap.files;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import propcap.farm.CountedTray;
import propcap.files.text.CsvFile;
import propcap.files.text.Fault;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.Quantity;
import propcap.files.text.SourceText;

/**
 * Reads the counts of a germination test: {@code lot,crop,temperature,tray,seeds,time,emerged}, one
 * inspection of one tray a row. The header says how they are written: {@code temperature} with its
 * unit, or {@code temperature-c} or {@code temperature-f} plain; {@code time} in days or {@code
 * time-hours}; {@code emerged} by then, or {@code new} since the inspection before.
 */
public final class CountsReader {
  private static final List<List<String>> COLUMNS =
      List.of(
          List.of("lot"),
          List.of("crop"),
          List.of("temperature", "temperature-c", "temperature-f"),
          List.of("tray"),
          List.of("seeds"),
          List.of("time", "time-hours"),
          List.of("emerged", "new"));

  private static final int MOST_ROWS = 100_000;
  private static final int HOURS_A_DAY = 24;

  /** Slow seed after a chilling takes some 90 days; common practice. */
  private static final double LONG_TEST_DAYS = 150;

  /** Two ways to write one temperature must not make two of it: 69.8 F is 21 C. */
  private static final double ROUNDING_C = 1e6;

  private final List<String> columns;
  private final Map<List<Object>, CountRows> trays = new LinkedHashMap<>();
  private boolean doubtedTime;

  private CountsReader(List<String> columns) {
    this.columns = columns;
  }

  /**
   * The trays, in the file's order.
   *
   * @param doubted told of each thing that is unlikely and stops nothing
   * @throws FaultsException with all faults of the file, if there is any
   */
  public static List<CountedTray> read(Path countsCsv, Consumer<Fault> doubted)
      throws FaultsException {
    Faults faults = new Faults();
    Optional<SourceText> source = SourceText.read(countsCsv, FilePosition.whole(countsCsv), faults);
    List<CountedTray> trays = new ArrayList<>();
    if (source.isPresent()) {
      List<String> header = CsvFile.headerOf(source.get());
      List<String> columns =
          COLUMNS.stream()
              .map(
                  names -> names.stream().filter(header::contains).findFirst().orElse(names.get(0)))
              .toList();
      CsvFile table = new CsvFile(source.get(), columns, List.of(), MOST_ROWS, faults);
      CountsReader reader = new CountsReader(columns);
      table.fields().forEach(reader::row);
      reader.trays.values().forEach(rows -> rows.tray().ifPresent(trays::add));
      if (table.rows().isEmpty() && !table.isOpen() && !faults.any()) {
        faults.add(
            FilePosition.whole(countsCsv), "no count in the table", "a row for each inspection");
      }
    }
    faults.check(doubted);
    return trays;
  }

  private void row(Fields fields) {
    Optional<String> crop = fields.name("crop");
    Optional<String> lot = fields.isBlank("lot") ? crop : fields.name("lot");
    Optional<String> tray = fields.name("tray");
    double tempC = temperature(fields);
    int seeds = fields.count("seeds", 1, CountRows.MOST_SEEDS);
    double days = time(fields);
    String counted = columns.get(columns.size() - 1);
    int count = fields.count(counted, 0, CountRows.MOST_SEEDS);
    if (crop.isEmpty() || lot.isEmpty() || tray.isEmpty() || Double.isNaN(tempC)) {
      return;
    }
    trays
        .computeIfAbsent(
            List.of(crop.get(), lot.get(), tempC, tray.get()),
            t -> new CountRows(lot.get(), crop.get(), tempC, tray.get()))
        .add(fields, seeds, days, counted, count);
  }

  private double temperature(Fields fields) {
    double tempC =
        switch (columns.get(2)) {
          case "temperature-c" -> fields.number("temperature-c", Quantity.TEMPERATURE, "C");
          case "temperature-f" -> fields.number("temperature-f", Quantity.TEMPERATURE, "F");
          default -> fields.number("temperature", Quantity.TEMPERATURE);
        };
    return Math.rint(tempC * ROUNDING_C) / ROUNDING_C;
  }

  private double time(Fields fields) {
    boolean inHours = columns.contains("time-hours");
    String column = inHours ? "time-hours" : "time";
    double time = fields.number(column, Quantity.DAYS, "days");
    double days = inHours ? time / HOURS_A_DAY : time;
    if (days > LONG_TEST_DAYS && !doubtedTime) {
      doubtedTime = true;
      fields.doubt(
          column,
          "longer than a germination test",
          inHours ? "hours since the sowing" : "hours belong under time-hours");
    }
    return days;
  }
}
