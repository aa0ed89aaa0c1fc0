package propcap.files;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.LoggedTray;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.Sowing;

/** The rows of one tray of a log, each held against those before it. */
final class LogRows {
  private static final int MOST_PLANTS = 10_000;

  private final String sowing;
  private final String tray;
  private final List<LoggedTray.Entry> entries = new ArrayList<>();
  private final Map<LoggedEvent, Integer> lines = new HashMap<>();
  private @Nullable String crop;
  private @Nullable Place table;
  private @Nullable LocalDate firstDate;
  private @Nullable LocalDate lastDate;
  private @Nullable Integer lastPlants;
  private boolean moreThanCells;

  LogRows(String sowing, String tray) {
    this.sowing = sowing;
    this.tray = tray;
  }

  /** Reads the rest of a row whose sowing, tray and date were read. */
  void add(Fields row, @Nullable LocalDate date, Optional<Scenario> scenario) {
    Optional<LoggedEvent> event =
        row.choice("event", List.of(LoggedEvent.values()), LoggedEvent::word);
    Integer plants = row.isBlank("plants") ? null : row.count("plants", 0, MOST_PLANTS);
    event.ifPresent(e -> inOrder(row, e));
    if (date != null) {
      datesRise(row, date);
      event.filter(LoggedEvent::isTimed).ifPresent(e -> inSeason(row, date, scenario));
    }
    if (plants != null && plants >= 0) {
      plantsFall(row, plants);
    }
    scenario.ifPresent(
        s -> {
          readCrop(row, s);
          if (plants != null) {
            cellsHold(row, plants, s);
          }
          readPlace(row, s, event);
        });
    if (row.sound() && event.isPresent() && date != null) {
      entries.add(new LoggedTray.Entry(event.get(), date, plants));
    }
  }

  /** The tray; empty where there was a fault in every row. */
  Optional<LoggedTray> tray(Scenario scenario) {
    if (crop == null || entries.isEmpty() || lastDate == null) {
      return Optional.empty();
    }
    Place on = table == null ? firstTable(scenario) : table;
    return isInOrder()
        ? Optional.of(new LoggedTray(sowing, tray, crop, on, entries))
        : Optional.empty();
  }

  private boolean isInOrder() {
    for (int i = 1; i < entries.size(); i++) {
      if (entries.get(i).date().isBefore(entries.get(i - 1).date())) {
        return false;
      }
    }
    return true;
  }

  private static Place firstTable(Scenario scenario) {
    return scenario.places().stream()
        .filter(p -> p.kind() == PlaceKind.TABLE && p.isOpen())
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("a scenario has an open table"));
  }

  private String name() {
    return "tray " + tray + " of " + sowing;
  }

  private void inOrder(Fields row, LoggedEvent event) {
    Integer before = lines.putIfAbsent(event, row.at().line());
    if (before != null) {
      row.fault(
          row.spot("event"),
          name() + " is " + event.word() + " again, first on line " + before,
          "each event of a tray once, each tray with a name of its own");
      return;
    }
    lines.keySet().stream()
        .filter(earlier -> earlier != event && !event.canFollow(earlier))
        .findFirst()
        .ifPresent(
            earlier ->
                row.fault(
                    row.spot("event"),
                    name() + " is " + event.word() + " after it was " + earlier.word(),
                    "the order " + String.join(", ", LoggedEvent.words())));
  }

  private void datesRise(Fields row, LocalDate date) {
    if (lastDate != null && date.isBefore(lastDate)) {
      row.fault(
          row.spot("date"),
          "date " + date + " of " + name() + " is before " + lastDate + " of the row above it",
          "the rows of a tray in the order of their dates");
    } else if (firstDate != null && date.isAfter(firstDate.plusYears(1))) {
      row.fault(
          row.spot("date"),
          "date "
              + date
              + " of "
              + name()
              + " is "
              + ChronoUnit.DAYS.between(firstDate, date)
              + " days after its first row",
          "a tray of one spring; another spring’s has a name of its own");
    } else {
      firstDate = firstDate == null ? date : firstDate;
      lastDate = date;
    }
  }

  private void plantsFall(Fields row, int plants) {
    if (lastPlants != null && plants > lastPlants) {
      row.fault(
          row.spot("plants"),
          plants + " plants of " + name() + ", but " + lastPlants + " before that",
          "no more than before; on the row of off-heat, those that stood when the last were up");
    } else {
      lastPlants = plants;
    }
  }

  /** A tray of other cells than the list's can be meant. */
  private void cellsHold(Fields row, int plants, Scenario scenario) {
    Crop its = crop == null ? null : scenario.crops().get(crop);
    if (its != null && plants > its.cells() && !moreThanCells) {
      moreThanCells = true;
      row.doubt(
          "plants",
          "more than the " + its.cells() + " cells of a tray of " + crop,
          "the plants of one tray");
    }
  }

  private static void inSeason(Fields row, LocalDate date, Optional<Scenario> scenario) {
    if (scenario.isEmpty()) {
      return;
    }
    Season season = scenario.get().season();
    if (dayIn(season, date).isEmpty()) {
      row.fault(
          row.spot("date"),
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

  private void readCrop(Fields row, Scenario scenario) {
    Optional<String> written = row.isBlank("crop") ? Optional.empty() : row.name("crop");
    Optional<String> planned =
        scenario.sowings().stream()
            .filter(s -> s.id().equals(sowing))
            .map(Sowing::crop)
            .findFirst();
    String read = written.or(() -> planned).orElse(crop);
    if (read == null) {
      if (!sowing.isEmpty() && row.isBlank("crop")) {
        row.fault(
            row.spot("sowing"),
            "unknown sowing " + FaultWords.shown(sowing),
            FaultWords.nearest(sowing, scenario.sowings().stream().map(Sowing::id).toList())
                .map(near -> "did you mean " + near + "?")
                .orElse("a sowing of the plan, or its crop in a column crop"));
      }
    } else if (!scenario.crops().containsKey(read)) {
      row.fault(
          row.spot("crop"),
          "no crop " + FaultWords.shown(read) + " in the crop list",
          FaultWords.oneOf(read, scenario.crops().keySet().stream().sorted().toList()));
    } else if (crop != null && !crop.equals(read)) {
      row.fault(
          row.spot("crop"), name() + " is " + read + ", but " + crop + " above", "one crop a tray");
    } else {
      crop = read;
    }
  }

  private void readPlace(Fields row, Scenario scenario, Optional<LoggedEvent> event) {
    if (row.isBlank("place")) {
      return;
    }
    String written = row.name("place").orElse("");
    Optional<Place> place =
        scenario.places().stream().filter(p -> p.name().equals(written)).findFirst();
    boolean isOffHeat = event.isPresent() && event.get() == LoggedEvent.OFF_HEAT;
    if (place.isEmpty()) {
      row.fault(
          row.spot("place"),
          "no place " + FaultWords.shown(written),
          FaultWords.oneOf(written, scenario.places().stream().map(Place::name).toList()));
    } else if (isOffHeat && place.get().kind() != PlaceKind.TABLE) {
      row.fault(
          row.spot("place"),
          name() + " comes off heat to " + FaultWords.shown(written) + ", which is no table",
          "a place of kind table");
    } else if (isOffHeat) {
      table = place.get();
    }
  }
}
