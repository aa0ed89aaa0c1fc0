package propcap.study.plan;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.study.plan.Choice.Setting;

/**
 * A plan that is being tried: one setting for each sowing.
 *
 * @param settings in the plan's order
 */
record TrialPlan(List<Setting> settings) {
  TrialPlan {
    settings = List.copyOf(settings);
  }

  /** The plan as it was written, which need not be one of those that may be chosen. */
  static TrialPlan asItWas(Scenario scenario, List<Choice> choices) {
    return new TrialPlan(choices.stream().map(c -> c.asItWas(scenario)).toList());
  }

  /** The nearest to it that may be chosen. */
  static TrialPlan asItIs(Scenario scenario, List<Choice> choices) {
    return new TrialPlan(choices.stream().map(c -> c.asItIs(scenario)).toList());
  }

  TrialPlan with(int sowing, Setting setting) {
    List<Setting> changed = new ArrayList<>(settings);
    changed.set(sowing, setting);
    return new TrialPlan(changed);
  }

  /** The sowings that another plan sows otherwise, by number. */
  List<Integer> changed(TrialPlan other) {
    return IntStream.range(0, settings.size())
        .filter(s -> !settings.get(s).equals(other.settings.get(s)))
        .boxed()
        .toList();
  }

  /** The scenario sown by it. */
  Scenario sown(Scenario scenario, List<Choice> choices) {
    return scenario.withSowings(
        IntStream.range(0, settings.size())
            .mapToObj(s -> choices.get(s).with(scenario, settings.get(s)))
            .toList());
  }
}
