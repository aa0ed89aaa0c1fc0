package propcap.study;

import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;

/**
 * What a little more of each place is worth.
 *
 * @param seasons how many were run of each trial
 * @param confidence at which all intervals of one table hold together
 * @param worths one for each open place, and for hands where they are limited, the most plants
 *     gained by a space first
 * @param steps the best next step after each that was taken; empty where nothing clearly helps
 * @param onTime plants on time as things are
 * @param isExhausted whether the stair ends because nothing clearly helps any more, and not because
 *     it has as many steps as were asked for
 */
public record Bottlenecks(
    Scenario scenario,
    RunSettings settings,
    int seasons,
    double confidence,
    Stat onTime,
    List<Worth> worths,
    List<Step> steps,
    boolean isExhausted) {

  /**
   * A tenth more and a tenth less of one place. Differences are of the whole change, not by space.
   *
   * @param spaces that a tenth comes to; of hands, hours a day
   * @param moreOnTime plants on time, with a tenth more than as things are
   * @param lessOnTime the same with a tenth less
   * @param moreMargin margin of the season; null where no money is asked
   * @param lessMargin the same
   * @param moreWaiting tray-days of waiting, by step in the order of {@link propcap.farm.Step},
   *     with a tenth more: which stages the place holds up
   */
  public record Worth(
      Capacity place,
      int spaces,
      Difference moreOnTime,
      Difference lessOnTime,
      @Nullable Difference moreMargin,
      @Nullable Difference lessMargin,
      List<Difference> moreWaiting) {
    public double plantsPerSpaceMore() {
      return moreOnTime.mean() / spaces;
    }

    public double plantsPerSpaceLess() {
      return lessOnTime.mean() / spaces;
    }
  }

  /**
   * A step of the stair: a tenth more of one place, on top of those before.
   *
   * @param spacesBought in all so far; an hour a day counts as a space does
   * @param gain plants on time of this step alone
   * @param gainSoFar plants on time of all steps so far
   * @param margin of this step alone; null where no money is asked
   */
  public record Step(
      Capacity place,
      int spaces,
      int spacesBought,
      Difference gain,
      Difference gainSoFar,
      @Nullable Difference margin) {}
}
