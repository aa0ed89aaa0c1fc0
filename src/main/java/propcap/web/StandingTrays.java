package propcap.web;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import propcap.farm.Crop;
import propcap.farm.Crop.PottingOn.When;
import propcap.farm.LoggedEvent;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;
import propcap.report.PageWords;
import propcap.web.SoFarTab.Group;
import propcap.web.SoFarTab.Next;

/**
 * The trays of one sowing on a day: those that stand, and those to be sown.
 *
 * @param morning before that day's round
 * @param trays of it that were sown
 */
record StandingTrays(
    Scenario scenario, LocalDate morning, Sowing sowing, Crop crop, List<TrayPast> trays) {
  /** A sowing is shown some days before it is due, as it may be sown early. */
  private static final int DAYS_AHEAD = 7;

  /** Those of a house, in the plan's order, of each sowing first those to be sown. */
  static List<Group> of(Scenario scenario, SoFar soFar) {
    return scenario.sowings().stream()
        .map(s -> new StandingTrays(scenario, soFar.today(), s, scenario.cropOf(s), soFar.of(s)))
        .flatMap(its -> Stream.concat(its.toBeSown().stream(), its.standing().stream()))
        .toList();
  }

  private Optional<Group> toBeSown() {
    Set<Integer> sown = trays.stream().map(TrayPast::number).collect(Collectors.toSet());
    List<String> left =
        IntStream.range(0, sowing.trays())
            .filter(n -> !sown.contains(n))
            .mapToObj(n -> "" + (n + 1))
            .toList();
    if (left.isEmpty() || sowing.sow().isAfter(morning.plusDays(DAYS_AHEAD))) {
      return Optional.empty();
    }
    List<String> heat = open(place -> crop.germinateIn().contains(place.name()));
    return Optional.of(
        new Group(
            sowing.id(),
            crop.name(),
            "to be sown, due " + PageWords.day(sowing.sow(), scenario.season()),
            "",
            left,
            List.of(next(LoggedEvent.SOWN, heat, true))));
  }

  private List<Group> standing() {
    return trays.stream()
        .filter(t -> !t.isGone())
        .sorted(Comparator.comparingInt(TrayPast::number).thenComparing(TrayPast::attempt))
        .collect(Collectors.groupingBy(this::alike, LinkedHashMap::new, Collectors.toList()))
        .values()
        .stream()
        .map(this::group)
        .toList();
  }

  /** What is told of a tray that stands like others. */
  private List<Object> alike(TrayPast tray) {
    return List.of(stage(tray), tray.standsIn().orElse(""), next(tray));
  }

  private Group group(List<TrayPast> alike) {
    TrayPast first = alike.get(0);
    List<Next> next = new ArrayList<>();
    for (LoggedEvent event : next(first)) {
      boolean isAlone = trays.stream().filter(t -> canHave(t, event)).allMatch(alike::contains);
      List<String> places =
          event.standsOn().map(kind -> open(p -> p.kind() == kind)).orElse(List.of());
      next.add(next(event, places, isAlone));
    }
    return new Group(
        first.sowing(),
        crop.name(),
        stage(first),
        first.standsIn().orElse(""),
        alike.stream().map(TrayPast::name).toList(),
        next);
  }

  private Next next(LoggedEvent event, List<String> places, boolean isAlone) {
    return new Next(
        event.word(), places, isAlone, plants(event), countedUntil(event), crop.standWindowDays());
  }

  /** What plants of a row are, in words; empty where nobody counts them. */
  private static String plants(LoggedEvent event) {
    return switch (event) {
      case SOWN, MOVED_OUT, PLANTED_OUT, THROWN_OUT -> "";
      case COUNTED -> "Showing in each";
      case OUTBREAK -> "Left in each";
      case OFF_HEAT, READY, POTTED_ON -> "Plants in each";
    };
  }

  /** The stand is counted once the last seedlings are up. */
  private String countedUntil(LoggedEvent event) {
    long window = (long) Math.ceil(crop.standWindowDays());
    return event == LoggedEvent.OFF_HEAT ? morning.minusDays(window).toString() : "";
  }

  private static String stage(TrayPast tray) {
    return switch (tray.lastMove()) {
      case SOWN -> "in the heat";
      case POTTED_ON -> "in pots";
      case MOVED_OUT -> "hardening off";
      default -> tray.at(LoggedEvent.READY).isPresent() ? "growing on, ready" : "growing on";
    };
  }

  /** Moves first, then what is only seen; thrown out last. */
  private List<LoggedEvent> next(TrayPast tray) {
    return Stream.of(LoggedEvent.values())
        .filter(event -> canHave(tray, event))
        .sorted(Comparator.comparingInt(this::rank))
        .toList();
  }

  private int rank(LoggedEvent event) {
    if (event == LoggedEvent.THROWN_OUT) {
      return 3;
    }
    boolean isSeldom = event == LoggedEvent.POTTED_ON && potting() == When.IF_HELD;
    return event.isMove() ? isSeldom ? 1 : 0 : 2;
  }

  private boolean canHave(TrayPast tray, LoggedEvent event) {
    return event.takes(tray.lastEvent(), potting())
        && (event.mayComeAgain() || tray.at(event).isEmpty())
        && (event != LoggedEvent.POTTED_ON || potting() != When.NEVER);
  }

  private When potting() {
    return crop.pottingOn().when();
  }

  private List<String> open(Predicate<Place> which) {
    return scenario.places().stream()
        .filter(p -> p.isOpen() && which.test(p))
        .map(Place::name)
        .toList();
  }
}
