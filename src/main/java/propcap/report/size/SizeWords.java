package propcap.report.size;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.farm.Place;
import propcap.report.kit.Money;
import propcap.report.kit.Words;
import propcap.study.Capacity;
import propcap.study.size.Goal.Measure;
import propcap.study.size.Sizing;
import propcap.study.size.Sizing.Candidate;
import propcap.study.size.Sizing.Found;

/** How large a place must be, in words. */
record SizeWords(Sizing sizing, Optional<Money> money) {

  static SizeWords of(Sizing sizing) {
    return new SizeWords(sizing, Money.of(sizing.scenario()));
  }

  Measure measure() {
    return sizing.goal().measure();
  }

  boolean isShare() {
    return sizing.goal().isShare();
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
          "%s %s plants on time in at least %s of springs"
              .formatted(
                  matched.isAll() ? "every sowing" : matched.each(),
                  matched.isAll() || matched.isOne() ? "has its" : "have their",
                  shown(sizing.goal().least()));
      case ON_TIME_SHARE ->
          "at least %s of the plants needed%s are on time"
              .formatted(
                  shown(sizing.goal().least()), matched.isAll() ? "" : " by " + matched.together());
      case ON_TIME ->
          "at least %s%s are on time in a mean spring"
              .formatted(
                  shown(sizing.goal().least()), matched.isAll() ? "" : " of " + matched.together());
      case MARGIN -> "the mean margin of a season is largest";
    };
  }

  /** A value of the measure with its unit, not rounded where it was given. */
  String shown(double value) {
    if (measure() == Measure.MARGIN || measure() == Measure.ON_TIME) {
      return Words.count(value) + " " + unit();
    }
    return Words.given(value);
  }

  /** A candidate's estimate with its limits, such as {@code 71.3 %, between 66 and 76 %}. */
  String estimate(Candidate c) {
    return bareEstimate(c)
        + " "
        + unit()
        + (c.low() < c.high() ? ", between " + limits(c, " and ") + " " + unit() : "");
  }

  /** The estimate alone, without its unit. */
  String bareEstimate(Candidate c) {
    return rounded(c, c.mean());
  }

  /** Its limits with a word between them, without the unit. */
  String limits(Candidate c, String between) {
    return rounded(c, c.low()) + between + rounded(c, c.high());
  }

  private String rounded(Candidate c, double value) {
    return measure() == Measure.MARGIN
        ? Money.level(value, 0)
        : Words.rounded(factor() * value, factor() * (c.high() - c.low()) / 2);
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
      case NEAR -> "◊";
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

  /** How much more or less than there is, such as {@code , 110 more than now}. */
  String ofNow(Candidate answer) {
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

  /** How near the goal the answer is, rounded up. */
  String reached() {
    double steps = isShare() ? 1000 : 1;
    return distance(Math.ceil(sizing.reached() * steps) / steps);
  }

  /** An amount of the measure, such as {@code 19 percentage points}. */
  String distance(double value) {
    return isShare() ? Words.bareGiven(value) + " percentage points" : shown(value);
  }
}
