package propcap.files;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import propcap.farm.Season;
import propcap.farm.WeatherRecord;
import propcap.farm.WeatherYear;

/** A station's record as it is written: {@code date,tmin,tmax}. */
public final class WeatherFile {
  private static final List<String> COLUMNS = List.of("date", "tmin", "tmax");

  /** Some 270 years of days. */
  private static final int MOST_ROWS = 100_000;

  private WeatherFile() {}

  /**
   * The record's years, each cut to the season.
   *
   * @return at least one
   * @throws FaultsException with all faults of the file, if there is any
   */
  public static List<WeatherYear> read(Path file, Season season) throws FaultsException {
    Faults faults = new Faults();
    List<WeatherYear> years =
        read(file, Spot.whole(file), Optional.of(season), Drafts.NONE, faults);
    if (faults.any() || years.isEmpty()) {
      throw new FaultsException(faults.sorted());
    }
    return years;
  }

  /**
   * A record as a file holds it, to a hundredth of a degree.
   *
   * @param days in the order of their dates
   */
  static String text(List<WeatherRecord.Day> days) {
    StringBuilder text = new StringBuilder(String.join(",", COLUMNS)).append('\n');
    for (WeatherRecord.Day day : days) {
      text.append(day.date()).append(',').append(degrees(day.minC()));
      text.append(',').append(degrees(day.maxC())).append('\n');
    }
    return text.toString();
  }

  private static String degrees(double tempC) {
    BigDecimal rounded = BigDecimal.valueOf(tempC).setScale(2, RoundingMode.HALF_UP);
    BigDecimal bare = rounded.stripTrailingZeros();
    return (bare.scale() < 1 ? rounded.setScale(1, RoundingMode.UNNECESSARY) : bare)
        .toPlainString();
  }

  /** The record's years, cut to the season; none where there is a fault. */
  static List<WeatherYear> read(Node named, Optional<Season> season, Drafts drafts, Faults faults) {
    return SourceText.named("weather", named, faults)
        .map(file -> read(file, named.spot(), season, drafts, faults))
        .orElse(List.of());
  }

  private static List<WeatherYear> read(
      Path file, Spot named, Optional<Season> season, Drafts drafts, Faults faults) {
    Optional<CsvFile> table =
        SourceText.read(file, named, drafts, faults)
            .map(source -> new CsvFile(source, COLUMNS, MOST_ROWS, faults));
    if (table.isEmpty()) {
      return List.of();
    }
    List<WeatherRecord.Day> days = new ArrayList<>();
    boolean datesKnown = !table.get().isOpen();
    Map<LocalDate, Integer> lines = new HashMap<>();
    for (Node.Keyed row : table.get().rows()) {
      Fields fields = new Fields("", row.spot(), row, COLUMNS, faults);
      LocalDate date = fields.date("date");
      double minC = fields.number("tmin", Quantity.DEGREES);
      double maxC = fields.number("tmax", Quantity.DEGREES);
      if (minC > maxC) {
        fields.wrongPair("tmin", "tmax", "above", "tmin at or below tmax");
      }
      if (date == null) {
        datesKnown = false;
        continue;
      }
      Integer before = lines.putIfAbsent(date, row.spot().line());
      if (before != null) {
        fields.fault(
            row.spot(), "date " + date + " again, first on line " + before, "each day once");
      }
      // A day with a fault still counts as covered: that fault is enough.
      days.add(
          fields.sound()
              ? new WeatherRecord.Day(date, minC, maxC)
              : new WeatherRecord.Day(date, 0, 0));
    }
    if (season.isEmpty()) {
      return List.of();
    }
    List<WeatherYear> years = new WeatherRecord(days).yearsCovering(season.get());
    if (years.isEmpty() && datesKnown) {
      faults.add(
          Spot.whole(table.get().file()),
          "no year of the record covers the season "
              + season.get().start()
              + " to "
              + season.get().end(),
          "a year with a row for each of its days");
    }
    return years;
  }
}
