package propcap.report.bottleneck;

import java.util.ArrayList;
import java.util.List;
import propcap.report.kit.Words;
import propcap.study.bottleneck.Bottlenecks;
import propcap.study.bottleneck.Bottlenecks.Step;
import propcap.study.money.Investment.Pays;

/**
 * What helps most, step by step, in words. Only what clearly pays is called something to buy.
 *
 * @param answer of whose steps it is
 */
record StairWords(Bottlenecks answer) {

  /** The steps in their order: to buy as long as they pay, then those of which it is not told. */
  String plan() {
    List<Step> steps = answer.steps();
    if (steps.isEmpty()) {
      return nothing();
    }
    int paying = 0;
    while (paying < steps.size() && steps.get(paying).trial().pays() == Pays.YES) {
      paying++;
    }
    List<String> sentences = new ArrayList<>();
    if (paying > 0) {
      List<Step> first = steps.subList(0, paying);
      boolean withHands = first.stream().anyMatch(s -> s.place().isHands());
      sentences.add((withHands ? "Take on first " : "Buy first ") + row(first, true) + ".");
    }
    List<Step> others = steps.subList(paying, steps.size());
    if (!others.isEmpty()) {
      sentences.add(
          (paying > 0 ? "After that, what helps most is " : "Step by step, what helps most is ")
              + row(others, false)
              + ".");
      sentences.add(whetherToBuy(others));
    }
    return String.join(" ", sentences);
  }

  /** Whether it says what to buy, or that what helps is too dear: what was asked, with money. */
  boolean isOfMoney() {
    List<Step> steps = answer.steps();
    return steps.isEmpty() ? isDear() : steps.get(0).trial().pays() == Pays.YES;
  }

  private boolean isDear() {
    return answer.worths().stream()
        .anyMatch(w -> w.more().onTime().isMore() && w.more().pays() == Pays.NO);
  }

  private String nothing() {
    return isDear()
        ? "There is nothing to buy: what clearly helps costs more than it brings."
        : "There is nothing to buy: no tenth of any place clearly helps.";
  }

  private String row(List<Step> steps, boolean withWorth) {
    return String.join(", then ", steps.stream().map(s -> step(s, withWorth)).toList());
  }

  private String step(Step step, boolean withWorth) {
    return "%s of %s (%s plants a spring%s)"
        .formatted(
            BottlenecksWords.more(step.place(), step.trial().spaces()),
            step.place().isHands() ? "hands" : step.place().name(),
            Words.difference(step.trial().onTime()),
            withWorth ? ", " + MoneyWords.of(answer).worth(step.trial()) : "");
  }

  private String whetherToBuy(List<Step> steps) {
    List<Step> open = steps.stream().filter(s -> s.trial().pays() != Pays.YES).toList();
    boolean one = open.size() == 1;
    String which =
        open.size() == steps.size()
            ? (one ? "it pays" : "they pay")
            : Words.list(open.stream().map(this::number).toList()) + (one ? " pays" : " pay");
    if (answer.scenario().prices() == null) {
      return "Whether " + which + " is not asked: the scenario has no money.";
    }
    if (open.stream().noneMatch(s -> s.trial().pays() == Pays.NOT_KNOWN)) {
      return "Whether " + which + " is not told: the springs are too few for that.";
    }
    return "Whether %s cannot be told: %s cost is not written.%s"
        .formatted(which, one ? "its" : "their", MoneyWords.of(answer).beforeBuying(open));
  }

  /** Such as {@code the second}. */
  private String number(Step step) {
    return "step " + (answer.steps().indexOf(step) + 1);
  }

  /** What all the steps come to. */
  String inAll() {
    if (answer.steps().isEmpty()) {
      return "";
    }
    Step last = answer.steps().get(answer.steps().size() - 1);
    return "In all that is "
        + spacesInAll()
        + " and "
        + Words.difference(last.gainSoFar())
        + " plants on time a spring. Each step is the tenth of a place that helps most, space for"
        + " space, once those before it are there"
        + (answer.scenario().prices() == null
            ? "; "
            : ", of those that do not clearly cost more than they bring; ")
        + (answer.isExhausted()
            ? "after the last there is none that clearly helps."
            : "more steps were not asked for.");
  }

  private String spacesInAll() {
    int hours = added(true);
    int spaces = added(false);
    if (hours == 0) {
      return Words.plural(spaces, "space");
    }
    String a = Words.plural(hours, "hour") + " a day";
    return spaces == 0 ? a : Words.plural(spaces, "space") + ", " + a;
  }

  private int added(boolean hands) {
    return answer.steps().stream()
        .filter(s -> s.place().isHands() == hands)
        .mapToInt(s -> s.trial().spaces())
        .sum();
  }
}
