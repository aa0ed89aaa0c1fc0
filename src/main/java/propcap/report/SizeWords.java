package propcap.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.farm.Place;
import propcap.study.Capacity;
import propcap.study.Goal.Measure;
import propcap.study.Sizing;
import propcap.study.Sizing.Candidate;
import propcap.study.Sizing.Found;

/** How large a place must be, in words. */
record SizeWords(Sizing sizing, Optional<Money> money) {

  static SizeWords of(Sizing sizing) {
    return new SizeWords(sizing, Money.of(sizing.scenario()));
  }

  private Measure measure() {
    return sizing.goal().measure();
  }

  boolean isShare() {
    return measure() == Measure.MET || measure() == Measure.ON_TIME_SHARE;
  }

  /** What a measure is multiplied with to be shown: shares are shown in percent. */
  double factor() {
    return isShare() ? 100 : 1;
  }

  String unit() {
    return switch (measure()) {
      case MET, ON_TIME_SHARE -> "%";
      case ON_TIME -> "plants";
      case MARGIN -> money.map(Money::currency).orElse("of money");
    };
  }

  /** What is measured, for an axis or the head of a column. */
  String axis() {
    return switch (measure()) {
      case MET -> "springs in which all is met, %";
      case ON_TIME_SHARE -> "of the plants needed on time, %";
      case ON_TIME -> "plants on time";
      case MARGIN -> "margin of a season, " + unit();
    };
  }

  String goal() {
    MatchedWords matched = MatchedWords.of(sizing);
    return switch (measure()) {
      case MET ->
          (matched.isAll() ? "every sowing" : matched.each())
              + (matched.isAll() || matched.isOne() ? " has its" : " have their")
              + " plants on time in at least "
              + shown(sizing.goal().least())
              + " of springs";
      case ON_TIME_SHARE ->
          "at least "
              + shown(sizing.goal().least())
              + " of the plants needed"
              + (matched.isAll() ? "" : " by " + matched.together())
              + " are on time";
      case ON_TIME ->
          "at least "
              + shown(sizing.goal().least())
              + (matched.isAll() ? "" : " of " + matched.together())
              + " are on time in a mean spring";
      case MARGIN -> "the mean margin of a season is largest";
    };
  }

  /** A value of the measure with its unit, not rounded where it was given. */
  private String shown(double value) {
    if (measure() == Measure.MARGIN || measure() == Measure.ON_TIME) {
      return Words.count(value) + " " + unit();
    }
    return Words.given(value);
  }

  /** A candidate's estimate with half its 95 % interval, such as {@code 71.3 ± 2.8 %}. */
  String estimate(Candidate c) {
    return bareEstimate(c) + " " + unit();
  }

  /** The same without its unit; all springs alike give no interval. */
  String bareEstimate(Candidate c) {
    double mean = factor() * c.mean();
    double halfWidth = factor() * Words.Z_95 * c.se();
    return measure() == Measure.MARGIN
        ? Money.level(mean, halfWidth)
        : Words.estimate(mean, halfWidth);
  }

  String found(Found found) {
    boolean best = measure() == Measure.MARGIN;
    return switch (found) {
      case HOLDS -> best ? "best, or as good" : "holds";
      case FAILS -> best ? "clearly less" : "fails";
      case NEAR -> best ? "too near to tell" : "too near the goal to tell";
    };
  }

  static String mark(Found found) {
    return switch (found) {
      case HOLDS -> "●";
      case FAILS -> "○";
      case NEAR -> "◐";
    };
  }

  /** Such as {@code 120 spaces of House 2 and 60 of Chamber}. */
  String size(Candidate c) {
    List<String> parts = new ArrayList<>();
    for (int p = 0; p < sizing.places().size(); p++) {
      int spaces = c.spaces().get(p);
      parts.add(
          (p == 0 || withHands() ? amount(p, spaces) : Words.count(spaces))
              + " of "
              + sizing.places().get(p));
    }
    return Words.list(parts);
  }

  /** Whether the candidates' yearly cost is money and not spaces. */
  boolean costIsMoney() {
    return money.isPresent()
        && sizing.scenario().places().stream()
            .filter(p -> sizing.places().contains(p.name()))
            .map(Place::cost)
            .anyMatch(c -> c != null);
  }

  String cost(Candidate c) {
    return bareCost(c) + " " + costUnit();
  }

  String bareCost(Candidate c) {
    return costIsMoney() ? Money.level(c.yearlyCost(), 0) : Words.count(c.yearlyCost());
  }

