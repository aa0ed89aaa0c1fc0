package propcap.study.plan;

import java.util.Arrays;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * What a plan brought on some springs, one after the other: the numbers that a search compares, by
 * spring, so that two plans are compared on the same ones.
 */
final class Trial {
  private final TrialPlan trialPlan;
  private final double[] worth;

  /** By sowing and spring. */
  private final boolean[][] met;

  private final float[][] supplied;
  private int springs;

  /**
   * One spring of a plan.
   *
   * @param met by sowing, whether its plants were on time
   * @param supplied by sowing, the share of the plants needed that was on time, at most 1
   */
  @SuppressWarnings("ArrayRecordComponent") // Read at once and thrown away: nobody compares it.
  record Spring(double worth, boolean[] met, float[] supplied) {}

  /** A trial of a plan of so many sowings on so many springs at most. */
  Trial(TrialPlan trialPlan, int sowings, int most) {
    this.trialPlan = trialPlan;
    worth = new double[most];
    met = new boolean[sowings][most];
    supplied = new float[sowings][most];
  }

  void add(List<Spring> more) {
    for (Spring spring : more) {
      worth[springs] = spring.worth;
      for (int s = 0; s < met.length; s++) {
        met[s][springs] = spring.met[s];
        supplied[s][springs] = spring.supplied[s];
      }
      springs++;
    }
  }

  TrialPlan trialPlan() {
    return trialPlan;
  }

  int springs() {
    return springs;
  }

  double[] worths() {
    return Arrays.copyOf(worth, springs);
  }

  /** By spring, 1 where a sowing's plants were on time and 0 where not. */
  double[] mets(int sowing) {
    return IntStream.range(0, springs).mapToDouble(i -> met[sowing][i] ? 1 : 0).toArray();
  }

  double worth() {
    double sum = 0;
    for (int i = 0; i < springs; i++) {
      sum += worth[i];
    }
    return sum / springs;
  }

  /** Share of the springs in which a sowing's plants were on time. */
  double chance(int sowing) {
    int sum = 0;
    for (int i = 0; i < springs; i++) {
      sum += met[sowing][i] ? 1 : 0;
    }
    return sum / (double) springs;
  }

  /** Mean share of the plants that a sowing needs that was on time. */
  double supplied(int sowing) {
    double sum = 0;
    for (int i = 0; i < springs; i++) {
      sum += supplied[sowing][i];
    }
    return sum / springs;
  }

  /**
   * A mean of differences, this plan's less another's, on the springs that both have seen.
   *
   * @param se standard error
   */
  record Gap(double mean, double se) {
    /** Standard errors within which a loss is none beyond doubt: 95 %, one-sided. */
    private static final double IN_DOUBT = 1.645;

    /** What it may be, by so many standard errors more than was seen. */
    double atMost(double errors) {
      return mean + errors * se;
    }

    /** Whether it is a loss beyond doubt. */
    boolean isLoss() {
      return atMost(IN_DOUBT) < 0;
    }
  }

  Gap worthAbove(Trial other) {
    return gap(other, i -> worth[i] - other.worth[i]);
  }

  Gap chanceAbove(Trial other, int sowing) {
    return gap(other, i -> (met[sowing][i] ? 1 : 0) - (other.met[sowing][i] ? 1 : 0));
  }

  Gap suppliedAbove(Trial other, int sowing) {
    return gap(other, i -> (double) supplied[sowing][i] - other.supplied[sowing][i]);
  }

  /** Worth, and so much for each of some sowings whose plants are on time. */
  Gap worthAbove(Trial other, double perMet, boolean[] counted) {
    return gap(
        other,
        i -> {
          double difference = worth[i] - other.worth[i];
          for (int s = 0; s < counted.length; s++) {
            if (counted[s] && met[s][i] != other.met[s][i]) {
              difference += met[s][i] ? perMet : -perMet;
            }
          }
          return difference;
        });
  }

  private Gap gap(Trial other, IntToDoubleFunction difference) {
    int n = Math.min(springs, other.springs);
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double d = difference.applyAsDouble(i);
      sum += d;
      squares += d * d;
    }
    double mean = sum / n;
    return new Gap(mean, Math.sqrt(Math.max(0, squares / n - mean * mean) / n));
  }
}
