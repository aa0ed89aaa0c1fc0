package propcap.study;

import java.util.List;

/**
 * What a search is after: each sowing's chance at its goal first, then the most worth. A chance
 * below what is aimed at weighs, in parts of 1, as much as the whole plan is worth: one percent
 * missed on one sowing is one percent of it.
 *
 * <p>The search aims one standard error above the goal. A plan that is picked for doing well on
 * some springs does a little worse on others.
 */
final class Aims {
  private final double[] aims;
  private final double weight;

  Aims(List<Choice> choices, Worth worth, int springs) {
    aims =
        choices.stream()
            .mapToDouble(c -> c.goal() + Math.sqrt(c.goal() * (1 - c.goal()) / springs))
            .map(a -> Math.min(a, 1))
            .toArray();
    weight = worth.whole();
  }

  /** What the missing of a goal costs, for a sowing whose plants are on time in a share. */
  double missing(int sowing, double share) {
    return weight * Math.max(0, aims[sowing] - share);
  }

  boolean isBelow(int sowing, double share) {
    return share < aims[sowing];
  }

  /** What one spring in a number of them weighs. */
  double weight() {
    return weight;
  }
}
