package propcap.report.size;

import java.util.ArrayList;
import java.util.List;
import propcap.farm.Scenario;
import propcap.report.kit.InvestmentWords;
import propcap.report.kit.Words;
import propcap.study.compare.Comparison;
import propcap.study.forecast.WhatMatters;
import propcap.study.size.Sizing;
import propcap.study.statistics.Difference;

/** What the answer to how large a place must be changes in the whole house, in words. */
final class SizeChange {
  private SizeChange() {}

  /** Whether it pays, where money is asked, and what it brings; nothing where nothing changes. */
  static List<String> of(Sizing sizing) {
    return sizing.changes().map(c -> told(sizing, c)).orElse(List.of());
  }

  private static List<String> told(Sizing sizing, Comparison comparison) {
    SizeWords words = SizeWords.of(sizing);
    List<String> told = new ArrayList<>();
    if (sizing.found().isPresent()) {
      String name = words.size(sizing.found().get());
      InvestmentWords.of(comparison, 0).map(i -> i.named(name).shortVerdict()).ifPresent(told::add);
    }
    told.add(brings(comparison, words.size(sizing.found().orElseGet(sizing::nearestToGoal))));
    return told;
  }

  /** Plants on time against those needed, and sowings safe: with the answer, and as it is. */
  private static String brings(Comparison comparison, String name) {
    Scenario scenario = comparison.scenarios().get(0);
    Difference onTime = comparison.total(Comparison.Kind.ON_TIME).differences().get(0);
    return name
        + ": in the whole house "
        + (onTime.isTold()
            ? Words.difference(onTime) + " plants on time a spring"
            : "other plants on time" + Words.inFew(onTime) + " only")
        + ", where "
        + Words.count((double) scenario.plantsNeeded())
        + " are needed"
        + switch (WhatMatters.of(onTime, scenario)) {
          case MATTERS -> "";
          case NONE -> ": no difference that matters";
          case NOT_TOLD -> ": not told from as it is";
        }
        + "; "
        + comparison.safe().get(1)
        + " of "
        + Words.plural(scenario.sowings().size(), "sowing")
        + " safe, as it is "
        + comparison.safe().get(0)
        + ".";
  }
}
