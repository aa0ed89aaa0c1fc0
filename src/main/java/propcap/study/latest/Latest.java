package propcap.study.latest;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.RunSettings;

/**
 * The last days to sow.
 *
 * @param scenario the plan as it was asked about, with what was filled in
 * @param sowings those asked about, in the plan's order
 * @param withoutNeed those asked about that need no plants, by id: nothing is late for them
 * @param begun those asked about of which trays are sown already, by id: their day is past
 */
public record Latest(
    Scenario scenario,
    LatestQuestion question,
    RunSettings settings,
    List<ForSowing> sowings,
    List<String> withoutNeed,
    List<String> begun) {

  /** It is too late once fewer springs than this share of them have the plants on time. */
  public static final double TOO_LATE = 0.5;

  public Latest {
    sowings = List.copyOf(sowings);
    withoutNeed = List.copyOf(withoutNeed);
    begun = List.copyOf(begun);
  }

  /**
   * One sowing, on each day by itself, all else as it is.
   *
   * @param sowing as the plan has it
   * @param goal the chance asked for
   * @param alone with nothing else in the house
   * @param inHouse with the whole plan in it
   */
  public record ForSowing(Sowing sowing, double goal, Course alone, Course inHouse) {}

  /**
   * The chance of a sowing by the day on which it is sown.
   *
   * @param days those tried, in order
   * @param isWhole whether all working days were, back to the first that may be asked about
   */
  public record Course(List<Day> days, boolean isWhole) {
    public Course {
      days = List.copyOf(days);
    }

    /** The day with the highest chance, the last of several; empty where no day was left. */
    public Optional<Day> best() {
      return days.stream().max(Comparator.comparingDouble(Day::chance).thenComparing(Day::sow));
    }

    /** The last day on which a chance is reached; empty where it is on none of those tried. */
    public Optional<LastDay> last(double chance) {
      return lastWith(chance, Day::chance).map(last -> lastDay(chance, last));
    }

    private Optional<Day> lastWith(double chance, ToDoubleFunction<Day> number) {
      return days.stream()
          .filter(d -> number.applyAsDouble(d) >= chance)
          .reduce((earlier, later) -> later);
    }

    private LastDay lastDay(double chance, Day last) {
      int at = days.indexOf(last);
      int since = at;
      while (since > 0 && days.get(since - 1).high() >= chance) {
        since--;
      }
      return new LastDay(
          last,
          lastWith(chance, Day::low).map(Day::sow).orElse(null),
          lastWith(chance, Day::high).map(Day::sow).orElse(last.sow()),
          days.get(since).sow(),
          since == 0,
          days.subList(0, since).stream().filter(d -> d.high() < chance).map(Day::sow).toList());
    }
  }

  /**
   * A day to sow on.
   *
   * @param springs that it was tried on
   * @param chance share of them in which the plants needed are on time
   * @param low 95 % limit below of that chance, of this day by itself
   * @param high limit above
   */
  public record Day(LocalDate sow, int springs, double chance, double low, double high) {}

  /**
   * The last day to sow for a chance.
   *
   * @param day by the estimate
   * @param surely the last day of which the limit below reaches it too; null: of none that was
   *     tried
   * @param perhaps the last day of which the limit above does
   * @param since the first of the days up to the last of which none is clearly below the chance
   * @param isSinceFirst whether no day before that was tried
   * @param holes days tried before that which are clearly below it
   */
  public record LastDay(
      Day day,
      @Nullable LocalDate surely,
      LocalDate perhaps,
      LocalDate since,
      boolean isSinceFirst,
      List<LocalDate> holes) {}

  /** The sowings that reach their goal on no day, in the house as full as it is. */
  public List<ForSowing> never() {
    return sowings.stream().filter(s -> s.inHouse().last(s.goal()).isEmpty()).toList();
  }

  /** The most springs that one day took. */
  public int seasons() {
    return sowings.stream()
        .flatMap(s -> Stream.of(s.alone(), s.inHouse()))
        .flatMap(c -> c.days().stream())
        .mapToInt(Day::springs)
        .max()
        .orElse(0);
  }
}
