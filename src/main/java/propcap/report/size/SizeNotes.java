package propcap.report.size;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import propcap.farm.RoomWait;
import propcap.report.kit.LossWords;
import propcap.report.kit.TradeWords;
import propcap.report.kit.WaitingCauses;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.size.Goal.Measure;
import propcap.study.size.Sizing;
import propcap.study.size.Sizing.Candidate;
import propcap.study.size.Sizing.Found;

/** What must be known beside the answer to how large a place must be, in words. */
record SizeNotes(SizeWords words) {

  static SizeNotes of(Sizing sizing) {
    return new SizeNotes(SizeWords.of(sizing));
  }

  private Sizing sizing() {
    return words.sizing();
  }

  private boolean isMargin() {
    return sizing().goal().measure() == Measure.MARGIN;
  }

  /** All that there is to say, in the order in which it is said. */
  List<String> all() {
    List<String> all = new ArrayList<>();
    holdsBack().ifPresent(all::add);
    all.add(guarantee());
    all.addAll(SizeChange.of(sizing()));
    atTheEdge().ifPresent(all::add);
    moreDoesHarm().ifPresent(all::add);
    return all;
  }

  /** What may be relied on: what was asked, or what was reached when the springs ran out. */
  String guarantee() {
    String asked = words.distance(sizing().indifference());
    return "With "
        + Words.given(sizing().confidence())
        + " confidence this is right, or within "
        + (sizing().isDecided() ? asked : words.reached())
        + (isMargin() ? " of the best" : " of the goal")
        + (sizing().isDecided()
            ? "."
            : ", not within " + asked + " as asked; more springs would tell more.");
  }

  /** That the answer is an end of what was tried, beyond which there may be a better one. */
  Optional<String> atTheEdge() {
    List<String> edges = new ArrayList<>();
    for (int p = 0; p < sizing().places().size(); p++) {
      int place = p;
      sizing().found().flatMap(answer -> atTheEdge(answer, place)).ifPresent(edges::add);
    }
    return edges.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", edges));
  }

  private Optional<String> atTheEdge(Candidate answer, int place) {
    int size = answer.spaces().get(place);
    List<Integer> tried =
        sizing().candidates().stream().map(c -> c.spaces().get(place)).distinct().sorted().toList();
    boolean smallest = tried.size() > 1 && size > 0 && size == tried.get(0);
    boolean largest = tried.size() > 1 && size == tried.get(tried.size() - 1);
    String it =
        sizing().places().size() == 1 ? "It is" : "Of " + sizing().places().get(place) + " it is";
    if (isMargin() && largest) {
      return Optional.of(it + " the largest tried: a larger one may be better still.");
    }
    return smallest
        ? Optional.of(
            it
                + " the smallest tried: a smaller one may "
                + (isMargin() ? "be better still." : "do as well."))
        : Optional.empty();
  }

  /** Larger sizes of one place that fail although the answer holds: more room does harm there. */
  Optional<String> moreDoesHarm() {
    if (sizing().places().size() > 1 || isMargin() || sizing().found().isEmpty()) {
      return Optional.empty();
    }
    int enough = sizing().found().get().spaces().get(0);
    List<String> failing =
        sizing().candidates().stream()
            .filter(c -> c.found() == Found.FAILS && c.spaces().get(0) > enough)
            .map(c -> Words.count(c.spaces().get(0)))
            .toList();
    return failing.isEmpty()
        ? Optional.empty()
        : Optional.of(
            "More room is not always better: with "
                + Words.list(failing)
                + " spaces the goal fails, for what comes out of a larger place jams the next.");
  }

  /** What holds the goal back where no size reaches it. */
  Optional<String> holdsBack() {
    return sizing().fallingShort().map(this::holdsBack);
  }

  private String holdsBack(Forecast forecast) {
    MatchedWords matched = MatchedWords.of(sizing());
    String house = WaitingCauses.of(forecast).verdict(forecast);
    if (matched.isAll()) {
      return "What holds it back there: " + house + " " + LossWords.losses(forecast) + ".";
    }
    List<SowingForecast> sowings =
        sizing().sowings().stream().map(s -> forecast.sowings().get(s)).toList();
    return "What holds "
        + matched.together()
        + " back there: "
        + waiting(sowings)
        + "; "
        + plants(sowings)
        + ". In the whole house: "
        + house
        + " That need not be what holds "
        + (matched.isOne() ? "it" : "these")
        + " back.";
  }

  /** At which step their own trays wait most. */
  private static String waiting(List<SowingForecast> sowings) {
    double all = Stream.of(RoomWait.values()).mapToDouble(step -> waited(sowings, step)).sum();
    if (all < WaitingCauses.NOTHING) {
      return "these trays find room at once";
    }
    RoomWait most =
        Stream.of(RoomWait.values())
            .max(Comparator.comparingDouble(step -> waited(sowings, step)))
            .orElseThrow();
    return "of %s a spring that these trays wait for room, %s are waited %s"
        .formatted(
            Words.plural(all, "tray-day"),
            Words.amount(waited(sowings, most)),
            TradeWords.step(most));
  }

  private static double waited(List<SowingForecast> sowings, RoomWait step) {
    return sowings.stream().mapToDouble(s -> s.waiting().getOrDefault(step, 0.0)).sum();
  }

  /** What becomes of their cells. */
  private static String plants(List<SowingForecast> sowings) {
    return "of %s cells sown %s are plants on time and %s late, where %s are needed"
        .formatted(
            Words.count(sowings.stream().mapToDouble(s -> s.cellsSown().mean()).sum()),
            Words.count(sowings.stream().mapToDouble(s -> s.onTime().mean()).sum()),
            Words.count(sowings.stream().mapToDouble(s -> s.late().mean()).sum()),
            Words.count(sowings.stream().mapToDouble(s -> s.sowing().plantsNeeded()).sum()));
  }
}
