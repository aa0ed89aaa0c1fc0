package propcap.study.shift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.DoubleConsumer;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.season.SeasonOutcome;
import propcap.study.BadQuestionException;
import propcap.study.Ladder;
import propcap.study.NamesInQuestions;
import propcap.study.RunSettings;
import propcap.study.SeasonTotals;
import propcap.study.Seasons;
import propcap.study.money.Accounts;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Stat;
import propcap.study.statistics.Strata;

/** When is the best day to sow? Groups of sowings, moved together, on the same seasons. */
public final class Shifting {

  private static final int GROUP_ON_TIME = 0;
  private static final int GROUP_LATE = 1;
  private static final int GROUP_MET = 2;
  private static final int ALL_ON_TIME = 3;
  private static final int MARGIN = 4;

  private Shifting() {}

  /**
   * Moves each group by itself, from so many days to so many by a step; no shift is always tried.
   *
   * @param matches ids of sowings, where * stands for any letters; one group each
   * @throws BadQuestionException where a match names no sowing, there is nothing to try, a sowing
   *     would leave the season, or there is but one season
   */
  public static Shifts shift(
      Scenario scenario,
      List<String> matches,
      int from,
      int to,
      int step,
      RunSettings settings,
      DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    settings.forDifferences();
    if (matches.isEmpty()) {
      throw new BadQuestionException(
          "no sowings are named to be moved; say such as --match \"tomato*\"");
    }
    List<Integer> days = days(from, to, step);
    List<Shifts.Group> groups = new ArrayList<>();
    for (int g = 0; g < matches.size(); g++) {
      int done = g;
      groups.add(
          group(
              scenario,
              matches.get(g),
              days,
              settings,
              share -> progress.accept((done + share) / matches.size())));
    }
    return new Shifts(scenario, settings, settings.seasons(), MeanLimits.CONFIDENCE, groups);
  }

  /**
   * The first sowing that such a shift takes out of the season, by its id; empty where all stay.
   *
   * @throws BadQuestionException where a pattern matches no sowing
   */
  public static Optional<String> outside(Scenario scenario, List<String> matches, int days)
      throws BadQuestionException {
    for (String match : matches) {
      for (int s : NamesInQuestions.sowings(scenario, match)) {
        Sowing sowing = scenario.sowings().get(s);
        if (!scenario.season().contains(sowing.shifted(days).sow())) {
          return Optional.of(sowing.id());
        }
      }
    }
    return Optional.empty();
  }

  private static List<Integer> days(int from, int to, int step) throws BadQuestionException {
    TreeSet<Integer> days =
        new TreeSet<>(Ladder.of("shifts", from, to, step, "--from -14 --to 14 --step 7"));
    days.add(0);
    return List.copyOf(days);
  }

  private static Shifts.Group group(
      Scenario scenario,
      String match,
      List<Integer> days,
      RunSettings settings,
      DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    List<Integer> moved = NamesInQuestions.sowings(scenario, match);
    List<Scenario> scenarios = new ArrayList<>();
    for (int d : days) {
      scenarios.add(shifted(scenario, moved, d));
    }
    int n = settings.seasons();
    try (Seasons seasons = new Seasons(scenarios, settings)) {
      List<List<double[]>> numbers = seasons.run(n, reading(scenario, moved), progress);
      return new Response(
              scenario, match, moved, days, numbers, Strata.of(scenario, settings.seed(), n))
          .group();
    }
  }

  private static Scenario shifted(Scenario scenario, List<Integer> moved, int days)
      throws BadQuestionException {
    List<Sowing> sowings = new ArrayList<>(scenario.sowings());
    for (int s : moved) {
      Sowing shifted = sowings.get(s).shifted(days);
      if (!scenario.season().contains(shifted.sow())) {
        throw new BadQuestionException(
            ("%s, sown %s days %s, would be sown on %s, outside the season; try less, or lengthen"
                    + " the season")
                .formatted(
                    shifted.id(), Math.abs(days), days < 0 ? "earlier" : "later", shifted.sow()));
      }
      sowings.set(s, shifted);
    }
    return scenario.withSowings(sowings);
  }

  private static Seasons.Reading<double[]> reading(Scenario scenario, List<Integer> moved) {
    ToDoubleFunction<SeasonOutcome> margin =
        scenario.prices() == null ? o -> 0 : Accounts.marginOf(scenario);
    return (s, o) ->
        new double[] {
          SeasonTotals.onTime(o, moved.stream().mapToInt(m -> m)),
          moved.stream().mapToLong(o::late).sum(),
          moved.stream().filter(m -> SeasonTotals.isMet(scenario, o, m)).count(),
          SeasonTotals.onTime(o),
          margin.applyAsDouble(o)
        };
  }

  /** What the numbers of one group say. */
  private record Response(
      Scenario scenario,
      String match,
      List<Integer> moved,
      List<Integer> days,
      List<List<double[]>> numbers,
      Strata strata) {

    Shifts.Group group() {
      int best =
          IntStream.range(0, days.size())
              .boxed()
              .max(
                  Comparator.<Integer>comparingDouble(d -> Samples.mean(column(d, judged())))
                      .thenComparing(d -> -Math.abs(days.get(d))))
              .orElseThrow();
      return new Shifts.Group(
          match,
          moved.stream().map(s -> scenario.sowings().get(s).id()).toList(),
          days.get(best),
          IntStream.range(0, days.size())
              .filter(d -> d == best || !difference(best, d, judged()).isClear())
              .mapToObj(days::get)
              .toList(),
          IntStream.range(0, days.size()).mapToObj(this::point).toList());
    }

    private int judged() {
      return scenario.prices() == null ? ALL_ON_TIME : MARGIN;
    }

    private Shifts.Point point(int d) {
      int unshifted = days.indexOf(0);
      return new Shifts.Point(
          days.get(d),
          stat(d, GROUP_ON_TIME),
          stat(d, GROUP_LATE),
          stat(d, GROUP_MET),
          stat(d, ALL_ON_TIME),
          scenario.prices() == null ? null : stat(d, MARGIN),
          difference(unshifted, d, GROUP_ON_TIME),
          difference(unshifted, d, ALL_ON_TIME),
          margin(unshifted, d));
    }

    private @Nullable Difference margin(int from, int to) {
      return scenario.prices() == null ? null : difference(from, to, MARGIN);
    }

    private Stat stat(int d, int number) {
      return Stat.of(column(d, number), strata);
    }

    private Difference difference(int from, int to, int number) {
      return Paired.difference(
          column(from, number), column(to, number), strata, true, Math.max(1, days.size() - 1));
    }

    private double[] column(int d, int number) {
      return Samples.column(numbers.get(d), number);
    }
  }
}
