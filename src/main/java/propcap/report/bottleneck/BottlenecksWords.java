package propcap.report.bottleneck;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import propcap.farm.RoomWait;
import propcap.report.kit.ChangeWords;
import propcap.report.kit.TradeWords;
import propcap.report.kit.Words;
import propcap.study.Capacity;
import propcap.study.bottleneck.Bottlenecks;
import propcap.study.bottleneck.Bottlenecks.Trial;
import propcap.study.bottleneck.Bottlenecks.Worth;
import propcap.study.forecast.WhatMatters;
import propcap.study.money.Investment.Pays;
import propcap.study.statistics.Difference;

/**
 * What a tenth more and a tenth less of each place brings, in words. It says what was tried: of one
 * space nothing is said unless one was.
 */
record BottlenecksWords(Bottlenecks answer) {

  /** Where more helps most, space for space. */
  String verdict() {
    Optional<Worth> best =
        answer.worths().stream().filter(w -> w.more().onTime().isMore()).findFirst();
    if (best.isEmpty()) {
      return "No tenth more of any one place clearly gains plants on time.";
    }
    Worth most = best.get();
    return (most.place().isHands() ? "Hands help most: " : most.place().name() + " helps most: ")
        + more(most.place(), most.more().spaces())
        + (most.more().spaces() == 1 ? " brings " : " bring ")
        + plants(most.more())
        + (WhatMatters.of(most.more().onTime(), answer.scenario()) == WhatMatters.NONE
            ? ", by itself no difference that matters"
            : "")
        + "; "
        + safe(most.more())
        + "."
        + holdsUp(most).map(h -> " That relieves what waits " + h + ".").orElse("")
        + notToldApart(most);
  }

  private String safe(Trial with) {
    return "%s of %s safe with %s, as it is %s"
        .formatted(
            with.safe(),
            Words.plural(answer.scenario().sowings().size(), "sowing"),
            with.spaces() == 1 ? "it" : "them",
            answer.safe());
  }

  /** Such as {@code +305 ± 60 plants on time a spring, 15 for each of them}. */
  private static String plants(Trial trial) {
    return Words.difference(trial.onTime())
        + " plants on time a spring"
        + (trial.spaces() == 1
            ? ""
            : ", " + Words.amount(trial.plantsForEach()) + " for each of them");
  }

  /** Places that may bring as much by the space: all intervals of the answer hold together. */
  private String notToldApart(Worth most) {
    double least = most.more().onTime().low() / most.more().spaces();
    List<String> names =
        answer.worths().stream()
            .filter(w -> !w.equals(most) && !w.place().isHands() && !most.place().isHands())
            .filter(w -> w.more().onTime().isMore())
            .filter(w -> w.more().onTime().high() / w.more().spaces() > least)
            .map(w -> w.place().name())
            .toList();
    return names.isEmpty()
        ? ""
        : " By the space %s %s not told apart from it."
            .formatted(Words.list(names), names.size() == 1 ? "is" : "are");
  }

  /** Such as {@code 20 more spaces} or, of hands, {@code one more hour a day}. */
  static String more(Capacity of, int count) {
    return of.isHands()
        ? (count == 1 ? "one more hour" : Words.count(count) + " more hours") + " a day"
        : ChangeWords.more(count);
  }

  /** Such as {@code 6 fewer spaces} or {@code one hour a day fewer}. */
  private static String fewer(Capacity of, int count) {
    return of.isHands()
        ? (count == 1 ? "one hour" : Words.count(count) + " hours") + " a day fewer"
        : count == 1 ? "one space fewer" : Words.count(count) + " fewer spaces";
  }

  /** Such as {@code 12 spaces}, or {@code 2 hours a day} of hands. */
  static String spaces(Capacity of, int count) {
    return of.isHands() ? Words.plural(count, "hour") + " a day" : Words.plural(count, "space");
  }

  /** What is found beside where more helps most: what not to buy, where less helps, more harms. */
  List<String> findings() {
    List<String> findings = new ArrayList<>();
    new BottleneckOrders(answer).others().ifPresent(findings::add);
    answer.worths().forEach(w -> doesNotPay(w).ifPresent(findings::add));
    answer.worths().forEach(w -> lessHelps(w).ifPresent(findings::add));
    answer.worths().forEach(w -> moreHarms(w).ifPresent(findings::add));
    return findings;
  }

  /** More of it clearly brings plants, and clearly costs more than it brings. */
  private Optional<String> doesNotPay(Worth worth) {
    Trial more = worth.more();
    if (!more.onTime().isMore() || more.pays() != Pays.NO) {
      return Optional.empty();
    }
    String what =
        worth.place().isHands()
            ? "Do not take on " + more(worth.place(), more.spaces())
            : "Do not buy " + more(worth.place(), more.spaces()) + " of " + worth.place().name();
    return Optional.of(
        "%s: %s%s plants on time a spring, but %s."
            .formatted(
                what,
                more.spaces() == 1 ? "it brings " : "they bring ",
                Words.difference(more.onTime()),
                MoneyWords.of(answer).against(more)));
  }

  private Optional<String> lessHelps(Worth worth) {
    Trial fewer = worth.fewer();
    if (fewer == null) {
      return Optional.empty();
    }
    Difference margin = fewer.margin();
    boolean isGain = margin != null && WhatMatters.isGain(margin, answer.scenario());
    boolean isMore =
        fewer.onTime().isMore()
            && WhatMatters.of(fewer.onTime(), answer.scenario()) == WhatMatters.MATTERS;
    if (!isMore && !(isGain && !fewer.onTime().isLess())) {
      return Optional.empty();
    }
    return Optional.of(
        "Less of "
            + worth.place().name()
            + " helps: "
            + fewer(worth.place(), fewer.spaces())
            + (fewer.spaces() == 1 ? " brings " : " bring ")
            + Words.difference(fewer.onTime())
            + " plants on time a spring"
            + (margin == null ? "" : " and " + MoneyWords.of(answer).margin(margin))
            + ".");
  }

  private Optional<String> moreHarms(Worth worth) {
    Trial more = worth.more();
    return more.onTime().isLess()
            && WhatMatters.of(more.onTime(), answer.scenario()) == WhatMatters.MATTERS
        ? Optional.of(
            "More of "
                + worth.place().name()
                + " loses plants: "
                + more(worth.place(), more.spaces())
                + (more.spaces() == 1 ? " brings " : " bring ")
                + Words.difference(more.onTime())
                + " a spring.")
        : Optional.empty();
  }

  /** Whether hours are among what was tried. */
  boolean withHands() {
    return answer.worths().stream().anyMatch(w -> w.place().isHands());
  }

  /** Steps that clearly wait less with more of a place: what the place holds up. */
  static Optional<String> holdsUp(Worth worth) {
    List<String> steps = new ArrayList<>();
    for (int s = 0; s < worth.moreWaiting().size(); s++) {
      Difference waiting = worth.moreWaiting().get(s);
      if (waiting.isLess()) {
        steps.add(
            "%s (%s tray-days)"
                .formatted(TradeWords.step(RoomWait.values()[s]), Words.difference(waiting)));
      }
    }
    return steps.isEmpty() ? Optional.empty() : Optional.of(Words.list(steps));
  }
}
