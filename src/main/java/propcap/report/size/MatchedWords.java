package propcap.report.size;

import java.util.List;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.report.kit.Words;
import propcap.study.size.Sizing;

/**
 * The sowings that a goal is about, in words: a few by their ids, the whole of a crop by its name.
 *
 * @param match as asked for, such as {@code tomato*}
 */
record MatchedWords(Scenario scenario, String match, List<Sowing> sowings) {
  /** So many are named one by one. */
  private static final int NAMED = 3;

  static MatchedWords of(Sizing sizing) {
    List<Sowing> plan = sizing.scenario().sowings();
    return new MatchedWords(
        sizing.scenario(), sizing.match(), sizing.sowings().stream().map(plan::get).toList());
  }

  /** Whether the goal is about the whole plan. */
  boolean isAll() {
    return sowings.size() == scenario.sowings().size();
  }

  boolean isOne() {
    return sowings.size() == 1;
  }

  /** Such as {@code tomato-1 and tomato-2} or {@code all 4 sowings of snapdragon}. */
  String each() {
    return named("all ");
  }

  /** The sowings taken together, such as {@code the 4 sowings of snapdragon}. */
  String together() {
    return named("the ");
  }

  private String named(String many) {
    return sowings.size() <= NAMED
        ? Words.list(sowings.stream().map(Sowing::id).toList())
        : many + Words.plural(sowings.size(), "sowing") + " of " + name();
  }

  /** The crop's name where all of its sowings are meant and no other; or else the match. */
  String name() {
    String crop = sowings.isEmpty() ? match : sowings.get(0).crop();
    boolean isCrop =
        sowings.equals(scenario.sowings().stream().filter(s -> s.crop().equals(crop)).toList());
    return isCrop ? crop : match;
  }
}
