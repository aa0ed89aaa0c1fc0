package propcap.farm;

import java.util.ArrayList;
import java.util.List;

/**
 * A scenario of which some sowings are yet to be filled in: in it they stand on the season's first
 * day or in one tray, where that is open.
 *
 * @param needs those sowings, in the plan's order; none where all is written
 */
public record PlanNeeds(Scenario scenario, List<SowingNeed> needs) {
  public PlanNeeds {
    needs = List.copyOf(needs);
    List<String> ids = scenario.sowings().stream().map(Sowing::id).toList();
    for (SowingNeed need : needs) {
      Checks.require(ids.contains(need.sowing()), "no sowing is " + need.sowing());
    }
  }

  /** A scenario of which all is written. */
  public static PlanNeeds none(Scenario scenario) {
    return new PlanNeeds(scenario, List.of());
  }

  /** The same with a sowing more, of which something is to be found. */
  public PlanNeeds with(Sowing sowing, SowingNeed need) {
    List<Sowing> sowings = new ArrayList<>(scenario.sowings());
    sowings.add(sowing);
    List<SowingNeed> more = new ArrayList<>(needs);
    more.add(need);
    return new PlanNeeds(scenario.withSowings(sowings), more);
  }
}
