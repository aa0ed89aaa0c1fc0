package propcap.files.weather;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import propcap.farm.Season;
import propcap.farm.WeatherRecord;
import propcap.farm.WeatherYear;
import propcap.files.text.CsvFile;
import propcap.files.text.Fault;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.Node;
import propcap.files.text.Quantity;
import propcap.files.text.SourceText;
import propcap.files.text.UnsavedTexts;

/**
 * A station's record as it is written: {@code date,tmin,tmax} in degrees C, or {@code
 * date,tmin-f,tmax-f} in degrees F.
 */
public final class WeatherFile {
  private static final List<String> COLUMNS = List.of("date", "tmin", "tmax");
  private static final List<String> COLUMNS_IN_F = List.of("date", "tmin-f", "tmax-f");

  /** Some 270 years of days. */
  private static final int MOST_ROWS = 100_000;

  /**
   * The record's years, each cut to the season.
   *
   * @param doubted told of each thing that is unlikely and stops nothing
   * @return at least one
   * @throws FaultsException with all faults of the file, if there is any
   */
  public static List<WeatherYear> read(Path file, Season season, Consumer<Fault> doubted)
      throws FaultsException {
    Faults faults = new Faults();
    List<WeatherYear> years =
        read(file, FilePosition.whole(file), Optional.of(season), UnsavedTexts.none(), faults);
    faults.check(doubted);
    return years;
  }

  /**
   * A record as a file holds it, to a hundredth of a degree.
   *
   * @param days in the order of their dates
   */
  public static String text(List<WeatherRecord.Day> days) {
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

  /** Whether a table's head is a record's, whatever its rows are. */
  public static boolean isRecord(String text) {
    List<String> names =
        text.lines()
            .filter(line -> !line.isBlank())
            .findFirst()
            .map(head -> List.of(head.strip().toLowerCase(Locale.ROOT).split("\\s*[,;\t]\\s*")))
            .orElse(List.of());
    return names.containsAll(COLUMNS) || names.containsAll(COLUMNS_IN_F);
  }

  /** The record's years, cut to the season; none where there is a fault. */
  public static List<WeatherYear> read(
      Node named, Optional<Season> season, UnsavedTexts unsaved, Faults faults) {
    return SourceText.named("weather", named, faults)
        .map(file -> read(file, named.spot(), season, unsaved, faults))
        .orElse(List.of());
  }

  private static List<WeatherYear> read(
      Path file, FilePosition named, Optional<Season> season, UnsavedTexts unsaved, Faults faults) {
    Optional<Reading> told =
        SourceText.read(file, named, unsaved, faults)
            .map(
                source -> unsaved.disk().reading(source, season, () -> Reading.of(source, season)));
    told.ifPresent(t -> faults.addAll(t.faults()));
    return told.map(Reading::years).orElse(List.of());
  }

  /** What a record says, and all that is wrong or unlikely in it. */
  record Reading(List<WeatherYear> years, Faults faults) {
    static Reading of(SourceText source, Optional<Season> season) {
      Faults own = new Faults();
      return new Reading(new WeatherFile(source, own).years(season), own);
    }
  }

  private final Faults faults;
  private final Path file;
  private final boolean inF;
  private final List<WeatherRecord.Day> days = new ArrayList<>();
  private final Map<LocalDate, FilePosition> spots = new HashMap<>();
  private final List<Fields> impossible = new ArrayList<>();
  private boolean datesKnown;

  private WeatherFile(SourceText source, Faults faults) {
    this.faults = faults;
    this.file = source.file();
    List<String> header = CsvFile.headerOf(source);
    inF = header.contains("tmin-f") || header.contains("tmax-f");
    List<String> columns = inF ? COLUMNS_IN_F : COLUMNS;
    CsvFile table = new CsvFile(source, columns, List.of(), MOST_ROWS, faults);
    datesKnown = !table.isOpen();
    table.fields().forEach(this::read);
  }

  private void read(Fields fields) {
    LocalDate date = fields.date("date");
    double min = fields.number(inF ? "tmin-f" : "tmin", Quantity.AIR);
    double max = fields.number(inF ? "tmax-f" : "tmax", Quantity.AIR);
    if (min > max) {
      fields.wrongPair(
          inF ? "tmin-f" : "tmin", inF ? "tmax-f" : "tmax", "above", "tmin at or below tmax");
    }
    if (date == null) {
      datesKnown = false;
      return;
    }
    FilePosition before = spots.putIfAbsent(date, fields.at());
    if (before != null) {
      fields.fault(
          fields.at(), "date " + date + " again, first on line " + before.line(), "each day once");
    }
    Degrees unit = inF ? Degrees.F : Degrees.C;
    boolean canBe = WeatherRecord.Day.canBe(unit.toC(min), unit.toC(max));
    if (fields.sound() && !canBe) {
      impossible.add(fields);
    }
    // A day with a fault still counts as covered: that fault is enough.
    days.add(
        fields.sound() && canBe
            ? new WeatherRecord.Day(date, unit.toC(min), unit.toC(max))
            : new WeatherRecord.Day(date, 0, 0));
  }

  private List<WeatherYear> years(Optional<Season> season) {
    if (!impossible.isEmpty()) {
      tellImpossible(impossible.get(0));
    } else if (!faults.any()) {
      new WeatherDoubts(days, WeatherDoubts.Each.DAY, spots, inF, otherUnit(inF), faults).tell();
    }
    if (season.isEmpty()) {
      return List.of();
    }
    List<WeatherYear> years = new WeatherRecord(days).yearsCovering(season.get());
    if (years.isEmpty() && datesKnown) {
      faults.add(
          FilePosition.whole(file),
          "no year of the record covers the season "
              + season.get().start()
              + " to "
              + season.get().end(),
          "a year with a row for each of its days");
    }
    return years;
  }

  /** Where temperatures belong that are in the other unit than a table's header says. */
  static String otherUnit(boolean inF) {
    return inF ? "degrees C belong under tmin,tmax" : "degrees F belong under tmin-f,tmax-f";
  }

  /** Once for all its days: a record in the wrong unit has thousands of them. */
  private void tellImpossible(Fields first) {
    String days =
        impossible.size() == 1 ? "" : ", and so on " + (impossible.size() - 1) + " more days";
    first.fault(
        first.at(),
        String.join(
                " and ",
                (inF ? COLUMNS_IN_F : COLUMNS)
                    .stream().skip(1).map(c -> c + " " + first.written(c)).toList())
            + WeatherDoubts.IMPOSSIBLE
            + days,
        inF
            ? "degrees F; degrees C belong under tmin,tmax"
            : "degrees C; degrees F belong under a header date,tmin-f,tmax-f");
  }
}
