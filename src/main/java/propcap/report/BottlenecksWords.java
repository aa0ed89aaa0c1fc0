package propcap.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import propcap.farm.Step;
import propcap.study.Bottlenecks;
import propcap.study.Bottlenecks.Worth;
import propcap.study.Capacity;
import propcap.study.Difference;

/** What a little more of each place is worth, in words. */
record BottlenecksWords(Bottlenecks answer) {

  /** Where one more space helps most. */
  String verdict() {
    Optional<Worth> best =
        answer.worths().stream().filter(w -> w.moreOnTime().low() > 0).findFirst();
    if (best.isEmpty()) {
      return "No tenth more of any one place clearly gains plants on time.";
    }
    return (best.get().place().isHands()
            ? "One more hour a day of hands helps most: "
            : "One more space helps most in " + best.get().place().name() + ": ")
        + perSpace(best.get().moreOnTime(), best.get().spaces())
        + " plants on time a spring for each"
        + holdsUp(best.get()).map(h -> "; more of it relieves what waits " + h).orElse("")
        + ".";
  }

  /** The owner's plan: what to buy first, and then. */
  String plan() {
    if (answer.steps().isEmpty()) {
      return "There is nothing to buy: no tenth of any place clearly helps.";
    }
    List<String> steps = new ArrayList<>();
    for (Bottlenecks.Step step : answer.steps()) {
      steps.add(
          spaces(step.place(), step.spaces())
              + " of "
              + step.place().name()
              + " ("
              + Words.difference(step.gain())
              + " plants a spring)");
    }
    return "Buy first " + String.join(", then ", steps) + ".";
  }

  /** What all the steps come to. */
  String planInAll() {
    if (answer.steps().isEmpty()) {
      return "";
    }
    Bottlenecks.Step last = answer.steps().get(answer.steps().size() - 1);
    return "In all that is "
        + inAll()
        + " and "
        + Words.difference(last.gainSoFar())
        + " plants on time a spring. Each step is the tenth of a place that helps most once those"
        + " before it are there; "
        + (answer.isExhausted()
            ? "after the last no tenth clearly helps."
            : "more steps were not asked for.");
  }

  /** Spaces and hours of all steps. */
  private String inAll() {
    int hours = bought(true);
    int spaces = bought(false);
    if (hours == 0) {
      return Words.plural(spaces, "space");
    }
    String a = Words.plural(hours, "hour") + " a day";
    return spaces == 0 ? a : Words.plural(spaces, "space") + ", " + a;
  }

  private int bought(boolean hands) {
    return answer.steps().stream()
        .filter(s -> s.place().isHands() == hands)
        .mapToInt(Bottlenecks.Step::spaces)
        .sum();
  }

  /** Whether hours are among what was tried. */
  boolean withHands() {
    return answer.worths().stream().anyMatch(w -> w.place().isHands());
  }

  /** Such as {@code 12 spaces}, or {@code 2 hours a day} of hands. */
  static String spaces(Capacity of, int count) {
    return of.isHands() ? Words.plural(count, "hour") + " a day" : Words.plural(count, "space");
  }

  /** Places of which more clearly costs plants. */
  List<String> warnings() {
    return answer.worths().stream()
        .filter(w -> w.moreOnTime().high() < 0)
        .map(
            w ->
                "More of "
                    + w.place().name()
                    + " loses plants: "
                    + Words.difference(w.moreOnTime())
                    + " a spring for "
                    + spaces(w.place(), w.spaces())
                    + " more.")
        .toList();
  }

  /** Steps that clearly wait less with more of a place: what the place holds up. */
  static Optional<String> holdsUp(Worth worth) {
    List<String> steps = new ArrayList<>();
    for (int s = 0; s < worth.moreWaiting().size(); s++) {
      Difference waiting = worth.moreWaiting().get(s);
      if (waiting.high() < 0) {
        steps.add(
            TradeWords.step(Step.values()[s]) + " (" + Words.difference(waiting) + " tray-days)");
      }
    }
    return steps.isEmpty() ? Optional.empty() : Optional.of(Words.list(steps));
  }

  static String perSpace(Difference difference, int spaces) {
    return Words.difference(difference.mean() / spaces, difference.halfWidth() / spaces);
  }
}
