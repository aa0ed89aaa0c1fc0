package propcap.web;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;
import propcap.files.CsvText;
import propcap.files.UnsavedTexts;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;

/**
 * What the page shows of the season so far.
 *
 * @param file that the log is kept in; empty where none is
 * @param isLogged whether that file is there and can be written in
 * @param isWinter whether the log is left aside
 * @param line how the forecast stands to the day, in a sentence; empty where there is no log
 * @param today the day by the grower or the clock
 * @param isChosen whether it is the grower's
 * @param columns of the log
 * @param events all that can be written
 * @param groups trays that stand alike, and those to be sown; none while something is to mend
 */
record SoFarTab(
    String file,
    boolean isLogged,
    boolean isWinter,
    boolean isOverfull,
    String line,
    String today,
    boolean isChosen,
    List<String> columns,
    List<String> events,
    List<Group> groups) {

  /** A sowing is shown some days before it is due, as it may be sown early. */
  private static final int DAYS_AHEAD = 7;

  /**
   * Trays of one sowing that stand alike.
   *
   * @param stage where they are in their life, in words
   * @param place empty where they are not sown yet
   * @param trays their names, lowest number first
   * @param next what can come next, the likeliest first
   */
  record Group(
      String sowing,
      String crop,
      String stage,
      String place,
      List<String> trays,
      List<Next> next) {}

  /**
   * What can come next.
   *
   * @param places where the trays can stand after it
   * @param isAlone whether a number of trays is enough to say which are meant
   */
  record Next(String event, List<String> places, boolean isAlone) {}

  static SoFarTab of(Desk.View view) {
    Optional<Path> file = view.reading().written().logFile();
    Optional<Scenario> scenario = view.reading().scenario();
    List<String> columns = file.map(f -> columns(view, f)).orElse(List.of());
    SoFar soFar = scenario.map(Scenario::soFar).orElse(null);
    LocalDate today = held(view.today(), scenario);
    return new SoFarTab(
        file.map(f -> view.folder().name(f)).orElse(""),
        !columns.isEmpty(),
        view.day().isWinter(),
        view.day().isOverfull(),
        file.isEmpty() ? "" : line(view.day(), scenario),
        today.toString(),
        view.day().chosen() != null,
        columns,
        LoggedEvent.words(),
        file.isEmpty() || soFar == null
            ? List.of()
            : new Standing(scenario.orElseThrow(), soFar, today).groups());
  }

  /** None where it cannot be written in; why, its reader tells. */
  private static List<String> columns(Desk.View view, Path file) {
    try {
      var texts = new UnsavedTexts(view.draft().texts(), view.folder().disk());
      return CsvText.columns(texts.text(file));
    } catch (IOException | IllegalArgumentException e) {
      return List.of();
    }
  }

  private static LocalDate held(LocalDate today, Optional<Scenario> scenario) {
    if (scenario.isEmpty()) {
      return today;
    }
    LocalDate start = scenario.get().season().start();
    LocalDate end = scenario.get().season().end();
    return today.isBefore(start) ? start : today.isAfter(end) ? end : today;
  }

  private static String line(Readings.Day day, Optional<Scenario> scenario) {
    SoFar soFar = scenario.map(Scenario::soFar).orElse(null);
    if (day.isWinter()) {
      return "As before the season: what the log says is left aside.";
    }
    if (soFar == null) {
      return "";
    }
    int trays = (int) soFar.trays().stream().filter(t -> !t.isGone()).count();
    return "From "
        + Dates.day(soFar.today(), scenario.orElseThrow().season())
        + " on: "
        + Words.plural(trays, "tray")
        + (trays == 1 ? " stands" : " stand")
        + " in the house.";
  }

  /** The trays of a house on a day. */
  private record Standing(Scenario scenario, SoFar soFar, LocalDate today) {
    /** In the plan's order, first those to be sown. */
    List<Group> groups() {
      List<Group> groups = new ArrayList<>();
      for (Sowing sowing : scenario.sowings()) {
        List<TrayPast> trays = soFar.of(sowing);
        Crop crop = Objects.requireNonNull(scenario.crops().get(sowing.crop()));
        toBeSown(sowing, crop, trays).ifPresent(groups::add);
        trays.stream()
            .filter(t -> !t.isGone())
            .sorted(Comparator.comparingInt(TrayPast::number).thenComparing(TrayPast::attempt))
            .collect(Collectors.groupingBy(this::alike, LinkedHashMap::new, Collectors.toList()))
            .values()
            .forEach(alike -> groups.add(group(crop, alike, trays)));
      }
      return groups;
    }

    private Optional<Group> toBeSown(Sowing sowing, Crop crop, List<TrayPast> trays) {
      Set<Integer> sown = trays.stream().map(TrayPast::number).collect(Collectors.toSet());
      List<String> left =
          IntStream.range(0, sowing.trays())
              .filter(n -> !sown.contains(n))
              .mapToObj(n -> "" + (n + 1))
              .toList();
      if (left.isEmpty() || sowing.sow().isAfter(today.plusDays(DAYS_AHEAD))) {
        return Optional.empty();
      }
      List<String> heat = open(place -> crop.germinateIn().contains(place.name()));
      return Optional.of(
          new Group(
              sowing.id(),
              crop.name(),
              "to be sown, due " + Dates.day(sowing.sow(), scenario.season()),
              "",
              left,
              List.of(new Next(LoggedEvent.SOWN.word(), heat, true))));
    }

    /** What is told of a tray that stands like others. */
    private List<Object> alike(TrayPast tray) {
      return List.of(stage(tray), tray.standsIn().orElse(""), next(tray));
    }

    private Group group(Crop crop, List<TrayPast> alike, List<TrayPast> all) {
      TrayPast first = alike.get(0);
      List<Next> next = new ArrayList<>();
      for (LoggedEvent event : next(first)) {
        boolean isAlone =
            all.stream().filter(t -> !t.isGone() && canHave(t, event)).allMatch(alike::contains);
        next.add(new Next(event.word(), places(event), isAlone));
      }
      return new Group(
          first.sowing(),
          crop.name(),
          stage(first),
          first.standsIn().orElse(""),
          alike.stream().map(TrayPast::name).toList(),
          next);
    }

    private static String stage(TrayPast tray) {
      return switch (last(tray, LoggedEvent::isMove)) {
        case SOWN -> "in the heat";
        case POTTED_ON -> "in pots";
        case MOVED_OUT -> "hardening off";
        default -> tray.at(LoggedEvent.READY).isPresent() ? "growing on, ready" : "growing on";
      };
    }

    private static LoggedEvent last(TrayPast tray, Predicate<LoggedEvent> of) {
      return tray.moves().stream()
          .map(TrayPast.Move::event)
          .filter(of)
          .reduce((a, b) -> b)
          .orElse(LoggedEvent.SOWN);
    }

    /** Moves first, then what is only seen; thrown out last. */
    private List<LoggedEvent> next(TrayPast tray) {
      Crop crop = scenario.crops().get(cropOf(tray));
      Crop.PottingOn.When potting =
          crop == null ? Crop.PottingOn.When.NEVER : crop.pottingOn().when();
      return Stream.of(LoggedEvent.values())
          .filter(event -> canHave(tray, event))
          .filter(e -> e != LoggedEvent.POTTED_ON || potting != Crop.PottingOn.When.NEVER)
          .sorted(Comparator.comparingInt(e -> rank(e, potting)))
          .toList();
    }

    private String cropOf(TrayPast tray) {
      return scenario.sowings().stream()
          .filter(s -> s.id().equals(tray.sowing()))
          .map(Sowing::crop)
          .findFirst()
          .orElse("");
    }

    private static int rank(LoggedEvent event, Crop.PottingOn.When potting) {
      if (event == LoggedEvent.THROWN_OUT) {
        return 3;
      }
      boolean isSeldom = event == LoggedEvent.POTTED_ON && potting == Crop.PottingOn.When.IF_HELD;
      return event.isMove() ? isSeldom ? 1 : 0 : 2;
    }

    private static boolean canHave(TrayPast tray, LoggedEvent event) {
      return event.takes(last(tray, e -> true))
          && (event.mayComeAgain() || tray.at(event).isEmpty());
    }

    private List<String> places(LoggedEvent event) {
      return switch (event) {
        case OFF_HEAT, POTTED_ON -> open(p -> p.kind() == PlaceKind.TABLE);
        case MOVED_OUT -> open(p -> p.kind() == PlaceKind.HARDENING);
        default -> List.of();
      };
    }

    private List<String> open(Predicate<Place> which) {
      return scenario.places().stream()
          .filter(p -> p.isOpen() && which.test(p))
          .map(Place::name)
          .toList();
    }
  }
}
