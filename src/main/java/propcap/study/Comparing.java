package propcap.study;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.Scenario;

/** Does a change pay? Scenarios on the same seasons, each against the first. */
public final class Comparing {
  /** At which the intervals of an outcome hold together. */
  public static final double CONFIDENCE = 0.95;

  /** Lives of an investment that are drawn from the simulated springs. */
  private static final int LIVES = 10_000;

  private Comparing() {}

  /**
   * Compares alternatives with the first scenario.
   *
   * @param progress told, from any thread, the share done, 0 to 1
   * @throws BadQuestionException where there is nothing to compare
   */
  public static Comparison compare(
      List<Scenario> scenarios, RunSettings settings, DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    if (scenarios.size() < 2) {
      throw new BadQuestionException("compare needs two scenarios or more");
    }
    settings.forDifferences();
    Measures measures = new Measures(scenarios);
    List<Integer> all = IntStream.range(0, scenarios.size()).boxed().toList();
    try (Seasons seasons = new Seasons(scenarios, settings.seed(), settings.threads())) {
      int n = settings.seasons();
      List<List<double[]>> numbers =
          seasons.run(all, 0, n, measures::of, done -> progress.accept(done / (double) n));
      return new Comparison(
          scenarios,
          settings,
          n,
          CONFIDENCE,
          IntStream.range(0, measures.all().size())
              .mapToObj(m -> outcome(measures.all().get(m), m, numbers))
              .toList(),
          investments(scenarios, measures, numbers, settings.seed()));
    }
  }

  private static Comparison.Outcome outcome(
      Measures.Measure measure, int m, List<List<double[]>> numbers) {
    double[] first = Measures.column(numbers.get(0), m);
    int alternatives = numbers.size() - 1;
    return new Comparison.Outcome(
        measure.kind(),
        measure.subject(),
        measure.moreIsBetter(),
        numbers.stream().map(n -> Samples.of(Measures.column(n, m)).stat()).toList(),
        numbers.stream()
            .skip(1)
            .map(
                n ->
                    Paired.difference(
                        first,
                        Measures.column(n, m),
                        measure.moreIsBetter(),
                        CONFIDENCE,
                        alternatives))
            .toList());
  }

  private static List<Comparison.Investment> investments(
      List<Scenario> scenarios, Measures measures, List<List<double[]>> numbers, long seed) {
    int margin = measures.indexOf(Comparison.Kind.MARGIN, "");
    Prices prices = scenarios.get(0).prices();
    if (margin < 0 || prices == null) {
      return List.of();
    }
    double[] first = Measures.column(numbers.get(0), margin);
    int alternatives = scenarios.size() - 1;
    List<Comparison.Investment> investments = new ArrayList<>();
    for (int a = 1; a < scenarios.size(); a++) {
      List<Comparison.Addition> added = added(scenarios.get(0), scenarios.get(a));
      double[] second = Measures.column(numbers.get(a), margin);
      Difference gain = Paired.difference(first, second, true, CONFIDENCE, alternatives);
      boolean isPriced = !added.isEmpty() && added.stream().allMatch(p -> p.place().cost() != null);
      investments.add(
          new Comparison.Investment(
              added,
              gain,
              isPriced ? worth(added, gain, first, second, prices.discount(), seed) : null));
    }
    return investments;
  }

  /** Places that the first scenario has not, or has smaller, whether or not they have a cost. */
  private static List<Comparison.Addition> added(Scenario first, Scenario alternative) {
    List<Comparison.Addition> added = new ArrayList<>();
    for (Place place : alternative.places()) {
      int now =
          first.places().stream()
              .filter(f -> f.name().equals(place.name()))
              .mapToInt(Place::spaces)
              .findFirst()
              .orElse(0);
      if (place.spaces() > now) {
        added.add(new Comparison.Addition(place, now));
      }
    }
    return added;
  }

  private static Comparison.Worth worth(
      List<Comparison.Addition> added,
      Difference gain,
      double[] first,
      double[] second,
      double discount,
      long seed) {
    BigDecimal buy = BigDecimal.ZERO;
    double keep = 0;
    double yearly = 0;
    double horizon = 1;
    for (Comparison.Addition addition : added) {
      Place.Cost cost = addition.place().cost();
      if (cost != null) {
        buy = buy.add(cost.buy());
        keep += cost.keepPerYear().doubleValue();
        yearly += yearly(cost, discount);
        horizon = Math.max(horizon, cost.lastsYears());
      }
    }
    double factor = Capital.annuityFactor(discount, horizon);
    return new Comparison.Worth(
        buy,
        BigDecimal.valueOf(yearly).setScale(2, RoundingMode.HALF_UP),
        factor * (gain.mean() - yearly),
        factor * gain.halfWidth(),
        Capital.payback(buy.doubleValue(), gain.mean() - keep, discount),
        chancePays(first, second, yearly, discount, horizon, seed));
  }

  /** An annuity over the place's life, and its upkeep. */
  static double yearly(Place.Cost cost, double discount) {
    return cost.buy().doubleValue() / Capital.annuityFactor(discount, cost.lastsYears())
        + cost.keepPerYear().doubleValue();
  }

  /** The share of lives, each year's spring drawn from those simulated, that are worth it. */
  private static double chancePays(
      double[] first, double[] second, double yearly, double discount, double years, long seed) {
    RandomGenerator random = new Well19937c(seed);
    double wanted = yearly * Capital.annuityFactor(discount, years);
    int pays = 0;
    for (int life = 0; life < LIVES; life++) {
      double worth = 0;
      for (int year = 1; year <= Math.ceil(years); year++) {
        int spring = random.nextInt(first.length);
        double part = Math.min(1, years - year + 1);
        worth +=
            part
                * (second[spring] - first[spring])
                * Capital.presentValue(discount, Math.min(year, years));
      }
      pays += worth > wanted ? 1 : 0;
    }
    return pays / (double) LIVES;
  }
}
