package propcap.study.bottleneck;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.study.Capacity;
import propcap.study.RunSettings;
import propcap.study.money.Investment;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/**
 * What a tenth more and a tenth less of each place brings.
 *
 * @param seasons how many were run of each trial
 * @param confidence at which all intervals of the answer hold together
 * @param intervals how many there are, those of steps that were not taken included
 * @param worths one for each open place, and for hands where they are limited, the most plants
 *     gained by a space first
 * @param steps the best next step after each that was taken; empty where nothing clearly helps
 * @param onTime plants on time as things are
 * @param safe sowings that are safe as things are (see {@link propcap.study.forecast.Safety})
 * @param isExhausted whether the stair ends because nothing clearly helps any more, or nothing that
 *     does pays, and not because it has as many steps as were asked for
 */
public record Bottlenecks(
    Scenario scenario,
    RunSettings settings,
    int seasons,
    double confidence,
    int intervals,
    Stat onTime,
    int safe,
    List<Worth> worths,
    List<Step> steps,
    boolean isExhausted) {

  /** The scenario with the first step of the stair; empty where nothing clearly helps. */
  public Optional<Scenario> proposed() {
    return steps.stream()
        .findFirst()
        .map(step -> step.place().sized(scenario, step.place().size() + step.trial().spaces()));
  }

  /**
   * So many spaces more, or so many fewer, of one place. Differences are of the whole change.
   *
   * @param spaces that were tried; of hands, hours a day
   * @param onTime plants on time
   * @param margin of the season; null where no money is asked
   * @param worth of more spaces over their life; null where no money is asked or no cost is known
   * @param pays whether it pays to take them; fewer spaces cost nothing
   * @param safe sowings that are safe with the change
   */
  public record Trial(
      int spaces,
      Difference onTime,
      @Nullable Difference margin,
      Investment.@Nullable Worth worth,
      Investment.Pays pays,
      int safe) {
    /** What the change comes to when it is shared out over its spaces. */
    public double plantsForEach() {
      return onTime.mean() / spaces;
    }
  }

  /**
   * A tenth more and a tenth less of one place.
   *
   * @param fewer null where the place has but one space
   * @param moreWaiting tray-days of waiting, by step in the order of {@link propcap.farm.RoomWait},
   *     with a tenth more: which stages the place holds up
   */
  public record Worth(
      Capacity place, Trial more, @Nullable Trial fewer, List<Difference> moreWaiting) {}

  /**
   * A step of the stair: a tenth more of one place, on top of those before.
   *
   * @param trial of this step alone
   * @param spacesAdded in all so far; an hour a day counts as a space does
   * @param gainSoFar plants on time of all steps so far
   */
  public record Step(Capacity place, Trial trial, int spacesAdded, Difference gainSoFar) {}
}
