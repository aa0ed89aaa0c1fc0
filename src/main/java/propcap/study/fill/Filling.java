package propcap.study.fill;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.ToIntFunction;
import java.util.stream.IntStream;
import propcap.farm.PlanNeeds;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.plan.EndlessRoomSpring;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Strata;

/**
 * From needs to a first plan: for each sowing of which the day or the trays are not written, both
 * from simulated springs with endless room, in which sowings and trays do not get in each other's
 * way. How full the house is, is for the search that goes on from there.
 *
 * <p>The trays are the fewest that have the plants on time with the goal, beyond the error of the
 * springs, on the day on which the fewest do. The day is the last on which they still do, less a
 * week. What lots and trays differ by is in the springs and in no formula.
 */
public final class Filling {
  /** Springs of the first look over the season, and those on which trays and day are settled. */
  private static final int FIRST_LOOK = 24;

  private static final int SPRINGS = 160;

  /** Days tried together on the way to the last that does: a week of working days. */
  private static final int TOGETHER = 6;

  /**
   * So many times the trays that the mean yield asks for are tried, until each reaches its goal.
   */
  private static final double[] TIMES = {1.5, 3, 6};

  private static final int MORE_TRAYS = 4;

  /** Trays that tell what one brings. */
  private static final int SAMPLE = 8;

  /** Between the seed of what is filled in and those of what is then asked of it. */
  private static final long APART = 3_000_009;

  private final Scenario scenario;
  private final List<OpenSowing> open;
  private final RunSettings settings;

  private Filling(Scenario scenario, List<OpenSowing> open, RunSettings settings) {
    this.scenario = scenario;
    this.open = open;
    this.settings = settings;
  }

  /**
   * Fills in what is to be found.
   *
   * @param goal chance, above 0 and below 1, where the sowing plan says no other
   * @param earliest no day before it is taken
   * @param settings of what is asked next, which is tried on other springs than these
   * @throws BadQuestionException naming all sowings for which there is no day, or where the goal is
   *     no chance
   */
  public static FirstPlan fill(
      PlanNeeds needs, double goal, LocalDate earliest, RunSettings settings)
      throws BadQuestionException, InterruptedException {
    Scenario scenario = needs.scenario();
    if (needs.needs().isEmpty()) {
      return FirstPlan.asWritten(scenario);
    }
    BadQuestionException.unlessChance(goal);
    List<OpenSowing> open =
        needs.needs().stream().map(n -> OpenSowing.of(scenario, n, goal, earliest)).toList();
    List<String> impossible =
        open.stream()
            .filter(o -> !o.isPossible())
            .map(o -> o.sowing.id() + " (in the bed by " + o.sowing.bedBy() + ")")
            .toList();
    if (!impossible.isEmpty()) {
      throw new BadQuestionException(
          "no working day is left on which these may be sown: "
              + String.join(", ", impossible)
              + "; look at bed-by, sow-from and sow-to, or begin the season earlier");
    }
    RunSettings own =
        settings.ofSeed(
            settings.seed() + APART, RunSettings.whole(SPRINGS, scenario.weather().size()));
    return new Filling(scenario, open, own).filled();
  }

  private FirstPlan filled() throws InterruptedException {
    double[] perTray = plantsPerTray();
    boolean isReached = false;
    for (int t = 0; t < TIMES.length && !isReached; t++) {
      for (int i = 0; i < open.size(); i++) {
        open.get(i).trays = most(open.get(i), perTray[i], TIMES[t]);
      }
      isReached = takeBestDays();
    }
    takeTrays();
    takeLatestDays();
    List<Sowing> sowings = new ArrayList<>(scenario.sowings());
    List<FirstPlan.Filled> filled = new ArrayList<>();
    for (OpenSowing o : open) {
      Sowing sowing = o.sown(scenario, o.day, o.trays);
      sowings.set(o.number, sowing);
      filled.add(
          new FirstPlan.Filled(
              sowing,
              o.need.isDateOpen(),
              o.need.areTraysOpen(),
              o.goal,
              o.chance,
              settings.seasons()));
    }
    return new FirstPlan(scenario.withSowings(sowings), filled);
  }

  /** By sowing: plants on time that a tray brings on the best day, mean of a few springs. */
  private double[] plantsPerTray() throws InterruptedException {
    List<List<EndlessRoomSpring>> seen = look(o -> SAMPLE, OpenSowing::fewDays, FIRST_LOOK);
    return IntStream.range(0, open.size())
        .mapToDouble(
            i ->
                seen.stream()
                    .mapToDouble(day -> Samples.mean(day, o -> o.onTime(i, SAMPLE)) / SAMPLE)
                    .max()
                    .orElse(0))
        .toArray();
  }

