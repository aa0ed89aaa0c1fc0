package propcap.report.bottleneck;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.Step;
import propcap.report.kit.Csv;
import propcap.report.kit.Json;
import propcap.report.kit.Money;
import propcap.report.kit.WorthWords;
import propcap.study.Bottlenecks;
import propcap.study.Bottlenecks.Trial;
import propcap.study.Bottlenecks.Worth;
import propcap.study.Capacity;
import propcap.study.Comparison;
import propcap.study.Difference;

/** What a little more or less of each place brings, for other programs and for a spreadsheet. */
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
    return json.put("intervals", answer.intervals())
        .put("verdict", words.verdict())
        .put("plan", new StairWords(answer).plan())
        .put("findings", Json.texts(words.findings()))
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
    Trial fewer = worth.fewer();
    return size(new Json().put("place", worth.place().name()), worth.place())
        .put("more", trial(worth.more()))
        .put("fewer", fewer == null ? null : trial(fewer))
        .put("moreWaiting", waiting);
  }

  private static Json trial(Trial trial) {
    Comparison.Worth worth = trial.worth();
    return new Json()
        .put("spaces", trial.spaces())
        .put("onTime", trial.onTime())
        .put("plantsForEach", trial.plantsForEach())
        .put("margin", trial.margin())
        .put("pays", trial.pays().word())
        .put("worth", worth == null ? null : WorthWords.worth(worth));
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
    return trial(step.trial())
        .put("place", step.place().name())
        .put("spacesAdded", step.spacesAdded())
        .put("gainSoFar", step.gainSoFar());
  }

  /** A row for each place: differences of the whole tenth. */
  static String csv(Bottlenecks answer) {
    Csv table = new Csv();
    table.row(
        List.of("place", "kind", "spaces"),
        trialNames("more"),
        trialNames("fewer"),
        Stream.of(Step.values())
            .flatMap(s -> Csv.differenceNames("more-wait-" + s.word()).stream())
            .toList());
    for (Worth worth : answer.worths()) {
      List<String> waiting = new ArrayList<>();
      for (Difference d : worth.moreWaiting()) {
        waiting.addAll(Csv.difference(d));
      }
      table.row(
          List.of(worth.place().name(), kind(worth.place()), Csv.number(worth.place().size())),
          trialFields(worth.more()),
          trialFields(worth.fewer()),
          waiting);
    }
    return table.text();
  }

  private static List<String> trialNames(String which) {
    List<String> names = new ArrayList<>(List.of(which + "-spaces"));
    names.addAll(Csv.differenceNames(which + "-on-time"));
    names.add(which + "-plants-for-each");
    names.addAll(Csv.differenceNames(which + "-margin"));
    names.addAll(
        List.of(
            which + "-pays",
            which + "-net-present-value",
            which + "-net-present-value-half-width"));
    return names;
  }

  /** As many empty fields where nothing was tried. */
  private static List<String> trialFields(@Nullable Trial trial) {
    if (trial == null) {
      return Collections.nCopies(trialNames("").size(), "");
    }
    Comparison.Worth worth = trial.worth();
    List<String> fields = new ArrayList<>(List.of(Csv.whole(trial.spaces())));
    fields.addAll(Csv.difference(trial.onTime()));
    fields.add(Csv.number(trial.plantsForEach()));
    fields.addAll(Csv.difference(trial.margin()));
    fields.add(trial.pays().word());
    fields.addAll(
        worth == null
            ? List.of("", "")
            : Csv.numbers(worth.netPresentValue(), worth.netPresentValueHalfWidth()));
    return fields;
  }

  /** A row for each step of the stair. */
  static String stepsCsv(Bottlenecks answer) {
    Csv table = new Csv();
    table.row(
        List.of("step", "place"),
        trialNames("step"),
        List.of("spaces-added"),
        Csv.differenceNames("gain-so-far"));
    for (int s = 0; s < answer.steps().size(); s++) {
      Bottlenecks.Step step = answer.steps().get(s);
      table.row(
          List.of(Csv.whole(s + 1L), step.place().name()),
          trialFields(step.trial()),
          List.of(Csv.whole(step.spacesAdded())),
          Csv.difference(step.gainSoFar()));
    }
    return table.text();
  }
}
