package propcap.report.compare;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import propcap.farm.Loss;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.report.kit.TradeWords;
import propcap.report.kit.WaitingCauses;
import propcap.report.kit.Words;
import propcap.study.compare.Comparison;
import propcap.study.compare.Comparison.Kind;
import propcap.study.compare.Comparison.Outcome;
import propcap.study.forecast.WhatMatters;
import propcap.study.statistics.Difference;

/**
 * What an alternative is worth, in words. A gain or a loss is only said where the interval leaves 0
 * out.
 *
 * @param alternative its number from 0, the first scenario not counted
 */
record ComparisonWords(Comparison comparison, int alternative) {
  private static final int CROPS_NAMED = 2;

  static List<ComparisonWords> of(Comparison comparison) {
    List<ComparisonWords> all = new ArrayList<>();
    for (int a = 0; a < comparison.scenarios().size() - 1; a++) {
      all.add(new ComparisonWords(comparison, a));
    }
    return all;
  }

  String name() {
    return comparison.scenarios().get(alternative + 1).name();
  }

  Difference difference(Outcome outcome) {
    return outcome.differences().get(alternative);
  }

  /** Gain or loss of plants on time, and why, in one or two sentences. */
  String verdict() {
    Difference onTime = difference(comparison.total(Kind.ON_TIME));
    String springs = Words.plural(comparison.seasons(), "spring");
    if (onTime.mean() == 0 && onTime.halfWidth() == 0) {
      return "%s changes nothing: %s gave the same plants on time.%s"
          .formatted(name(), springs, whatGetsWorse(" But "));
    }
    WhatMatters matters = WhatMatters.of(onTime, comparison.scenarios().get(0));
    if (matters == WhatMatters.NONE) {
      return name()
          + " makes no difference that matters: "
          + Words.difference(onTime)
          + " plants on time a spring, less than "
          + Words.percent(WhatMatters.SHARE)
          + " of those needed."
          + whatMoves()
          + whatGetsWorse(" But ");
    }
    if (onTime.isClear()) {
      boolean gains = onTime.mean() > 0;
      String because = because(gains);
      return name()
          + (gains ? " adds " : " loses ")
          + Words.size(onTime)
          + " plants on time a spring"
          + (because.isEmpty() ? ". " : ": " + because + ". ")
          + holdUp().map(h -> "With it " + h + ".").orElse("With it nothing waits for room.")
          + whatGetsWorse(gains ? " But " : " Besides, ");
    }
    if (!onTime.isTold()) {
      return "%s changes the plants on time%s of %s only, too few to tell what it brings.%s%s"
          .formatted(
              name(),
              Words.inFew(onTime),
              Words.count(comparison.seasons()),
              whatMoves(),
              whatGetsWorse(" But "));
    }
    return "%s adds nothing that %s could tell (%s plants on time a spring): %s.%s%s"
        .formatted(
            name(),
            springs,
            Words.difference(onTime),
            holdUp().orElse("nothing waits for room"),
            whatMoves(),
            whatGetsWorse(" But "));
  }

  /** The verdict where there is little room, without its reasons. */
  String shortVerdict() {
    Difference onTime = difference(comparison.total(Kind.ON_TIME));
    return name()
        + ": "
        + (onTime.isTold()
            ? Words.difference(onTime) + " plants on time a spring"
            : "other plants on time" + Words.inFew(onTime) + " only")
        + shortly(onTime)
        + late().map(late -> "; " + late).orElse("");
  }

  private String shortly(Difference onTime) {
    Scenario first = comparison.scenarios().get(0);
    return switch (WhatMatters.of(onTime, first)) {
      case MATTERS -> "";
      case NONE -> ", no difference that matters";
      case NOT_TOLD -> ", not told from " + first.name();
    };
  }

  /** How many sowings are safe in each scenario, in a sentence. */
  static String safe(Comparison comparison) {
    List<Scenario> scenarios = comparison.scenarios();
    return "Sowings safe: "
        + Words.list(
            IntStream.range(0, scenarios.size())
                .mapToObj(
                    i ->
                        comparison.safe().get(i)
                            + " of "
                            + scenarios.get(i).sowings().size()
                            + (i == 0 ? "" : " with " + scenarios.get(i).name()))
                .toList())
        + ".";
  }

  /** Other outcomes that clearly get worse, whatever comes of all plants together. */
  private String whatGetsWorse(String start) {
    List<String> bad = new ArrayList<>();
    late().ifPresent(bad::add);
    worse(comparison.find(Kind.SOWINGS_MET, ""))
        .map(d -> Words.size(d) + " fewer sowings a spring have their plants on average")
        .ifPresent(bad::add);
    List<Outcome> losers =
        parts(Kind.ON_TIME_OF_CROP).stream()
            .filter(o -> difference(o).isLess())
            .sorted(Comparator.comparingDouble(o -> difference(o).mean()))
            .toList();
    if (!losers.isEmpty()) {
      List<String> most =
          losers.stream()
              .limit(CROPS_NAMED)
              .map(o -> o.subject() + " (" + Words.difference(difference(o)) + ")")
              .toList();
      bad.add(
          Words.list(most)
              + (losers.size() > CROPS_NAMED
                  ? " lose most"
                  : losers.size() == 1 ? " loses" : " lose"));
    }
    return bad.isEmpty() ? "" : start + String.join("; ", bad) + ".";
  }

