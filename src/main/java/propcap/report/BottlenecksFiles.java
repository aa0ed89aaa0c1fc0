package propcap.report;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import propcap.farm.Place;
import propcap.farm.Step;
import propcap.study.Bottlenecks;
import propcap.study.Bottlenecks.Worth;
import propcap.study.Capacity;
import propcap.study.Difference;

/** What a little more of each place is worth, for other programs and for a spreadsheet. */
final class BottlenecksFiles {
  private BottlenecksFiles() {}

  static String json(Bottlenecks answer, String version) {
    BottlenecksWords words = new BottlenecksWords(answer);
    Json json =
        new Json()
            .put("scenario", answer.scenario().name())
            .put("version", version)
            .put("seasons", answer.seasons())
            .put("seed", answer.settings().seed())
            .put("confidence", answer.confidence());
    Money.of(answer.scenario()).ifPresent(m -> json.put("currency", m.currency()));
    return json.put("verdict", words.verdict())
        .put("plan", words.plan())
        .put("onTime", answer.onTime())
        .put("worths", Json.each(answer.worths(), BottlenecksFiles::worth))
        .put("steps", Json.each(answer.steps(), BottlenecksFiles::step))
        .text();
  }

  private static Json worth(Worth worth) {
    Json waiting = new Json();
    for (Step step : Step.values()) {
      if (step.ordinal() < worth.moreWaiting().size()) {
        waiting.put(step.word(), worth.moreWaiting().get(step.ordinal()));
      }
    }
    Json json = new Json().put("place", worth.place().name());
    return size(json, worth.place())
        .put("spaces", worth.spaces())
        .put("plantsPerSpaceMore", worth.plantsPerSpaceMore())
        .put("plantsPerSpaceLess", worth.plantsPerSpaceLess())
        .put("moreOnTime", worth.moreOnTime())
        .put("lessOnTime", worth.lessOnTime())
        .put("moreMargin", worth.moreMargin())
        .put("lessMargin", worth.lessMargin())
        .put("moreWaiting", waiting);
  }

  private static Json size(Json json, Capacity place) {
    json.put("kind", kind(place));
    return place.isHands()
        ? json.put("hoursPerDay", place.size())
        : json.put("placeSpaces", Math.round(place.size()));
  }

  private static String kind(Capacity of) {
    Place place = of.place();
    return place == null ? "hands" : place.kind().word();
  }

  private static Json step(Bottlenecks.Step step) {
    return new Json()
        .put("place", step.place().name())
        .put("spaces", step.spaces())
        .put("spacesBought", step.spacesBought())
        .put("gain", step.gain())
        .put("gainSoFar", step.gainSoFar())
        .put("margin", step.margin());
  }

  /** A row for each place: differences of the whole tenth. */
  static String csv(Bottlenecks answer) {
    Csv table = new Csv();
    table.row(
        List.of("place", "kind", "spaces", "tenth", "plants-per-space-more"),
        List.of("plants-per-space-less"),
        Csv.differenceNames("more-on-time"),
        Csv.differenceNames("less-on-time"),
        Csv.differenceNames("more-margin"),
        Csv.differenceNames("less-margin"),
        Stream.of(Step.values())
            .flatMap(s -> Csv.differenceNames("more-wait-" + s.word()).stream())
            .toList());
    for (Worth worth : answer.worths()) {
      List<String> waiting = new ArrayList<>();
      for (Difference d : worth.moreWaiting()) {
        waiting.addAll(Csv.difference(d));
      }
      table.row(
          List.of(worth.place().name(), kind(worth.place())),
          Csv.numbers(worth.place().size(), worth.spaces()),
          Csv.numbers(worth.plantsPerSpaceMore(), worth.plantsPerSpaceLess()),
          Csv.difference(worth.moreOnTime()),
          Csv.difference(worth.lessOnTime()),
          Csv.difference(worth.moreMargin()),
          Csv.difference(worth.lessMargin()),
          waiting);
    }
    return table.text();
  }

  /** A row for each step of the stair. */
  static String stepsCsv(Bottlenecks answer) {
    Csv table = new Csv();
    table.row(
        List.of("step", "place", "spaces", "spaces-bought"),
        Csv.differenceNames("gain"),
        Csv.differenceNames("gain-so-far"),
        Csv.differenceNames("margin"));
    for (int s = 0; s < answer.steps().size(); s++) {
      Bottlenecks.Step step = answer.steps().get(s);
      table.row(
          List.of(Csv.whole(s + 1L), step.place().name()),
          Csv.wholes(step.spaces(), step.spacesBought()),
          Csv.difference(step.gain()),
          Csv.difference(step.gainSoFar()),
          Csv.difference(step.margin()));
    }
    return table.text();
  }
}
