package propcap.past;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import propcap.farm.Crop;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

/** The spaces of every place as a log fills them; a grower can overfill a table. */
final class Spaces {
  static final int NOWHERE = -1;

  private final List<Place> places;
  private final int[] used;

  /** Spaces that pots may fill beyond those used, and of a day those of what was thrown out. */
  private final int[] perhaps;

  private final int[] thrownOut;

  private final boolean[] toldOverfull;
  private final int[] tables;
  private final int[] hardeningAreas;

  Spaces(Scenario scenario) {
    places = scenario.places();
    used = new int[places.size()];
    perhaps = new int[places.size()];
    thrownOut = new int[places.size()];
    toldOverfull = new boolean[places.size()];
    tables = open(PlaceKind.TABLE);
    hardeningAreas = open(PlaceKind.HARDENING);
  }

  private int[] open(PlaceKind kind) {
    return IntStream.range(0, places.size())
        .filter(p -> places.get(p).kind() == kind && places.get(p).isOpen())
        .toArray();
  }

  /** Open tables, in the scenario's order. */
  int[] tables() {
    return tables;
  }

  int[] hardeningAreas() {
    return hardeningAreas;
  }

  /** Where a sowing germinates, best first. */
  int[] germinateIn(Sowing sowing, Crop crop) {
    return Stream.concat(Stream.ofNullable(sowing.germinateIn()), crop.germinateIn().stream())
        .distinct()
        .mapToInt(this::named)
        .filter(p -> places.get(p).isOpen())
        .toArray();
  }

  int named(String name) {
    return IntStream.range(0, places.size())
        .filter(p -> places.get(p).name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  String name(int place) {
    return places.get(place).name();
  }

  boolean isTable(int place) {
    return places.get(place).kind() == PlaceKind.TABLE;
  }

  int free(int place) {
    return places.get(place).spaces() - used[place];
  }

  /** The first of some places with so many spaces free; {@link #NOWHERE} if there is none. */
  int firstWithRoom(int[] of, int spaces) {
    return IntStream.of(of).filter(p -> free(p) >= spaces).findFirst().orElse(NOWHERE);
  }

  /** Whether one of some places had so many spaces free, whatever the log leaves open. */
  boolean surelyHasRoom(int[] of, int spaces) {
    return IntStream.of(of).anyMatch(p -> surelyFree(p) >= spaces);
  }

  int surelyFree(int place) {
    return free(place) - perhaps[place] - thrownOut[place];
  }

  /** A tray is thrown out of a place at its own turn, which the log does not tell. */
  void throwOut(int place, int spaces, int atMost) {
    leave(place, spaces, atMost);
    thrownOut[place] += atMost;
  }

  void beginDay() {
    Arrays.fill(thrownOut, 0);
  }

  void take(int place, int spaces, int atMost) {
    used[place] += spaces;
    perhaps[place] += atMost - spaces;
  }

  void leave(int place, int spaces, int atMost) {
    used[place] -= spaces;
    perhaps[place] -= atMost - spaces;
  }

  /** Places with more in them than they have spaces, each told once. */
  int[] newlyOverfull() {
    int[] over =
        IntStream.range(0, used.length).filter(p -> free(p) < 0 && !toldOverfull[p]).toArray();
    IntStream.of(over).forEach(p -> toldOverfull[p] = true);
    return over;
  }
}
