package propcap.study.compare;

import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.money.Investing;
import propcap.study.money.Investment;
import propcap.study.money.PlaceChanges;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Stat;
import propcap.study.statistics.Strata;

/** Does a change pay? Scenarios on the same seasons, each against the first. */
public final class Comparing {

  private Comparing() {}

  /**
   * Compares alternatives with the first scenario.
   *
   * @param progress told, from any thread, the share done, 0 to 1
   * @throws BadQuestionException where there is nothing to compare, or money is in more than one
   *     currency
   */
  public static Comparison compare(
      List<Scenario> scenarios, RunSettings settings, DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    if (scenarios.size() < 2) {
      throw new BadQuestionException("compare needs two scenarios or more");
    }
    checkCurrencies(scenarios);
    settings.forDifferences();
    Measures measures = new Measures(scenarios);

    try (Seasons seasons = new Seasons(scenarios, settings)) {
      int n = settings.seasons();
      List<List<double[]>> numbers = seasons.run(n, measures::of, progress);
      List<Strata> own = scenarios.stream().map(s -> Strata.of(s, settings.seed(), n)).toList();
      Strata strata = Strata.of(scenarios, settings.seed(), n);
      return new Comparison(
          scenarios,
          settings,
          n,
          MeanLimits.CONFIDENCE,
          IntStream.range(0, measures.all().size())
              .mapToObj(m -> outcome(measures.all().get(m), m, numbers, own, strata))
              .toList(),
          IntStream.range(0, scenarios.size())
              .mapToObj(i -> measures.safe(scenarios.get(i), numbers.get(i)))
              .toList(),
          investments(scenarios, measures, numbers, strata, settings.seed()));
    }
  }

  private static Comparison.Outcome outcome(
      Measures.Measure measure,
      int m,
      List<List<double[]>> numbers,
      List<Strata> own,
      Strata strata) {
    double[] first = Samples.column(numbers.get(0), m);
    int alternatives = numbers.size() - 1;
    return new Comparison.Outcome(
        measure.kind(),
        measure.subject(),
        measure.moreIsBetter(),
        IntStream.range(0, numbers.size())
            .mapToObj(i -> Stat.of(Samples.column(numbers.get(i), m), own.get(i)))
            .toList(),
        numbers.stream()
            .skip(1)
            .map(
                n ->
                    Paired.difference(
                        first, Samples.column(n, m), strata, measure.moreIsBetter(), alternatives))
            .toList());
  }

  private static List<Investment> investments(
      List<Scenario> scenarios,
      Measures measures,
      List<List<double[]>> numbers,
      Strata strata,
      long seed) {
    int margin = measures.indexOf(Comparison.Kind.MARGIN, "");
    Scenario first = scenarios.get(0);
    Prices prices = first.prices();
    if (margin < 0 || prices == null) {
      return List.of();
    }
    Investing investing = new Investing(prices.discount(), seed);
    double[] margins = Samples.column(numbers.get(0), margin);
    int alternatives = scenarios.size() - 1;
    return IntStream.rangeClosed(1, alternatives)
        .mapToObj(
            a -> {
              double[] others = Samples.column(numbers.get(a), margin);
              Difference gain = Paired.difference(margins, others, strata, true, alternatives);
              List<Investment.Change> changes = PlaceChanges.between(first, scenarios.get(a));
              return new Investment(changes, gain, investing.worth(changes, margins, others, gain));
            })
        .toList();
  }

  /**
   * Checks that all money is in one currency: amounts of two are not subtracted.
   *
   * @throws BadQuestionException naming two scenarios and their currencies
   */
  public static void checkCurrencies(List<Scenario> scenarios) throws BadQuestionException {
    List<Scenario> priced = scenarios.stream().filter(s -> s.prices() != null).toList();
    for (Scenario other : priced) {
      String here = currency(priced.get(0));
      if (!currency(other).equals(here)) {
        throw new BadQuestionException(
            ("%s reckons in %s and %s in %s: amounts of different currencies cannot be compared;"
                    + " write both in one")
                .formatted(priced.get(0).name(), here, other.name(), currency(other)));
      }
    }
  }

  private static String currency(Scenario scenario) {
    Prices prices = scenario.prices();
    return prices == null ? "" : prices.currency();
  }
}
