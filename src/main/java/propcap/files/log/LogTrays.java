package propcap.files.log;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.files.text.FaultWords;
import propcap.files.text.Fields;
import propcap.past.WrittenTray;

/**
 * The trays of a log, each row held against those before it: the order of events and dates, and
 * plants that only get fewer. What a log of this season must be besides, its reader says.
 */
public final class LogTrays {
  private final Optional<Scenario> scenario;
  private final Set<String> dropped;
  private final Map<String, LogSowing> sowings = new LinkedHashMap<>();

  private final Set<LogTray> all = new LinkedHashSet<>();

  /**
   * Makes ready to read rows.
   *
   * @param dropped sowings of which the plan has no trays
   */
  public LogTrays(List<LogRow> rows, Optional<Scenario> scenario, Set<String> dropped) {
    this.scenario = scenario;
    this.dropped = dropped;
    for (LogRow row : rows) {
      if (!row.sowing().isEmpty()) {
        sowings.computeIfAbsent(row.sowing(), LogSowing::new).expect(row);
      }
    }
  }

  /**
   * Which trays a row speaks of; none where that cannot be known, which is reported.
   *
   * @param potting when their crop is potted on
   */
  public List<LogTray> of(LogRow row, Crop.PottingOn.When potting) {
    LogSowing sowing = sowings.get(row.sowing());
    if (sowing == null) {
      return List.of();
    }
    List<LogTray> trays =
        sowing.taken(
            row, planned(row.sowing()).map(s -> dropped.contains(s.id()) ? 0 : s.trays()), potting);
    all.addAll(trays);
    return trays;
  }

  /** Whether a sowing has rows that could not be understood. */
  boolean isOpen(LogRow row) {
    LogSowing sowing = sowings.get(row.sowing());
    return sowing == null || sowing.isOpen();
  }

  /** Holds a row against those before it, and adds it to its trays where it is right. */
  public void add(LogRow row, List<LogTray> trays) {
    Fields fields = row.fields();
    Optional<Place> place = place(row);
    scenario.ifPresent(s -> crop(row, trays, s));
    row.event().ifPresent(event -> inOrder(row, event, trays));
    LocalDate date = row.date();
    if (date != null) {
      datesRise(row, date, trays);
    }
    List<@Nullable Integer> plants = DealtPlants.of(row, trays);
    row.event().ifPresent(event -> trays.forEach(t -> t.had(event, fields.at().line())));
    if (row.event().isEmpty() || date == null || !fields.sound()) {
      return;
    }
    LoggedEvent event = row.event().get();
    boolean stays = event.isMove() && !event.isLast();
    String stands = place.filter(p -> stays).map(Place::name).orElse(null);
    for (int i = 0; i < trays.size(); i++) {
      LogTray tray = trays.get(i);
      Integer its = plants.get(i);
      if (its != null) {
        tray.counted(event, its);
      }
      tray.add(new WrittenTray.Entry(event, date, its, stands, fields.at().line()));
    }
  }

  private static void inOrder(LogRow row, LoggedEvent event, List<LogTray> trays) {
    List<LogTray> unfit = trays.stream().filter(t -> t.unfit(event).isPresent()).toList();
    if (unfit.isEmpty()) {
      return;
    }
    String why = unfit.get(0).unfit(event).orElseThrow();
    List<LogTray> alike =
        unfit.stream().filter(t -> t.unfit(event).equals(Optional.of(why))).toList();
    row.fields()
        .fault(
            "event",
            LogTray.names(alike) + are(alike) + event.word() + " " + why,
            why.startsWith("again")
                ? event == LoggedEvent.SOWN
                    ? "a tray that is sown again under a name of its own"
                    : "each event of a tray once, each tray with a name of its own"
                : "the order " + String.join(", ", LoggedEvent.words()));
  }

  static String are(Collection<LogTray> trays) {
    return trays.size() == 1 ? " is " : " are ";
  }

