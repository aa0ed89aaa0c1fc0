package propcap.files.log;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.Sowing;
import propcap.files.text.CsvFile;
import propcap.files.text.Fault;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.past.WrittenTray;

/** The rows of this season's log, each held against the plan, the crops, the house and today. */
public final class SeasonLog {
  private final CsvFile table;
  private final Optional<Scenario> scenario;
  private final Set<String> dropped;
  private final Optional<LocalDate> today;
  private final boolean byOptions;
  private final Faults faults;
  private final List<Late> late = new ArrayList<>();

  /** A row whose date has not been yet. */
  private record Late(FilePosition spot, LocalDate date) {}

  public SeasonLog(
      CsvFile table,
      Optional<Scenario> scenario,
      Set<String> dropped,
      Optional<LocalDate> today,
      boolean byOptions,
      Faults faults) {
    this.table = table;
    this.scenario = scenario;
    this.dropped = dropped;
    this.today = today;
    this.byOptions = byOptions;
    this.faults = faults;
  }

  /** Its trays, in the order in which they come first; of no use where there is a fault. */
  public List<WrittenTray> read() {
    List<LogRow> rows = table.fields().stream().map(LogRow::read).toList();
    LogTrays trays = new LogTrays(rows, scenario, dropped);
    for (LogRow row : rows) {
      Optional<Crop> crop =
          trays.planned(row.sowing()).flatMap(p -> scenario.map(s -> s.cropOf(p)));
      List<LogTray> its = trays.of(row, potting(crop));
      LocalDate date = row.date();
      if (date != null) {
        dated(row, date);
      }
      if (scenario.isPresent() && !row.sowing().isEmpty()) {
        if (crop.isEmpty()) {
          LogTrays.unknown(row, scenario.get(), "a sowing of the plan");
          continue;
        }
        ofItsCrop(row, its, crop.get());
      }
      if (!trays.isOpen(row)) {
        row.event().ifPresent(event -> mayCome(row, event, its, crop));
      }
      trays.add(row, its);
    }
    tellLate();
    return scenario.isPresent() && !faults.any() ? written(trays.all(), scenario.get()) : List.of();
  }

  /** Anything may come where the crop is not known. */
  private static Crop.PottingOn.When potting(Optional<Crop> crop) {
    return crop.map(c -> c.pottingOn().when()).orElse(Crop.PottingOn.When.IF_HELD);
  }

  // Days.

  private void dated(LogRow row, LocalDate date) {
    Optional<Season> season = scenario.map(Scenario::season);
    if (season.isPresent() && date.isBefore(season.get().start())) {
      row.fields().wrong("date", "before the season", "a day from " + season.get().start() + " on");
    } else if (isLate(date)) {
      late.add(new Late(row.fields().spot("date"), date));
    }
  }

  private boolean isLate(LocalDate date) {
    return today.isPresent() && !date.isBefore(today.get());
  }

  /** Once for all rows: with another today all of them are right. */
  private void tellLate() {
    if (late.isEmpty()) {
      return;
    }
    LocalDate last =
        late.stream().map(Late::date).max(LocalDate::compareTo).orElse(late.get(0).date());
    faults.add(
        late.get(0).spot(),
        "date "
            + late.get(0).date()
            + (byOptions ? " is not before today, " : " is not before the morning of ")
            + today.orElseThrow()
            + others(late.size() - 1),
        "a day that has been, or " + (byOptions ? "--on " + last.plusDays(1) : last + " as today"),
        new Fault.About("", "date"));
  }

  private static String others(int rows) {
    return switch (rows) {
      case 0 -> "";
      case 1 -> ", nor is that of 1 more row";
      default -> ", nor are those of " + rows + " more rows";
    };
  }

  // The row and its crop.