  String costUnit() {
    return costIsMoney()
        ? money.map(Money::currency).orElseThrow() + " a year"
        : withHands() ? "in all" : "spaces in all";
  }

  /** Whether people's hours are sized. */
  boolean withHands() {
    return IntStream.range(0, sizing.places().size()).anyMatch(this::isHands);
  }

  private boolean isHands(int place) {
    return Capacity.isHands(sizing.scenario(), sizing.places().get(place));
  }

  /** Such as {@code 120 spaces}, or {@code 14 hours a day} of hands. */
  String amount(int place, int size) {
    return isHands(place) ? Words.plural(size, "hour") + " a day" : Words.plural(size, "space");
  }

  /** What a place's size is counted in. */
  String countedIn(int place) {
    return isHands(place) ? "hours a day" : "spaces";
  }

  /** The answer in a sentence. */
  String verdict() {
    Optional<Candidate> answer = sizing.found();
    return answer.isPresent() ? verdict(answer.get()) : noneHolds();
  }

  private String verdict(Candidate answer) {
    boolean isPair = sizing.places().size() > 1;
    int tried = sizing.candidates().size();
    String sizes = tried + (isPair ? " pairs tried" : " sizes tried");
    String start =
        isPair
            ? size(answer) + " are needed"
            : sizing.places().get(0)
                + " needs "
                + amount(0, answer.spaces().get(0))
                + ofNow(answer);
    if (measure() == Measure.MARGIN) {
      return (isPair ? size(answer) + " are best" : start.replace(" needs ", " is best with "))
          + (tried == 1
              ? ": nothing else was tried. The margin of a season is "
              : ": of " + sizes + " the largest mean margin of a season, ")
          + estimate(answer)
          + ".";
    }
    String which =
        tried == 1
            ? ": the only " + (isPair ? "pair" : "size") + " tried, and with it "
            : isPair
                ? ": the cheapest (" + cost(answer) + ") of " + sizes + " for which "
                : ": the smallest of " + sizes + " for which ";
    return start + which + goal() + " (" + estimate(answer) + ").";
  }

  /** How much more or less than there is, such as {@code , 110 more than now}. */
  private String ofNow(Candidate answer) {
    Optional<Double> now = now();
    if (now.isEmpty()) {
      return "";
    }
    double more = answer.spaces().get(0) - now.get();
    return more == 0
        ? ", as many as now"
        : ", " + Words.amount(Math.abs(more)) + (more > 0 ? " more than now" : " fewer than now");
  }

  /** What there is of the first place; empty where it is hours without a limit. */
  private Optional<Double> now() {
    if (isHands(0)) {
      return Optional.of(sizing.scenario().labour().hoursPerDay()).filter(Double::isFinite);
    }
    return sizing.scenario().places().stream()
        .filter(p -> p.name().equals(sizing.places().get(0)))
        .map(p -> (double) p.spaces())
        .findFirst();
  }

  private String noneHolds() {
    int tried = sizing.candidates().size();
    String none =
        tried == 1
            ? "No: the only size tried is not enough"
            : "None of the "
                + tried
                + (sizing.places().size() > 1 ? " pairs" : " sizes")
                + " tried is enough";
    Optional<Candidate> best =
        sizing.candidates().stream()
            .filter(c -> c.seasons() > 0)
            .max(Comparator.comparingDouble(Candidate::mean));
    if (best.isEmpty()) {
      return none + ".";
    }
    double lacking = sizing.goal().least() - best.get().mean();
    return none
        + (tried == 1 ? ": " : ": the best of them, ")
        + size(best.get())
        + (tried == 1 ? " come to " : ", comes to ")
        + estimate(best.get())
        + (lacking > 0
            ? ", which falls " + distance(lacking) + " short of the goal of "
            : ", which is not told from the goal of ")
        + shown(sizing.goal().least())
        + "."
        + (isLargest(best.get()) ? " Larger sizes were not tried." : "");
  }

  private boolean isLargest(Candidate candidate) {
    return IntStream.range(0, sizing.places().size())
        .anyMatch(
            p ->
                sizing.candidates().stream()
                    .allMatch(c -> c.spaces().get(p) <= candidate.spaces().get(p)));
  }

  /** An amount of the measure, such as {@code 19 percentage points}. */
  String distance(double value) {
    return isShare() ? shown(value).replace(" %", "") + " percentage points" : shown(value);
  }
}
