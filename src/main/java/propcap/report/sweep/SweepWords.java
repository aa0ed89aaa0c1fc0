package propcap.report.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import propcap.report.kit.Money;
import propcap.report.kit.Words;
import propcap.study.statistics.Difference;
import propcap.study.sweep.Sweep;
import propcap.study.sweep.Sweep.Swept;

/** What comes of many scenarios, in words. */
record SweepWords(Sweep sweep) {
  private static final int NAMED = 3;
  private static final int LONGEST_NAME = 60;

  /** So that a line of the best holds it. */
  private static final int LONGEST_LED = 46;

  private static String name(Swept swept) {
    return Words.shortened(swept.variant().name(), LONGEST_NAME);
  }

  private int others() {
    return sweep.scenarios().size() - 1;
  }

  private String measure() {
    return sweep.byMargin() ? "a higher margin" : "more plants on time";
  }

  /** The answer, what else may be it, and what it leaves out. */
  List<String> verdicts() {
    List<String> verdicts = new ArrayList<>();
    verdicts.add(best());
    verdicts.add(alike());
    if (sweep.byMargin() && sweep.changesPlaces()) {
      verdicts.add(
          "Margins are before what added room costs to buy: compare tells whether it pays.");
    }
    return verdicts;
  }

  private String best() {
    Swept best = sweep.best();
    Difference deciding = best.deciding(sweep.byMargin());
    if (deciding == null) {
      return "%s is best as it is: none of the %s came out with %s."
          .formatted(name(best), Words.plural(others(), "other scenario"), measure());
    }
    String than = name(sweep.first());
    return deciding.isMore()
        ? name(best) + " is best: " + differences(best) + " against " + than + "."
        : "Nothing tried clearly has %s than %s: %s came out best, with %s."
            .formatted(measure(), than, name(best), differences(best));
  }

  private String alike() {
    List<String> names = notTold();
    if (names.isEmpty()) {
      return "With "
          + Words.given(sweep.confidence())
          + " confidence none of the others is better.";
    }
    List<String> some =
        new ArrayList<>(
            names.stream().limit(NAMED).map(n -> Words.shortened(n, LONGEST_NAME)).toList());
    if (names.size() > NAMED) {
      some.add(names.size() - NAMED + " more");
    }
    return "The springs do not tell it from %s: with %s confidence one of these is the best."
        .formatted(Words.list(some), Words.given(sweep.confidence()));
  }

  /** Those that the springs do not tell from the best, by name. */
  List<String> notTold() {
    return sweep.notTold().stream().map(i -> sweep.scenarios().get(i).variant().name()).toList();
  }

  private String differences(Swept swept) {
    Difference plants = swept.toFirst();
    Difference margin = swept.marginToFirst();
    String told = plants == null ? "" : Words.difference(plants) + " plants on time";
    return (margin == null
            ? told
            : "%s and %s of margin"
                .formatted(told, new Money(SweptRow.currency(sweep)).difference(margin)))
        + " a spring";
  }

  /** The best ones, each in a line. */
  List<String> leaders() {
    return IntStream.range(0, Math.min(NAMED, sweep.ranking().size()))
        .mapToObj(i -> i + 1 + ". " + leader(sweep.scenarios().get(sweep.ranking().get(i))))
        .toList();
  }

  private static String leader(Swept swept) {
    return "%s: %s on time, %s of %s sowings safe"
        .formatted(
            Words.shortened(swept.variant().name(), LONGEST_LED),
            Words.estimate(swept.onTime()),
            swept.safe(),
            swept.variant().scenario().sowings().size());
  }
}
