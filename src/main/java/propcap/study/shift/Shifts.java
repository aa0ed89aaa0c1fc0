package propcap.study.shift;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.RunSettings;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/**
 * What comes of sowing earlier or later.
 *
 * @param confidence at which all intervals of one group and outcome hold together
 * @param groups one for each group of sowings that was moved, by itself
 */
public record Shifts(
    Scenario scenario, RunSettings settings, int seasons, double confidence, List<Group> groups) {

  /**
   * One group of sowings, moved together.
   *
   * @param match as asked for, such as "tomato*"
   * @param sowings ids that it names
   * @param best the shift with the highest mean margin, or on-time plants of all sowings where no
   *     money is asked; of several the one nearest to no shift
   * @param asGood shifts that the seasons do not tell from the best, itself included
   * @param points one for each shift, in rising order
   */
  public record Group(
      String match, List<String> sowings, int best, List<Integer> asGood, List<Point> points) {
    /** The best, where it is clearly better than sowing on the days of the plan. */
    public Optional<Point> clearlyBest() {
      return points.stream()
          .filter(p -> p.days() == best && best != 0 && !asGood.contains(0))
          .filter(p -> p.decisive().isClear())
          .findFirst();
    }
  }

  /**
   * One shift.
   *
   * @param days later; negative: earlier
   * @param onTime plants on time of the group's sowings
   * @param late of them
   * @param met sowings of the group met
   * @param allOnTime plants on time of all sowings
   * @param margin of the season; null where no money is asked
   * @param toUnshifted group's plants on time, against no shift
   * @param allToUnshifted all plants on time, against no shift
   * @param marginToUnshifted margin, against no shift; null where no money is asked
   */
  public record Point(
      int days,
      Stat onTime,
      Stat late,
      Stat met,
      Stat allOnTime,
      @Nullable Stat margin,
      Difference toUnshifted,
      Difference allToUnshifted,
      @Nullable Difference marginToUnshifted) {
    /** What the best is chosen by: the margin where money is asked. */
    Difference decisive() {
      return marginToUnshifted == null ? allToUnshifted : marginToUnshifted;
    }
  }

  /** The plan with each group moved that is clearly better so; empty where none is. */
  public Optional<Scenario> proposed() {
    List<Sowing> sowings = new ArrayList<>(scenario.sowings());
    for (Group group : groups) {
      group
          .clearlyBest()
          .ifPresent(
              best ->
                  sowings.replaceAll(
                      s -> group.sowings().contains(s.id()) ? s.shifted(best.days()) : s));
    }
    return Optional.of(scenario.withSowings(sowings))
        .filter(s -> !s.sowings().equals(scenario.sowings()));
  }
}
