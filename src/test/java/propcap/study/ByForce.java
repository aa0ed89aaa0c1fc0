package propcap.study;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.distribution.BinomialDistribution;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.study.compare.Comparison;
import propcap.study.compare.Measures;

/** What is true of a farm, near enough: means of many springs on luck that no answer has. */
public final class ByForce {
  private static final long OTHER_LUCK = 99_991;

  /** A right answer fails a check by {@link #mostMissed} once in so many times. */
  private static final double ONCE_IN = 1000;

  private final int springs;
  private final Measures measures;
  private final Map<String, double[]> means = new HashMap<>();

  /** Of scenarios that differ from this one in their places only. */
  public ByForce(Scenario scenario, int springs) {
    this.springs = springs;
    measures = new Measures(List.of(scenario));
  }

  public int springs() {
    return springs;
  }

  /** The most of so many answers that may miss what they hold with 95 % confidence. */
  public static int mostMissed(int answers) {
    BinomialDistribution misses = new BinomialDistribution(null, answers, .05);
    int most = 0;
    while (1 - misses.cumulativeProbability(most) > 1 / ONCE_IN) {
      most++;
    }
    return most;
  }

  /** How far the mean of an outcome of one scenario lies above that of another. */
  public double difference(Scenario first, Scenario second, Comparison.Kind kind, String subject)
      throws InterruptedException {
    int m = measures.indexOf(kind, subject);
    return means(second)[m] - means(first)[m];
  }

  private double[] means(Scenario scenario) throws InterruptedException {
    String key = scenario.places().stream().map(Place::toString).toList() + " " + scenario.labour();
    double[] known = means.get(key);
    if (known == null) {
      known = run(scenario);
      means.put(key, known);
    }
    return known;
  }

  private double[] run(Scenario scenario) throws InterruptedException {
    Measures own = new Measures(List.of(scenario));
    try (Seasons seasons =
        new Seasons(List.of(scenario), new RunSettings(OTHER_LUCK, 1, null, 1))) {
      List<double[]> numbers = seasons.run(List.of(0), 0, springs, own::of, done -> {}).get(0);
      double[] sums = new double[own.all().size()];
      for (double[] spring : numbers) {
        for (int m = 0; m < sums.length; m++) {
          sums[m] += spring[m] / springs;
        }
      }
      return sums;
    }
  }
}
