package propcap.study;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.study.Choice.Setting;

/**
 * A plan that is being tried: one setting for each sowing.
 *
 * @param settings in the plan's order
 */
record Draft(List<Setting> settings) {
  Draft {
    settings = List.copyOf(settings);
  }

  static Draft asItIs(Scenario scenario, List<Choice> choices) {
    return new Draft(choices.stream().map(c -> c.asItIs(scenario)).toList());
  }

  Draft with(int sowing, Setting setting) {
    List<Setting> changed = new ArrayList<>(settings);
    changed.set(sowing, setting);
    return new Draft(changed);
  }

  /** The scenario sown by it. */
  Scenario sown(Scenario scenario, List<Choice> choices) {
    return scenario.withSowings(
        IntStream.range(0, settings.size())
            .mapToObj(s -> choices.get(s).with(scenario, settings.get(s)))
            .toList());
  }
}