  private int most(OpenSowing o, double perTray, double times) {
    if (!o.need.areTraysOpen()) {
      return o.sowing.trays();
    }
    double most = perTray > 0 ? perTray : scenario.cropOf(o.sowing).cells();
    double trays = Math.ceil(times * o.sowing.plantsNeeded() / most) + MORE_TRAYS;
    return (int) Math.min(Sowing.MOST_TRAYS, trays);
  }

  private boolean takeBestDays() throws InterruptedException {
    List<List<EndlessRoomSpring>> seen = look(o -> o.trays, OpenSowing::fewDays, FIRST_LOOK);
    boolean isReached = true;
    for (int i = 0; i < open.size(); i++) {
      OpenSowing o = open.get(i);
      List<Integer> days = o.fewDays();
      List<int[]> enough = new ArrayList<>();
      for (int d = 0; d < days.size(); d++) {
        enough.add(enough(seen.get(d), i));
      }
      isReached &= o.takeBestDay(days, enough) || !o.need.areTraysOpen();
    }
    return isReached;
  }

  private void takeTrays() throws InterruptedException {
    List<EndlessRoomSpring> seen =
        look(o -> o.trays, o -> List.of(o.day), settings.seasons()).get(0);
    Strata strata = Strata.of(scenario, settings.seed(), settings.seasons());
    for (int i = 0; i < open.size(); i++) {
      open.get(i).takeTrays(enough(seen, i), strata);
    }
  }

  /** Goes on over the best days, until behind them for a week none has reached its goal. */
  private void takeLatestDays() throws InterruptedException {
    List<List<Double>> chances = open.stream().<List<Double>>map(o -> new ArrayList<>()).toList();
    boolean isOver = false;
    for (int from = 0; !isOver; from += TOGETHER) {
      int first = from;
      List<List<EndlessRoomSpring>> seen =
          look(o -> o.trays, o -> part(o.daysFromThere(), first), settings.seasons());
      isOver = true;
      for (int i = 0; i < open.size(); i++) {
        OpenSowing o = open.get(i);
        List<Integer> days = part(o.daysFromThere(), first);
        for (int d = 0; d < days.size(); d++) {
          double chance = OpenSowing.share(enough(seen.get(d), i), o.trays);
          chances.get(i).add(chance);
          isOver &= chance < o.goal && days.get(d) > o.day;
        }
      }
    }
    for (int i = 0; i < open.size(); i++) {
      open.get(i).takeLatestDay(open.get(i).daysFromThere(), chances.get(i));
    }
  }

  private static List<Integer> part(List<Integer> days, int from) {
    return from >= days.size()
        ? List.of()
        : days.subList(from, Math.min(days.size(), from + TOGETHER));
  }

  /** Springs with endless room of all of them on their first days, on their second, and so on. */
  private List<List<EndlessRoomSpring>> look(
      ToIntFunction<OpenSowing> trays, Function<OpenSowing, List<Integer>> days, int springs)
      throws InterruptedException {
    int most = open.stream().mapToInt(o -> days.apply(o).size()).max().orElse(0);
    List<Scenario> sown =
        IntStream.range(0, most)
            .mapToObj(
                d ->
                    scenario
                        .withSowings(
                            open.stream()
                                .map(
                                    o ->
                                        o.sown(
                                            scenario,
                                            nth(days.apply(o), d, o.day),
                                            trays.applyAsInt(o)))
                                .toList())
                        .withEndlessRoom()
                        .withEndlessHands())
            .toList();
    if (sown.isEmpty()) {
      return List.of();
    }
    try (Seasons seasons = Seasons.withDiaries(sown, settings)) {
      return seasons.run(
          Math.min(springs, settings.seasons()),
          (d, outcome) -> new EndlessRoomSpring(sown.get(d), outcome),
          share -> {});
    }
  }

  /** One of some days; the last of them where there are not so many. */
  private static int nth(List<Integer> days, int n, int ifNone) {
    return days.isEmpty() ? ifNone : days.get(Math.min(n, days.size() - 1));
  }

  /** By spring: the fewest trays with the plants needed on time, one more than all if none has. */
  private int[] enough(List<EndlessRoomSpring> springs, int i) {
    OpenSowing o = open.get(i);
    return springs.stream()
        .mapToInt(
            spring ->
                IntStream.rangeClosed(1, o.trays)
                    .filter(t -> spring.onTime(i, t) >= o.sowing.plantsNeeded())
                    .findFirst()
                    .orElse(o.trays + 1))
        .toArray();
  }
}
