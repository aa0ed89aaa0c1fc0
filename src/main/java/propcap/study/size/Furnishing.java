package propcap.study.size;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import propcap.farm.Crop;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.Capacity;

/**
 * From spaces to what a planner orders: area, tables, trays, pots and mats, with the arithmetic.
 *
 * <p>A space is a standard 1020 flat, about 28 x 54 cm outside (trade convention, from memory).
 */
public final class Furnishing {
  private static final double FLAT_M2 = 0.28 * 0.54;
  private static final double SQUARE_FEET_PER_M2 = 1 / (0.3048 * 0.3048);

  /** A table of 1.5 x 6 m; planning default. */
  private static final double TABLE_M2 = 1.5 * 6;

  /** Flats on a mat of about 55 x 120 cm; trade convention, from memory. */
  private static final int FLATS_PER_MAT = 4;

  private final double aisles;

  /**
   * Orders for a house in which this share of the floor is aisle.
   *
   * @throws BadQuestionException where the share is not from 0 up to 100 %
   */
  public Furnishing(double aisles) throws BadQuestionException {
    if (!(aisles >= 0 && aisles < 1)) {
      throw new BadQuestionException("a share of aisle is from 0 % to less than 100 %");
    }
    this.aisles = aisles;
  }

  /** What the answer adds to the places as they are; nothing where there is no answer. */
  public FurnishingList of(Sizing sizing) {
    Order order = new Order(sizing.scenario());
    sizing.found().ifPresent(answer -> order.add(sizing.places(), answer.spaces()));
    return new FurnishingList(order.lines, order.arithmetic);
  }

  /** What is to be ordered, place by place. */
  private final class Order {
    final List<FurnishingList.Line> lines = new ArrayList<>();
    final List<String> arithmetic = new ArrayList<>();
    private final Scenario scenario;

    Order(Scenario scenario) {
      this.scenario = scenario;
    }

    void add(List<String> names, List<Integer> spaces) {
      for (int i = 0; i < names.size(); i++) {
        String name = names.get(i);
        int wanted = spaces.get(i);
        if (Capacity.isHands(scenario, name)) {
          arithmetic.add(hands(scenario, wanted));
          continue;
        }
        Place place =
            scenario.places().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
        if (wanted > place.spaces()) {
          add(place, wanted - place.spaces());
        } else {
          arithmetic.add(
              text(
                  "%s has %,d spaces already, and %,d are enough: nothing to order.",
                  name, place.spaces(), wanted));
        }
      }
    }

    private void add(Place place, int more) {
      String name = place.name();
      double m2 = more * FLAT_M2;
      lines.add(count(name, "room for trays", more, "space"));
      arithmetic.add(
          text(
              "%s: %,d spaces x 0.28 m x 0.54 m (a 1020 flat) = %,.2f m2 = %,.0f ft2.",
              name, more, m2, m2 * SQUARE_FEET_PER_M2));
      lines.add(area(name, surface(place.kind()), m2));
      if (place.kind() == PlaceKind.TABLE || place.kind() == PlaceKind.HEAT_BENCH) {
        addTables(name, m2);
      }
      if (place.kind() == PlaceKind.HEAT_BENCH) {
        long mats = ceil(more / (double) FLATS_PER_MAT);
        lines.add(bare(name, "heat mats for 4 flats", mats, "mats"));
      }
      lines.add(bare(name, "trays to fill it", more, "trays"));
      if (place.kind() == PlaceKind.TABLE) {
        addPots(place, more);
      }
    }

    /** Whole tables, and the floor on which they stand. */
    private void addTables(String place, double m2) {
      long tables = ceil(m2 / TABLE_M2);
      double floor = tables * TABLE_M2 / (1 - aisles);
      lines.add(bare(place, "tables of 1.5 x 6 m", tables, "tables"));
      lines.add(area(place, "floor with aisles", floor));
      arithmetic.add(
          text(
              "%,.2f m2 / 9 m2 a table = %,.2f, so %,d %s; %,d x 9 m2 / (1 - %.0f %% aisle) ="
                  + " %,.1f m2 of floor.",
              m2,
              m2 / TABLE_M2,
              tables,
              tables == 1 ? "table" : "tables",
              tables,
              100 * aisles,
              floor));
    }

    /**
     * Pots for the case that all of the new room is filled with the crop that packs most of them.
     */
    private void addPots(Place place, int more) {
      Optional<Crop> packsMost =
          scenario.sowings().stream()
              .map(scenario::cropOf)
              .filter(c -> c.pottingOn().when() != Crop.PottingOn.When.NEVER)
              .max(Comparator.comparingInt(c -> c.pottingOn().potsPerTray()));
      if (packsMost.isEmpty()) {
        return;
      }
      String crop = packsMost.get().name();
      int toASpace = packsMost.get().pottingOn().potsPerTray();
      long pots = (long) more * toASpace;
      lines.add(
          bare(
              place.name(), "pots, if all the new room is for " + crop + " in pots", pots, "pots"));
      arithmetic.add(
          text(
              "Pots: at most %,d to a space (%s packs most), x %,d spaces = %,d; none for what is not"
                  + " potted on there.",
              toASpace, crop, more, pots));
    }
  }

  private static String hands(Scenario scenario, int hours) {
    double now = scenario.labour().hoursPerDay();
    return scenario.labour().isLimited()
        ? text("Hands: %d hours a day, where there are %.1f now.", hours, now)
        : text("Hands: %d hours a day of all people together.", hours);
  }

  private static String surface(PlaceKind kind) {
    return switch (kind) {
      case CHAMBER -> "shelf area";
      case HARDENING -> "ground area, without paths";
      case TABLE, HEAT_BENCH -> "table area";
    };
  }

  private static FurnishingList.Line area(String place, String what, double m2) {
    return new FurnishingList.Line(
        place, what, m2, "m2", text("%,.1f m2 (%,.0f ft2)", m2, m2 * SQUARE_FEET_PER_M2));
  }

  /** With its unit, in one or in many. */
  private static FurnishingList.Line count(String place, String what, long count, String one) {
    String shown = text("%,d %s%s", count, one, count == 1 ? "" : "s");
    return new FurnishingList.Line(place, what, count, one + "s", shown);
  }

  /** Where what it is says what is counted. */
  private static FurnishingList.Line bare(String place, String what, long count, String unit) {
    return new FurnishingList.Line(place, what, count, unit, text("%,d", count));
  }

  private static long ceil(double x) {
    return (long) Math.ceil(x - 1e-9);
  }

  private static String text(String form, Object... values) {
    return String.format(Locale.ROOT, form, values);
  }
}
