package propcap.files.weather;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import propcap.farm.Normals;
import propcap.farm.WeatherRecord.Day;
import propcap.files.text.CsvFile;
import propcap.files.text.Fault;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.Quantity;

/**
 * Twelve monthly means: {@code month,tmin,tmax} with, if they are known, {@code sd} and {@code
 * persistence}.
 */
public final class NormalsFile {
  private static final List<String> NEEDED = List.of("month", "tmin", "tmax");
  private static final List<String> OPTIONAL = List.of("sd", "persistence");
  private static final int MONTHS = 12;
  private static final int MOST_ROWS = 100;

  /** No leap year, and no other meaning. */
  private static final int ANY_YEAR = 2001;

  private NormalsFile() {}

  /**
   * Reads them.
   *
   * @param unit of tmin, tmax and sd
   * @param doubted told of each thing that is unlikely and stops nothing
   * @throws FaultsException with all faults of the file, if there is any
   */
  public static Normals read(Path file, Degrees unit, Consumer<Fault> doubted)
      throws FaultsException {
    Faults faults = new Faults();
    Optional<CsvFile> table = CsvFile.read(file, NEEDED, OPTIONAL, MOST_ROWS, faults);
    List<Normals.Month> months = new ArrayList<>();
    Map<LocalDate, FilePosition> spots = new HashMap<>();
    List<Integer> withoutSpread = new ArrayList<>();
    boolean hasDefaults = false;
    int next = 1;
    for (Fields fields : table.map(CsvFile::fields).orElse(List.of())) {
      int month = fields.count("month", 1, MONTHS);
      if (month > 0 && month != next) {
        fields.fault(
            fields.at(), "month " + month + " where " + next + " is due", "1 to 12, each once");
      }
      next = (month > 0 ? month : next) % MONTHS + 1;
      if (fields.isBlank("sd")) {
        withoutSpread.add(months.size());
      }
      hasDefaults |= OPTIONAL.stream().anyMatch(fields::isBlank);
      spots.put(LocalDate.of(ANY_YEAR, Math.max(1, month), 1), fields.at());
      month(fields, unit).ifPresent(months::add);
    }
    if (!faults.any() && months.size() != MONTHS) {
      faults.add(FilePosition.whole(file), months.size() + " months", "12 months, 1 to 12");
    }
    if (!faults.any()) {
      new WeatherDoubts(
              days(months),
              WeatherDoubts.Each.MONTH,
              spots,
              unit == Degrees.F,
              unit.readAs(),
              faults)
          .tell();
    }
    faults.check(doubted);
    return new Normals(months, hasDefaults).withDefaultSpreads(withoutSpread);
  }

  private static List<Day> days(List<Normals.Month> months) {
    return IntStream.range(0, months.size())
        .mapToObj(
            m ->
                new Day(
                    LocalDate.of(ANY_YEAR, m + 1, 1), months.get(m).minC(), months.get(m).maxC()))
        .toList();
  }

  private static Optional<Normals.Month> month(Fields fields, Degrees unit) {
    double min = fields.number("tmin", Quantity.AIR);
    double max = fields.number("tmax", Quantity.AIR);
    double spread =
        fields.isBlank("sd") ? 0 : unit.differenceToC(fields.number("sd", Quantity.AIR));
    if (spread > Normals.MOST_SPREAD_C) {
      fields.wrong(
          "sd",
          "wider than any climate has",
          "at most " + Math.round(Normals.MOST_SPREAD_C) + " degrees C");
    }
    if (min < max && !Day.canBe(unit.toC(min), unit.toC(max))) {
      fields.fault(
          fields.at(),
          "tmin %s and tmax %s%s"
              .formatted(fields.written("tmin"), fields.written("tmax"), WeatherDoubts.IMPOSSIBLE),
          unit.readAs());
    }
    double persistence =
        fields.isBlank("persistence")
            ? Normals.DEFAULT_PERSISTENCE
            : fields.number("persistence", Quantity.CORRELATION);
    return fields.made(() -> new Normals.Month(unit.toC(min), unit.toC(max), spread, persistence));
  }
}