  private void ofItsCrop(LogRow row, List<LogTray> trays, Crop crop) {
    Fields fields = row.fields();
    String written = fields.known().word("crop");
    if (!written.isEmpty() && !written.equals(crop.name())) {
      fields.wrong(
          "crop", "but " + row.sowing() + " is " + crop.name(), crop.name() + ", or nothing");
    }
    Double plants = row.plants();
    if (plants != null && plants > crop.cells()) {
      fields.wrong(
          "plants",
          "more than the " + crop.cells() + " cells of a tray of " + crop.name(),
          "the plants of one tray");
    }
    if (row.event().isEmpty() || trays.isEmpty()) {
      return;
    }
    LoggedEvent event = row.event().get();
    String place = fields.known().word("place");
    if (event == LoggedEvent.SOWN
        && !place.isEmpty()
        && isPlace(place)
        && !crop.germinateIn().contains(place)) {
      fields.wrong(
          "place",
          "where " + crop.name() + " does not germinate",
          FaultWords.oneOf(place, crop.germinateIn()));
    }
    if (event == LoggedEvent.POTTED_ON && crop.pottingOn().when() == Crop.PottingOn.When.NEVER) {
      fields.fault(
          "event",
          LogTray.names(trays)
              + LogTrays.are(trays)
              + "potted-on, but "
              + crop.name()
              + " is never potted on",
          "potting-on in the crop list, or another event");
    }
    LocalDate date = row.date();
    if (event == LoggedEvent.OFF_HEAT
        && date != null
        && plants != null
        && today.isPresent()
        && !isLate(date)
        && isYoung(date, today.get(), crop)) {
      fields.wrong(
          "plants",
          "but the last seedlings are up " + days(crop) + " after off-heat, and that is not over",
          "plants left empty here, and what shows so far in a row counted before it");
    }
  }

  private static boolean isYoung(LocalDate date, LocalDate today, Crop crop) {
    return date.plusDays((long) Math.ceil(crop.standWindowDays())).isAfter(today);
  }

  private static String days(Crop crop) {
    double days = crop.standWindowDays();
    return (days == Math.rint(days) ? "" + (long) days : "" + days)
        + (days == 1 ? " day" : " days");
  }

  private boolean isPlace(String name) {
    return scenario.isPresent()
        && scenario.get().places().stream().map(Place::name).anyMatch(name::equals);
  }

  // The row and those before it.

  private static void mayCome(
      LogRow row, LoggedEvent event, List<LogTray> trays, Optional<Crop> crop) {
    if (event == LoggedEvent.SOWN) {
      return;
    }
    Crop.PottingOn.When potting = potting(crop);
    for (LoggedEvent needed : List.of(LoggedEvent.SOWN, event.after(potting))) {
      List<LogTray> without = trays.stream().filter(t -> !t.had(needed)).toList();
      if (!without.isEmpty()) {
        boolean isPotting = needed == LoggedEvent.POTTED_ON;
        row.fields()
            .fault(
                "event",
                LogTray.names(without)
                    + LogTrays.are(without)
                    + event.word()
                    + ", but never "
                    + needed.word()
                    + (isPotting ? ", as " + crop.orElseThrow().name() + " always is" : ""),
                "a row "
                    + needed.word()
                    + " before it"
                    + (isPotting ? ", or another potting-on in the crop list" : ""));
        // Told once: what comes after it is not at fault.
        without.forEach(t -> t.had(needed, row.fields().at().line()));
      }
    }
  }

  // Numbers.

  private List<WrittenTray> written(List<LogTray> trays, Scenario s) {
    Map<String, List<LogTray>> bySowing =
        trays.stream().collect(Collectors.groupingBy(LogTray::sowing));
    List<WrittenTray> written = new ArrayList<>();
    for (Sowing sowing : s.sowings()) {
      List<LogTray> its = bySowing.getOrDefault(sowing.id(), List.of());
      boolean isDropped = dropped.contains(sowing.id());
      TrayNumbers numbers = new TrayNumbers(its, isDropped ? 0 : sowing.trays());
      written.addAll(numbers.written());
      int more = numbers.more();
      if (more > 0 && !isDropped) {
        faults.warn(
            FilePosition.whole(table.file()),
            "%s has %s more %s in the log than the %s of the plan"
                .formatted(sowing.id(), more, more == 1 ? "tray" : "trays", sowing.trays()),
            (more == 1 ? "it is" : "they are") + " taken as sown beside them");
      }
    }
    return written;
  }
}
