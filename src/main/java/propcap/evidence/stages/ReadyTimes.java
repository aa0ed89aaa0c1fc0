package propcap.evidence.stages;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import propcap.evidence.Estimate;
import propcap.evidence.stages.TrayEvidence.Readiness;
import propcap.evidence.stages.TrayEvidence.Ripening;
import umontreal.ssj.probdist.NormalDist;

/**
 * The degree days between which trays became ready, and how likely a law of them is: lognormal,
 * with a mean and a spread of the logarithm.
 *
 * <p>Of a tray that was moved without a word it is known that it was ready by then, and nothing of
 * how long it had been. Where trays are moved as soon as they are ready, its chance to be ready by
 * then would say that growing on takes less than it does, and the more so the more trays there are.
 * So such trays are heeded in one thing: on average they had not been moved before they were ready,
 * but for what chance allows in one log of forty.
 */
final class ReadyTimes {
  /** For a tray that is far off. */
  private static final double LEAST_CHANCE = 1e-150;

  /**
   * Of a hundred trays without a further row, one was rather forgotten than not ready. Planning
   * default, not measured: one forgotten tray must not pass for one that takes for ever.
   */
  private static final double FORGOTTEN = 0.01;

  /** Of each pair of bounds, which trays of one sowing often share. */
  private final double[] lnAbove;

  private final double[] lnUpTo;
  private final int[] trays;
  private final double[] lnMoved;
  private final double meanLnMoved;

  /**
   * Takes trays.
   *
   * @param told of which it is known when they were ready, or that they were not yet
   * @param moved degree days by which the others were ready
   */
  ReadyTimes(List<Ripening> told, List<Double> moved) {
    Map<Ripening, Integer> alike = new LinkedHashMap<>();
    told.forEach(each -> alike.merge(each, 1, Integer::sum));
    lnAbove = alike.keySet().stream().mapToDouble(r -> Math.log(r.above())).toArray();
    lnUpTo = alike.keySet().stream().mapToDouble(r -> Math.log(r.upTo())).toArray();
    trays = alike.values().stream().mapToInt(n -> n).toArray();
    lnMoved = moved.stream().mapToDouble(Math::log).toArray();
    meanLnMoved = Arrays.stream(lnMoved).average().orElse(0);
  }

  static ReadyTimes of(List<TrayEvidence> trays) {
    return new ReadyTimes(
        trays.stream()
            .filter(t -> t.readiness() != Readiness.MOVED)
            .flatMap(t -> Stream.ofNullable(t.ripening()))
            .toList(),
        trays.stream()
            .filter(t -> t.readiness() == Readiness.MOVED)
            .map(t -> Objects.requireNonNull(t.ripening()).upTo())
            .toList());
  }

  /** Trays that tell, if the law were this one: moved ones only where they contradict it. */
  int telling(double mu, double sigma) {
    return Arrays.stream(trays).sum() + (logOfMoved(mu, sigma) < 0 ? lnMoved.length : 0);
  }

  /** Trays of which it is known when they were ready. */
  int timed() {
    return IntStream.range(0, trays.length)
        .filter(i -> Double.isFinite(lnUpTo[i]))
        .map(i -> trays[i])
        .sum();
  }

  /** All logarithms of degree days that are known of. */
  DoubleStream logs() {
    return DoubleStream.concat(
            Arrays.stream(lnMoved),
            DoubleStream.concat(Arrays.stream(lnUpTo), Arrays.stream(lnAbove)))
        .filter(Double::isFinite);
  }

  /** Logarithm of the chance of all of them. */
  double logLikelihood(double mu, double sigma) {
    double sum = logOfMoved(mu, sigma);
    for (int i = 0; i < trays.length; i++) {
      sum += trays[i] * Math.log(Math.max(LEAST_CHANCE, chance(i, mu, sigma)));
    }
    return sum;
  }

  private double chance(int bounds, double mu, double sigma) {
    double low = (lnAbove[bounds] - mu) / sigma;
    if (Double.isInfinite(lnUpTo[bounds])) {
      return FORGOTTEN + (1 - FORGOTTEN) * NormalDist.barF01(low);
    }
    double high = (lnUpTo[bounds] - mu) / sigma;
    // In the upper tail the complements have the digits.
    return low > 0
        ? NormalDist.barF01(low) - NormalDist.barF01(high)
        : NormalDist.cdf01(high) - NormalDist.cdf01(low);
  }

  /** Nothing unless trays were moved, on average, before they can have been ready. */
  private double logOfMoved(double mu, double sigma) {
    if (lnMoved.length == 0) {
      return 0;
    }
    double off = Math.sqrt(lnMoved.length) * (meanLnMoved - mu) / sigma;
    double chance = Math.max(LEAST_CHANCE, NormalDist.cdf01(off));
    return Math.min(0, Math.log(chance / Estimate.TAIL));
  }
}
