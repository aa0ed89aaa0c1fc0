package propcap.files.weather;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;

/** The forms in which daily temperatures are handed out, each known by its first row. */
sealed interface StationForm
    permits GhcnDays, GhcnMonths, StationForm.Summaries, StationForm.Plain {
  Pattern COMPACT_DATE = Pattern.compile("[0-9]{8}");

  /** What the form is, for the grower. */
  String words();

  /** Whether its first row names the columns. */
  default boolean hasHeader() {
    return true;
  }

  Degrees unit();

  /** How a file in another unit is read; empty where the form itself says its unit. */
  default String otherUnit() {
    return "";
  }

  /** Takes in a row. */
  void read(StationRows.Row row, StationValues values);

  /**
   * The form of a file, by its first row.
   *
   * @param unit of files that do not tell it themselves
   * @return empty where there is none, or its unit is not known, which is reported
   */
  static Optional<StationForm> of(StationRows.Row first, StationUnit unit, Faults faults) {
    List<String> names = first.fields().stream().map(f -> f.toLowerCase(Locale.ROOT)).toList();
    // First of all, for its first row may well be one of TMIN, which looks like a column's name.
    if (names.size() >= 4 && COMPACT_DATE.matcher(names.get(1)).matches()) {
      return Optional.of(GhcnDays.WITHOUT_HEADER);
    }
    if (GhcnMonths.isOne(first)) {
      return Optional.of(new GhcnMonths());
    }
    if (names.contains("element")) {
      return has(first, names, GhcnDays.COLUMNS, faults)
          ? Optional.of(GhcnDays.under(names))
          : Optional.empty();
    }
    if (names.contains("station") && names.contains("date")) {
      return summaries(first, names, unit, faults);
    }
    if (names.contains("date") || names.contains("tmin") || names.contains("tmin-f")) {
      return plain(first, names, unit, faults);
    }
    faults.add(
        first.spot(),
        "no form that is known, but " + FaultWords.shown(String.join(",", first.fields())),
        "GHCN-Daily (ID,20270328,TMIN,-11,,,7,0700 with or without a header, or a line a month),"
            + " daily summaries (a header with STATION,DATE,TMAX,TMIN) or a header date,tmin,tmax");
    return Optional.empty();
  }

  private static Optional<StationForm> summaries(
      StationRows.Row first, List<String> names, StationUnit unit, Faults faults) {
    if (!has(first, names, List.of("tmin", "tmax"), faults)) {
      return Optional.empty();
    }
    Degrees given = unit.given();
    if (given == null) {
      faults.add(
          first.spot(),
          "daily summaries do not say what their temperatures are in",
          unit.ofSummaries());
      return Optional.empty();
    }
    return Optional.of(new Summaries(names, given));
  }

  private static Optional<StationForm> plain(
      StationRows.Row first, List<String> names, StationUnit unit, Faults faults) {
    Degrees given = unit.given();
    boolean inF = names.contains("tmin-f") || names.contains("tmax-f");
    List<String> pair = inF ? List.of("tmin-f", "tmax-f") : List.of("tmin", "tmax");
    if (!has(first, names, List.of("date", pair.get(0), pair.get(1)), faults)) {
      return Optional.empty();
    }
    if (inF && given != null && given != Degrees.F) {
      faults.add(first.spot(), "tmin-f with another --unit", "no --unit, or --unit F");
      return Optional.empty();
    }
    Degrees its = inF ? Degrees.F : given == null ? Degrees.C : given;
    return Optional.of(
        new Plain(
            names.indexOf("date"),
            names.indexOf(pair.get(0)),
            names.indexOf(pair.get(1)),
            its,
            unit.other(its)));
  }

  private static boolean has(
      StationRows.Row first, List<String> names, List<String> needed, Faults faults) {
    for (String name : needed) {
      if (!names.contains(name)) {
        faults.add(first.spot(), "no column " + name, "a header with " + String.join(",", needed));
      }
    }
    return names.containsAll(needed);
  }

  static Optional<LocalDate> date(StationRows.Row row, int field, StationValues values) {
    String written = row.field(field);
    try {
      LocalDate date =
          COMPACT_DATE.matcher(written).matches()
              ? LocalDate.parse(written, DateTimeFormatter.BASIC_ISO_DATE)
              : LocalDate.parse(written);
      if (Fields.isOfOurTimes(date)) {
        return Optional.of(date);
      }
    } catch (DateTimeException e) {
      // Told below: what is no date, and what no station has.
    }
    values.fault(row, "date is " + FaultWords.shown(written), "a date such as 2027-03-28");
    return Optional.empty();
  }

  /**
   * NOAA's daily summaries: a header, a row a day, in the unit in which they were ordered. Beside a
   * value its attributes may stand, parted by commas: measurement flag, quality flag, source flag.
   */
  record Summaries(List<String> names, Degrees unit) implements StationForm {
    @Override
    public String words() {
      return "daily summaries";
    }

    @Override
    public String otherUnit() {
      return unit.readAs();
    }

    @Override
    public void read(StationRows.Row row, StationValues values) {
      if (!values.isOfStation(row.spot(), row.field(names.indexOf("station")))) {
        return;
      }
      date(row, names.indexOf("date"), values)
          .ifPresent(
              date -> {
                add(true, "tmin", date, row, values);
                add(false, "tmax", date, row, values);
              });
    }

    private void add(
        boolean isMinimum, String name, LocalDate date, StationRows.Row row, StationValues values) {
      String[] attributes = row.field(names.indexOf(name + "_attributes")).split(",", -1);
      String quality = attributes.length > 1 ? attributes[1].strip() : "";
      values.add(isMinimum, date, row.field(names.indexOf(name)), unit, quality, row.spot());
    }
  }

  /** A table of the grower's own. */
  record Plain(int date, int min, int max, Degrees unit, String otherUnit) implements StationForm {
    @Override
    public String words() {
      return "date,tmin,tmax in " + unit;
    }

    @Override
    public void read(StationRows.Row row, StationValues values) {
      StationForm.date(row, date, values)
          .ifPresent(
              day -> {
                values.add(true, day, row.field(min), unit, "", row.spot());
                values.add(false, day, row.field(max), unit, "", row.spot());
              });
    }
  }

  /** Reads a file in whichever form it is, row by row; empty where it has none. */
  static Optional<StationForm> read(
      Path file, StationUnit unit, StationValues values, Faults faults) {
    Reading reading = new Reading(unit, values, faults);
    if (StationRows.each(file, reading::take, faults)) {
      if (reading.form != null) {
        values.endOf(reading.form);
      } else if (!reading.isOver) {
        faults.add(FilePosition.whole(file), "the file is empty", "a file with something in it");
      }
    }
    return Optional.ofNullable(reading.form);
  }

  /** A file of which some rows are read. */
  final class Reading {
    private final StationUnit unit;
    private final StationValues values;
    private final Faults faults;
    private @Nullable StationForm form;
    private boolean isOver;

    private Reading(StationUnit unit, StationValues values, Faults faults) {
      this.unit = unit;
      this.values = values;
      this.faults = faults;
    }

    /** Takes in the next row; false where the rest would tell nothing more. */
    private boolean take(StationRows.Row row) {
      StationForm known = form;
      if (known == null) {
        known = of(row, unit, faults).orElse(null);
        form = known;
        isOver = known == null;
        if (known == null || known.hasHeader()) {
          return known != null;
        }
      }
      known.read(row, values);
      return !faults.isFull(row.spot().file());
    }
  }
}
