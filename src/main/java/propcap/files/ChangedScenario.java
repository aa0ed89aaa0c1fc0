package propcap.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import propcap.farm.Labour;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.files.text.Faults;

/** A scenario with all the changes of a row of a table of changes. */
record ChangedScenario(Scenario scenario, List<Change.Cell> cells, Faults faults) {
  /** Changes it from left to right; empty where they do not go, which is reported. */
  Optional<Scenario> made() {
    List<Place> places = new ArrayList<>(scenario.places());
    List<Sowing> sowings = new ArrayList<>(scenario.sowings());
    Labour labour = scenario.labour();
    boolean isPossible = true;
    for (Change.Cell cell : cells) {
      Change change = cell.change();
      switch (change.kind()) {
        case SPACES ->
            places.replaceAll(p -> change.isOf(p) ? p.withSpaces((int) cell.number()) : p);
        case TRAYS -> {
          sowings.replaceAll(s -> change.isOf(s) ? s.withTrays(cell.trays(s)) : s);
          isPossible &= areEnough(sowings, cell);
        }
        case SHIFT -> {
          sowings.replaceAll(s -> change.isOf(s) ? s.shifted((int) cell.number()) : s);
          isPossible &= isInSeason(sowings, cell);
        }
        case HOURS -> labour = labour.withHoursPerDay(cell.number());
      }
    }
    if (!isPossible) {
      return Optional.empty();
    }
    try {
      return Optional.of(scenario.withPlaces(places).withSowings(sowings).withLabour(labour));
    } catch (IllegalArgumentException e) {
      faults.add(
          cells.get(0).fields().at(),
          "with " + ChangesReader.words(cells) + ": " + e.getMessage(),
          "changes that leave a farm which can work");
      return Optional.empty();
    }
  }

  /** What has been sown stands in the house, whatever is planned. */
  private boolean areEnough(List<Sowing> sowings, Change.Cell cell) {
    Optional<Sowing> lacking = first(sowings, cell, s -> s.trays() < scenario.leastTrays(s));
    lacking.ifPresent(
        s ->
            cell.fields()
                .wrong(
                    cell.change().head(),
                    "and " + scenario.leastTrays(s) + " of " + s.id() + " have been sown",
                    "no fewer than have been sown, or sowings that are still to come"));
    return lacking.isEmpty();
  }

  private boolean isInSeason(List<Sowing> sowings, Change.Cell cell) {
    Optional<Sowing> outside = first(sowings, cell, s -> !scenario.season().contains(s.sow()));
    outside.ifPresent(
        s ->
            cell.fields()
                .wrong(
                    cell.change().head(),
                    "and " + s.id() + " would be sown on " + s.sow() + ", outside the season",
                    "fewer days, or a longer season"));
    return outside.isEmpty();
  }

  private static Optional<Sowing> first(
      List<Sowing> sowings, Change.Cell cell, Predicate<Sowing> which) {
    return sowings.stream().filter(cell.change()::isOf).filter(which).findFirst();
  }
}
