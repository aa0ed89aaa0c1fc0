package propcap.report.size;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.report.kit.Words;
import propcap.study.size.Goal.Measure;
import propcap.study.size.Sizing;
import propcap.study.size.Sizing.Candidate;
import propcap.study.size.Sizing.Found;

/**
 * The answer to how large a place must be, in a sentence; another one where the springs ran out
 * before it was decided.
 */
record SizeVerdict(SizeWords words) {

  static String of(Sizing sizing) {
    return new SizeVerdict(SizeWords.of(sizing)).text();
  }

  String text() {
    Optional<Candidate> answer = sizing().found();
    if (sizing().isDecided()) {
      return answer.map(this::decided).orElseGet(this::noneHolds);
    }
    return "Not decided in %s: %s"
        .formatted(
            Words.plural(sizing().most(), "spring"),
            answer.map(this::seems).orElseGet(this::noneSeems));
  }

  private Sizing sizing() {
    return words.sizing();
  }

  private boolean isPair() {
    return sizing().places().size() > 1;
  }

  private boolean isMargin() {
    return words.measure() == Measure.MARGIN;
  }

  private int tried() {
    return sizing().candidates().size();
  }

  private String sizesTried() {
    return tried() + (isPair() ? " pairs tried" : " sizes tried");
  }

  private String decided(Candidate answer) {
    if (isMargin()) {
      return best(answer, " is best with ", " are best") + largestMargin("", answer);
    }
    return sizing()
        .asItIs()
        .filter(now -> !isPair() && sizing().isEnoughAsItIs())
        .map(now -> enough(now, answer))
        .orElseGet(() -> needed(answer) + asItIs(answer));
  }

  /** It holds as it is: whether less would do stands after that. */
  private String enough(Candidate now, Candidate answer) {
    String name = sizing().places().get(0);
    String isEnough =
        (words.withHands() ? name + " are enough as they are" : name + " is large enough as it is")
            + ": with "
            + words.amount(0, now.spaces().get(0))
            + " "
            + words.goal()
            + " ("
            + words.estimate(now)
            + ").";
    return answer.equals(now)
        ? isEnough
        : "%s %s%s, would do: the smallest of %s (%s)."
            .formatted(
                isEnough,
                Words.capital(words.amount(0, answer.spaces().get(0))),
                words.ofNow(answer),
                sizesTried(),
                words.estimate(answer));
  }

  /** What comes of today's sizes, where they are not what was said. */
  private String asItIs(Candidate said) {
    return sizing()
        .asItIs()
        .filter(now -> !now.equals(said))
        .map(now -> " As it is, with " + bare(now) + ", it is " + words.estimate(now) + ".")
        .orElse("");
  }

  private String needed(Candidate answer) {
    String which =
        tried() == 1
            ? ": the only " + (isPair() ? "pair" : "size") + " tried, and with it "
            : isPair()
                ? ": the cheapest (" + words.cost(answer) + ") of " + sizesTried() + " for which "
                : ": the smallest of " + sizesTried() + " for which ";
    return best(answer, " needs ", " are needed")
        + which
        + words.goal()
        + " ("
        + words.estimate(answer)
        + ").";
  }

  private String best(Candidate answer, String ofOne, String ofPair) {
    return isPair()
        ? words.size(answer) + ofPair
        : sizing().places().get(0)
            + ofOne
            + words.amount(0, answer.spaces().get(0))
            + words.ofNow(answer);
  }

  private String largestMargin(String soFar, Candidate answer) {
    return (tried() == 1
            ? ": nothing else was tried. The margin of a season is "
            : ": of " + sizesTried() + " the largest mean margin of a season" + soFar + ", ")
        + words.estimate(answer)
        + ".";
  }

  private String noneHolds() {
    Candidate best = sizing().nearestToGoal();
    double lacking = sizing().goal().least() - best.mean();
    return capital(none("is"))
        + words.estimate(best)
        + (lacking > 0
            ? ", which falls " + words.distance(lacking) + " short of the goal of "
            : ", which is not told from the goal of ")
        + words.shown(sizing().goal().least())
        + "."
        + (isLargest(best) ? " Larger sizes were not tried." : "")
        + asItIs(best);
  }

  private String capital(String none) {
    return tried() == 1 ? "No: " + none : Words.capital(none);
  }

  /** That none is enough, up to what the best of them comes to. */
  private String none(String is) {
    return (tried() == 1
            ? "the only size tried " + is + " not enough: "
            : "none of the " + sizesTried() + " " + is + " enough: the best of them, ")
        + words.size(sizing().nearestToGoal())
        + (tried() == 1 ? " come to " : ", comes to ");
  }

  private boolean isLargest(Candidate candidate) {
    return IntStream.range(0, sizing().places().size())
        .anyMatch(
            p ->
                sizing().candidates().stream()
                    .allMatch(c -> c.spaces().get(p) <= candidate.spaces().get(p)));
  }

  // Not decided.

  private String seems(Candidate answer) {
    if (isMargin()) {
      return best(answer, " seems best with ", " seem best") + largestMargin(" so far", answer);
    }
    return "%s, so that %s. With %s it is %s%s."
        .formatted(
            best(answer, " seems to need ", " seem to be needed"),
            words.goal(),
            bare(answer),
            words.estimate(answer),
            next(answer).map(c -> "; with " + bare(c) + " it is " + words.estimate(c)).orElse(""));
  }

  /** What comes nearest before an answer and is open as well; or else what fails before it. */
  private Optional<Candidate> next(Candidate answer) {
    List<Candidate> before = sizing().before(answer);
    return before.stream()
        .filter(c -> c.found() == Found.NEAR)
        .findFirst()
        .or(() -> before.stream().findFirst());
  }

  /** A size of one place without its name, which was said. */
  private String bare(Candidate candidate) {
    return isPair() ? words.size(candidate) : Words.count(candidate.spaces().get(0));
  }

  private String noneSeems() {
    return "%s%s, and the goal is %s."
        .formatted(
            none("seems"),
            words.estimate(sizing().nearestToGoal()),
            words.shown(sizing().goal().least()));
  }
}
