package propcap.evidence.germination;

import propcap.evidence.Estimate;

/**
 * How many of a lot's seeds germinate, and how well that is known.
 *
 * @param share of the seeds that ever show; where the test ended early, the middle of what it may
 *     be
 * @param endedEarly whether the limits are wide because more may have come after the end
 * @param tested the whole test that would tell it as well
 */
public record GerminatingShare(Estimate share, boolean endedEarly, EquivalentCount tested) {
  static GerminatingShare of(Estimate counted, int seeds, boolean endedEarly) {
    EquivalentCount tested = EquivalentCount.of(counted, seeds, endedEarly);
    return new GerminatingShare(
        endedEarly ? Estimate.within(tested.rate(), counted.low(), counted.high()) : counted,
        endedEarly,
        tested);
  }
}
