package propcap.study;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.Scenario;

/**
 * What there may be too little of: the spaces of a place, or people's hours a day.
 *
 * @param place null: it is the hands
 * @param size spaces, or hours of a usual day; infinite where hours are not limited
 */
public record Capacity(String name, @Nullable Place place, double size) {
  /** By which people's hours are asked for, unless a place has that name. */
  public static final String HANDS = "Hands";

  public static Capacity of(Place place) {
    return new Capacity(place.name(), place, place.spaces());
  }

  private static Capacity hands(Scenario scenario) {
    return new Capacity(HANDS, null, scenario.labour().hoursPerDay());
  }

  /** All that a scenario may be short of: its open places, and hands where they are limited. */
  public static List<Capacity> allOf(Scenario scenario) {
    Stream<Capacity> places = scenario.places().stream().filter(Place::isOpen).map(Capacity::of);
    Stream<Capacity> hands =
        scenario.labour().isLimited() && scenario.labour().hoursPerDay() > 0
            ? Stream.of(hands(scenario))
            : Stream.of();
    return Stream.concat(places, hands).toList();
  }

  /**
   * What a question names.
   *
   * @throws BadQuestionException where nothing has that name
   */
  public static Capacity named(Scenario scenario, String name) throws BadQuestionException {
    return isHands(scenario, name)
        ? hands(scenario)
        : of(scenario.places().get(NamesInQuestions.place(scenario, name)));
  }

  /** Whether a name stands for people's hours in a scenario. */
  public static boolean isHands(Scenario scenario, String name) {
    return name.equals(HANDS) && scenario.places().stream().noneMatch(p -> p.name().equals(HANDS));
  }

  public boolean isHands() {
    return place == null;
  }

  /** A scenario with another size of it. */
  public Scenario sized(Scenario scenario, double newSize) {
    if (isHands()) {
      return scenario.withLabour(scenario.labour().withHoursPerDay(newSize));
    }
    int spaces = (int) Math.round(newSize);
    return scenario.withPlaces(
        scenario.places().stream()
            .map(p -> p.name().equals(name) ? p.withSpaces(spaces) : p)
            .toList());
  }
}
