package propcap.study.fill;

import java.util.List;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

/**
 * A plan of which all is filled in that was left to be found.
 *
 * @param filled the sowings of which something was, in the plan's order
 */
public record FirstPlan(Scenario scenario, List<Filled> filled) {
  public FirstPlan {
    filled = List.copyOf(filled);
  }

  /** A plan of which nothing was to be found. */
  static FirstPlan asWritten(Scenario scenario) {
    return new FirstPlan(scenario, List.of());
  }

  /**
   * A sowing as it was filled in.
   *
   * @param isDateFilled whether its day was found
   * @param areTraysFilled whether its trays were
   * @param goal chance with which its plants were to be on time
   * @param chance that they are, by itself with endless room
   * @param springs on which that was seen
   */
  public record Filled(
      Sowing sowing,
      boolean isDateFilled,
      boolean areTraysFilled,
      double goal,
      double chance,
      int springs) {}
}