  private static void datesRise(LogRow row, LocalDate date, List<LogTray> trays) {
    if (!tellFirst(
            trays,
            t -> t.lastDate().filter(date::isBefore).isPresent(),
            such ->
                row.fields()
                    .fault(
                        "date",
                        "date %s of %s is before %s of the row above it"
                            .formatted(
                                date, LogTray.names(such), such.get(0).lastDate().orElseThrow()),
                        "the rows of a tray in the order of their dates"))
        && !tellFirst(
            trays,
            t -> t.firstDate().filter(first -> date.isAfter(first.plusYears(1))).isPresent(),
            such ->
                row.fields()
                    .fault(
                        "date",
                        "date %s of %s is %s days after its first row"
                            .formatted(
                                date,
                                LogTray.names(such),
                                ChronoUnit.DAYS.between(
                                    such.get(0).firstDate().orElseThrow(), date)),
                        "a tray of one spring; another spring’s has a name of its own"))) {
      trays.forEach(t -> t.dated(date));
    }
  }

  private static boolean tellFirst(
      List<LogTray> trays, Predicate<LogTray> is, Consumer<List<LogTray>> telling) {
    List<LogTray> such = trays.stream().filter(is).toList();
    if (!such.isEmpty()) {
      telling.accept(such);
    }
    return !such.isEmpty();
  }

  // Crop and place.

  /** A sowing of the plan. */
  Optional<Sowing> planned(String sowing) {
    return scenario.flatMap(
        s -> s.sowings().stream().filter(p -> p.id().equals(sowing)).findFirst());
  }

  private void crop(LogRow row, List<LogTray> trays, Scenario s) {
    Fields fields = row.fields();
    Optional<String> written = fields.isBlank("crop") ? Optional.empty() : fields.name("crop");
    Optional<String> read =
        written
            .or(() -> planned(row.sowing()).map(Sowing::crop))
            .or(() -> trays.stream().flatMap(t -> t.crop().stream()).findFirst());
    if (read.isEmpty()) {
      if (!row.sowing().isEmpty() && fields.isBlank("crop")) {
        unknown(row, s, "a sowing of the plan, or its crop in a column crop");
      }
    } else if (!s.crops().containsKey(read.get())) {
      fields.fault(
          "crop",
          "no crop " + FaultWords.shown(read.get()) + " in the crop list",
          FaultWords.oneOf(read.get(), s.crops().keySet().stream().sorted().toList()));
    } else {
      List<LogTray> others =
          trays.stream()
              .filter(t -> t.crop().filter(c -> !c.equals(read.get())).isPresent())
              .toList();
      if (others.isEmpty()) {
        trays.forEach(t -> t.isOf(read.get()));
      } else {
        fields.fault(
            "crop",
            LogTray.names(others)
                + are(others)
                + read.get()
                + ", but "
                + others.get(0).crop().orElseThrow()
                + " above",
            "one crop a tray");
      }
    }
  }

  /** No such sowing in the plan. */
  static void unknown(LogRow row, Scenario scenario, String otherwise) {
    row.fields()
        .fault(
            "sowing",
            "unknown sowing " + FaultWords.shown(row.sowing()),
            FaultWords.nearOr(
                row.sowing(), scenario.sowings().stream().map(Sowing::id).toList(), otherwise));
  }

  private Optional<Place> place(LogRow row) {
    Fields fields = row.fields();
    if (fields.isBlank("place") || scenario.isEmpty()) {
      return Optional.empty();
    }
    List<Place> places = scenario.get().places();
    String written = fields.name("place").orElse("");
    Optional<Place> place = places.stream().filter(p -> p.name().equals(written)).findFirst();
    if (place.isEmpty()) {
      fields.fault(
          "place",
          "no place " + FaultWords.shown(written),
          FaultWords.oneOf(written, places.stream().map(Place::name).toList()));
    } else if (row.event().isPresent()) {
      Optional<PlaceKind> kind = row.event().get().standsOn();
      if (kind.isPresent() && place.get().kind() != kind.get()) {
        fields.fault(
            "place",
            "%s is no place for what is %s: it is no %s"
                .formatted(
                    FaultWords.shown(written),
                    row.event().get().word(),
                    kind.get() == PlaceKind.TABLE ? "table" : "hardening area"),
            "a place of kind " + kind.get().word());
      }
    }
    return place;
  }

  /** In the order in which they come first. */
  public List<LogTray> all() {
    return List.copyOf(all);
  }
}