  private Optional<String> late() {
    return worse(comparison.find(Kind.LATE, "")).map(d -> Words.size(d) + " more come late");
  }

  private Optional<Difference> worse(Optional<Outcome> outcome) {
    return outcome
        .filter(o -> difference(o).isClear())
        .filter(o -> difference(o).mean() > 0 != o.moreIsBetter())
        .map(this::difference);
  }

  /** The clear changes that go with a gain or a loss, as a part of a sentence. */
  private String because(boolean better) {
    List<String> reasons = new ArrayList<>();
    largestClear(Kind.WAITING, better).map(this::waiting).ifPresent(reasons::add);
    largestClear(Kind.LOST, better).map(this::lost).ifPresent(reasons::add);
    return Words.list(reasons);
  }

  /** What clearly changes although it comes to nothing. */
  private String whatMoves() {
    List<String> moves = new ArrayList<>();
    for (Kind kind : List.of(Kind.WAITING, Kind.LOST)) {
      for (boolean better : new boolean[] {true, false}) {
        largestClear(kind, better)
            .map(kind == Kind.WAITING ? this::waiting : this::lost)
            .ifPresent(moves::add);
      }
    }
    return moves.isEmpty() ? "" : " What it does change: " + Words.list(moves) + ".";
  }

  private Optional<Outcome> largestClear(Kind kind, boolean better) {
    return parts(kind).stream()
        .filter(o -> difference(o).isClear())
        .filter(o -> (difference(o).mean() > 0 == o.moreIsBetter()) == better)
        .max(Comparator.comparingDouble(o -> Math.abs(difference(o).mean())));
  }

  /** The outcomes of a kind, its total left out. */
  private List<Outcome> parts(Kind kind) {
    return comparison.outcomes().stream()
        .filter(o -> o.kind() == kind && !o.subject().isEmpty())
        .toList();
  }

  private String waiting(Outcome outcome) {
    return moreOrFewer(outcome)
        + " tray-days wait "
        + TradeWords.stepOf(outcome.subject()).map(TradeWords::step).orElse(outcome.subject());
  }

  private String lost(Outcome outcome) {
    return moreOrFewer(outcome)
        + " are lost ("
        + TradeWords.lossOf(outcome.subject()).map(TradeWords::shortLoss).orElse(outcome.subject())
        + ")";
  }

  private String moreOrFewer(Outcome outcome) {
    Difference d = difference(outcome);
    return Words.size(d) + (d.mean() > 0 ? " more" : " fewer");
  }

  /** What waits most with the alternative, and so what holds it up; empty where nothing waits. */
  private Optional<String> holdUp() {
    return parts(Kind.WAITING).stream()
        .max(Comparator.comparingDouble(this::level))
        .filter(o -> level(o) >= WaitingCauses.NOTHING)
        .flatMap(o -> TradeWords.stepOf(o.subject()).map(step -> holdUp(step, o)));
  }

  /** With both levels, for the alternative need not have brought it about. */
  private String holdUp(RoomWait step, Outcome waiting) {
    double now = waiting.levels().get(0).mean();
    boolean isStill = now >= WaitingCauses.NOTHING && !difference(waiting).isMore();
    return "%s (%s a spring now, %s with it)"
        .formatted(
            TradeWords.holdUp(step, isStill ? "still full" : "full", plantsStretch()),
            Words.plural(now, "tray-day"),
            Words.amount(level(waiting)));
  }

  private boolean plantsStretch() {
    return comparison.find(Kind.LOST, Loss.STRETCHED.word()).filter(o -> level(o) >= 1).isPresent();
  }

  private double level(Outcome outcome) {
    return outcome.levels().get(alternative + 1).mean();
  }

  /** What an outcome is called in a table. */
  static String name(Outcome outcome) {
    String subject = outcome.subject();
    return switch (outcome.kind()) {
      case ON_TIME -> "plants on time";
      case ON_TIME_OF_CROP -> "on time: " + subject;
      case LATE -> "plants late";
      case SOWINGS_MET -> "sowings that have their plants, mean";
      case WAITING ->
          subject.isEmpty()
              ? "waiting in all, tray-days"
              : "waiting "
                  + TradeWords.stepOf(subject).map(TradeWords::step).orElse(subject)
                  + ", tray-days";
      case LOST ->
          subject.isEmpty()
              ? "lost in all"
              : "lost: " + TradeWords.lossOf(subject).map(TradeWords::shortLoss).orElse(subject);
      case MARGIN -> "margin";
    };
  }

  /** An outcome's name where its kind is said above. */
  static String shortName(Outcome outcome) {
    String subject = outcome.subject();
    return switch (outcome.kind()) {
      case WAITING ->
          TradeWords.stepOf(subject).map((RoomWait s) -> TradeWords.step(s)).orElse(subject);
      case LOST -> TradeWords.lossOf(subject).map(TradeWords::shortLoss).orElse(subject);
      case ON_TIME_OF_CROP -> subject;
      case ON_TIME, LATE, SOWINGS_MET, MARGIN -> name(outcome);
    };
  }
}
