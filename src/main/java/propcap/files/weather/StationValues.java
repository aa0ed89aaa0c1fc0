package propcap.files.weather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import propcap.farm.StationRecord;
import propcap.farm.WeatherRecord.Day;
import propcap.files.text.Fault;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.FilePosition;

/**
 * The values of a station as they are read, one by one. What cannot be a temperature of that day is
 * left out with a remark; what cannot be read at all is a fault.
 */
final class StationValues {
  private static final int MOST_NAMED = 3;

  /** A file with more to leave out is some other file; the rest would only fill the memory. */
  private static final int MOST_REMARKS = 100_000;

  /**
   * From so many values that cannot be, of so many different numbers and this share of all, on it
   * is the unit: a station that fails writes one number again and again. Our own bounds.
   */
  private static final int MANY = 10;

  private static final int DIFFERENT = 3;
  private static final double SHARE = 0.01;

  private static final Pattern NUMBER = Pattern.compile("[-+]?([0-9]{1,6}(\\.[0-9]*)?|\\.[0-9]+)");

  /** Stands for a value that is missing, in tenths of a degree and in degrees. */
  private static final List<String> MISSING = List.of("", "-9999", "9999", "-9999.0", "9999.0");

  private final Faults faults;
  private final List<Fault> remarks = new ArrayList<>();
  private final Map<String, Integer> flagged = new TreeMap<>();
  private final Values minima = new Values("tmin");
  private final Values maxima = new Values("tmax");

  /** Of the file that is being read. */
  private Impossible impossible = new Impossible();

  /** Stations in the order in which they come, and where each comes first. */
  private final Map<String, FilePosition> stations = new LinkedHashMap<>();

  StationValues(Faults faults) {
    this.faults = faults;
  }

  /** The values of one kind by day, and the place of each. */
  private record Values(
      String name, NavigableMap<LocalDate, Double> tempC, Map<LocalDate, FilePosition> spots) {
    Values(String name) {
      this(name, new TreeMap<>(), new TreeMap<>());
    }

    void remove(LocalDate date) {
      tempC.remove(date);
    }
  }

  /** Values that no air ever had. */
  private static final class Impossible {
    private int values;
    private int are;
    private final Set<String> written = new HashSet<>();
    private @Nullable FilePosition first;
    private String firstName = "";

    void add(String name, String number, FilePosition spot) {
      are++;
      if (first == null) {
        first = spot;
        firstName = name + " " + FaultWords.shown(number);
      }
      if (written.size() <= DIFFERENT) {
        written.add(number);
      }
    }

    boolean isAnotherUnit() {
      return are >= MANY && written.size() > DIFFERENT && are > SHARE * values;
    }
  }

  /** A row that cannot be read. */
  void fault(StationRows.Row row, String found, String right) {
    faults.add(row.spot(), found, right);
  }

  /** What was left out and why, in the order of the files. */
  List<Fault> remarks() {
    return List.copyOf(remarks);
  }

  /** How many values the service itself doubts, by its flag. */
  Map<String, Integer> flagged() {
    return flagged;
  }

  /** Whether a row is of the station whose values are taken: the first one that is named. */
  boolean isOfStation(FilePosition spot, String name) {
    if (!name.isEmpty()) {
      stations.putIfAbsent(name, spot);
    }
    return name.isEmpty() || name.equals(stations.keySet().iterator().next());
  }

  /**
   * Notes a value, which may be empty.
   *
   * @param flag not empty where the service doubts the value
   */
  void add(
      boolean isMinimum,
      LocalDate date,
      String written,
      Degrees unit,
      String flag,
      FilePosition spot) {
    Values values = isMinimum ? minima : maxima;
    if (MISSING.contains(written)) {
      return;
    }
    if (!NUMBER.matcher(written).matches()) {
      faults.add(
          spot,
          values.name() + " is " + FaultWords.shown(written),
          "a number, or nothing where none was read");
      return;
    }
    if (!flag.isEmpty()) {
      flagged.merge(flag, 1, Integer::sum);
      return;
    }
    double tempC = unit.toC(Double.parseDouble(written));
    double most = isMinimum ? Day.MOST_MIN_C : Day.MOST_C;
    impossible.values++;
    FilePosition before = values.spots().putIfAbsent(date, spot);
    if (before != null) {
      leave(
          spot,
          values.name() + " of " + date + " again, first on line " + before.line(),
          "left out; the first stands");
    } else if (tempC < Day.LEAST_C || tempC > most) {
      impossible.add(values.name(), written, spot);
      leave(
          spot,
          values.name() + " of " + date + " is " + FaultWords.shown(written),
          "left out; no %s was ever outside %s to %s C"
              .formatted(isMinimum ? "night" : "air", Math.round(Day.LEAST_C), Math.round(most)));
    } else {
      values.tempC().put(date, tempC);
    }
  }

  private void leave(FilePosition spot, String found, String what) {
    if (remarks.size() < MOST_REMARKS) {
      remarks.add(spot.fault(found, what));
    } else {
      faults.add(
          FilePosition.whole(spot.file()),
          "more than " + MOST_REMARKS + " values that cannot stand",
          "the file of one station, each day once");
    }
  }

  /** To be called after the last row of each file: where it is the unit, all else is noise. */
  void endOf(StationForm form) {
    FilePosition first = impossible.first;
    if (first != null && impossible.isAnotherUnit()) {
      faults.add(
          first,
          impossible.firstName
              + WeatherDoubts.IMPOSSIBLE
              + ", and so on "
              + (impossible.are - 1)
              + " more of its "
              + impossible.values
              + " values",
          form.otherUnit().isEmpty() ? "temperatures in " + form.words() : form.otherUnit());
    }
    impossible = new Impossible();
  }

  /**
   * Doubts the record as a weather record is doubted, in the unit of one of its files.
   *
   * @param record made of these values
   */
  void doubt(StationRecord record, StationForm form) {
    List<Day> days = new ArrayList<>();
    record
        .minC()
        .forEach(
            (date, min) -> {
              Double max = record.maxC().get(date);
              if (max != null) {
                days.add(new Day(date, min, max));
              }
            });
    new WeatherDoubts(
            days,
            WeatherDoubts.Each.DAY,
            minima.spots(),
            form.unit() == Degrees.F,
            form.otherUnit(),
            faults)
        .tell();
  }

  /** All that was noted, but for days whose minimum lies above their maximum. */
  StationRecord record() {
    if (stations.size() > 1) {
      refuseMany();
    }
    for (Map.Entry<LocalDate, Double> min : new TreeMap<>(minima.tempC()).entrySet()) {
      LocalDate date = min.getKey();
      Double max = maxima.tempC().get(date);
      if (max != null && min.getValue() > max) {
        FilePosition spot = Optional.ofNullable(minima.spots().get(date)).orElseThrow();
        leave(spot, "tmin above tmax on " + date, "left out, both");
        minima.remove(date);
        maxima.remove(date);
      }
    }
    return new StationRecord(
        stations.keySet().stream().findFirst().orElse(""), minima.tempC(), maxima.tempC());
  }

  private void refuseMany() {
    List<String> names = stations.keySet().stream().map(FaultWords::shown).toList();
    String some =
        names.size() > MOST_NAMED + 1
            ? FaultWords.some(names, MOST_NAMED)
            : FaultWords.listed(names);
    faults.add(
        stations.values().stream().skip(1).findFirst().orElseThrow(),
        names.size() + " stations: " + some,
        "the rows of one station");
  }
}
