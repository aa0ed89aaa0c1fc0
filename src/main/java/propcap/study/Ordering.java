package propcap.study;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import propcap.farm.Crop;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.study.Sizing.Candidate;

/**
 * From spaces to what a planner orders: area, tables, trays, pots and mats, with the arithmetic.
 *
 * <p>A space is a standard 1020 flat, about 28 x 54 cm outside (trade convention, from memory).
 */
public final class Ordering {
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
  public Ordering(double aisles) throws BadQuestionException {
    if (!(aisles >= 0 && aisles < 1)) {
      throw new BadQuestionException("a share of aisle is from 0 % to less than 100 %");
    }
    this.aisles = aisles;
  }

  /** What the answer adds to the places as they are; nothing where there is no answer. */
  public OrderList of(Sizing sizing) {
    List<OrderList.Line> lines = new ArrayList<>();
    List<String> arithmetic = new ArrayList<>();
    sizing.found().ifPresent(answer -> add(sizing, answer, lines, arithmetic));
    return new OrderList(lines, arithmetic);
  }

  private void add(
      Sizing sizing, Candidate answer, List<OrderList.Line> lines, List<String> arithmetic) {
    Scenario scenario = sizing.scenario();
    for (int i = 0; i < sizing.places().size(); i++) {
      String name = sizing.places().get(i);
      if (Capacity.isHands(scenario, name)) {
        arithmetic.add(hands(scenario, answer.spaces().get(i)));
        continue;
      }
      Place place =
          scenario.places().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
      int more = answer.spaces().get(i) - place.spaces();
      if (more <= 0) {
        arithmetic.add(
            String.format(
                Locale.ROOT,
                "%s has %d spaces already, and %d are enough: nothing to order.",
                name,
                place.spaces(),
                answer.spaces().get(i)));
        continue;
      }
      add(scenario, place, more, lines, arithmetic);
    }
  }

  private static String hands(Scenario scenario, int hours) {
    double now = scenario.labour().hoursPerDay();
    return scenario.labour().isLimited()
        ? String.format(Locale.ROOT, "Hands: %d hours a day, where there are %.1f now.", hours, now)
        : String.format(Locale.ROOT, "Hands: %d hours a day of all people together.", hours);
  }

  private void add(
      Scenario scenario,
      Place place,
      int more,
      List<OrderList.Line> lines,
      List<String> arithmetic) {
    double m2 = more * FLAT_M2;
    lines.add(line(place.name() + ": room for trays", "%,d spaces", more));
    arithmetic.add(
        String.format(
            Locale.ROOT,
            "%s: %,d spaces x 0.28 m x 0.54 m (a 1020 flat) = %.1f m2 = %,.0f ft2.",
            place.name(),
            more,
            m2,
            m2 * SQUARE_FEET_PER_M2));
    lines.add(line(place.name() + ": " + surface(place.kind()), area(m2)));
    if (place.kind() == PlaceKind.TABLE || place.kind() == PlaceKind.HEAT_BENCH) {
      double floor = m2 / (1 - aisles);
      lines.add(line(place.name() + ": tables of 1.5 x 6 m", "%,d", ceil(m2 / TABLE_M2)));
      lines.add(line(place.name() + ": floor with aisles", area(floor)));
      arithmetic.add(
          String.format(
              Locale.ROOT,
              "%.1f m2 / 9 m2 a table = %d tables; %.1f m2 / (1 - %.0f %% aisle) = %.1f m2 of floor.",
              m2,
              ceil(m2 / TABLE_M2),
              m2,
              100 * aisles,
              floor));
    }
    if (place.kind() == PlaceKind.HEAT_BENCH) {
      lines.add(
          line(
              place.name() + ": heat mats for 4 flats",
              "%,d",
              ceil(more / (double) FLATS_PER_MAT)));
    }
    lines.add(line(place.name() + ": trays to fill it", "%,d", more));
    if (place.kind() == PlaceKind.TABLE) {
      addPots(scenario, place, more, lines, arithmetic);
    }
  }

  /** Pots for the case that all of the new room is filled with the crop that packs most of them. */
  private static void addPots(
      Scenario scenario,
      Place place,
      int more,
      List<OrderList.Line> lines,
      List<String> arithmetic) {
    int most =
        scenario.sowings().stream()
            .map(scenario::cropOf)
            .map(Crop::pottingOn)
            .filter(p -> p.when() != Crop.PottingOn.When.NEVER)
            .mapToInt(Crop.PottingOn::potsPerTray)
            .max()
            .orElse(0);
    if (most > 0) {
      lines.add(line(place.name() + ": pots, at most", "%,d", more * most));
      arithmetic.add(
          String.format(
              Locale.ROOT,
              "Pots: at most %d to a space (the crop that packs most), x %,d spaces = %,d.",
              most,
              more,
              more * most));
    }
  }

  private static String surface(PlaceKind kind) {
    return switch (kind) {
      case CHAMBER -> "shelf area";
      case HARDENING -> "ground area, without paths";
      case TABLE, HEAT_BENCH -> "table area";
    };
  }

  private static String area(double m2) {
    return String.format(Locale.ROOT, "%.1f m2 (%,.0f ft2)", m2, m2 * SQUARE_FEET_PER_M2);
  }

  private static int ceil(double x) {
    return (int) Math.ceil(x - 1e-9);
  }

  private static OrderList.Line line(String what, String form, Object... numbers) {
    return new OrderList.Line(what, String.format(Locale.ROOT, form, numbers));
  }
}
