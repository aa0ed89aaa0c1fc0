package propcap.report.bottleneck;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.Step;
import propcap.report.kit.Money;
import propcap.report.kit.PutJson;
import propcap.report.kit.RowCsv;
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
    PutJson json =
        new PutJson()
            .put("scenario", answer.scenario().name())
            .put("version", version)
            .put("seasons", answer.seasons())
            .put("seed", answer.settings().seed())
            .put("confidence", answer.confidence());
    Money.of(answer.scenario()).ifPresent(m -> json.put("currency", m.currency()));
    return json.put("intervals", answer.intervals())
        .put("verdict", words.verdict())
        .put("plan", new StairWords(answer).plan())
        .put("findings", PutJson.texts(words.findings()))
        .put("onTime", answer.onTime())
        .put("worths", PutJson.each(answer.worths(), BottlenecksFiles::worth))
        .put("steps", PutJson.each(answer.steps(), BottlenecksFiles::step))
        .text();
  }

  private static PutJson worth(Worth worth) {
    PutJson waiting = new PutJson();
    for (Step step : Step.values()) {
      if (step.ordinal() < worth.moreWaiting().size()) {
        waiting.put(step.word(), worth.moreWaiting().get(step.ordinal()));
      }
    }
    Trial fewer = worth.fewer();
    return size(new PutJson().put("place", worth.place().name()), worth.place())
        .put("more", trial(worth.more()))
        .put("fewer", fewer == null ? null : trial(fewer))
        .put("moreWaiting", waiting);
  }

  private static PutJson trial(Trial trial) {
    Comparison.Worth worth = trial.worth();
    return new PutJson()
        .put("spaces", trial.spaces())
        .put("onTime", trial.onTime())
        .put("plantsForEach", trial.plantsForEach())
        .put("margin", trial.margin())
        .put("pays", WorthWords.word(trial.pays()))
        .put("worth", worth == null ? null : WorthWords.worth(worth));
  }

  private static PutJson size(PutJson json, Capacity place) {
    json.put("kind", kind(place));
    return place.isHands()
        ? json.put("hoursPerDay", place.size())
        : json.put("placeSpaces", Math.round(place.size()));
  }

  private static String kind(Capacity of) {
    Place place = of.place();
    return place == null ? "hands" : place.kind().word();
  }

  private static PutJson step(Bottlenecks.Step step) {
    return trial(step.trial())
        .put("place", step.place().name())
        .put("spacesAdded", step.spacesAdded())
        .put("gainSoFar", step.gainSoFar());
  }

  /** A row for each place: differences of the whole tenth. */
  static String csv(Bottlenecks answer) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("place", "kind", "spaces"),
        trialNames("more"),
        trialNames("fewer"),
        Stream.of(Step.values())
            .flatMap(s -> RowCsv.differenceNames("more-wait-" + s.word()).stream())
            .toList());
    for (Worth worth : answer.worths()) {
      List<String> waiting = new ArrayList<>();
      for (Difference d : worth.moreWaiting()) {
        waiting.addAll(RowCsv.difference(d));
      }
      table.row(
          List.of(worth.place().name(), kind(worth.place()), RowCsv.number(worth.place().size())),
          trialFields(worth.more()),
          trialFields(worth.fewer()),
          waiting);
    }
    return table.text();
  }

  private static List<String> trialNames(String which) {
    List<String> names = new ArrayList<>(List.of(which + "-spaces"));
    names.addAll(RowCsv.differenceNames(which + "-on-time"));
    names.add(which + "-plants-for-each");
    names.addAll(RowCsv.differenceNames(which + "-margin"));
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
    List<String> fields = new ArrayList<>(List.of(RowCsv.whole(trial.spaces())));
    fields.addAll(RowCsv.difference(trial.onTime()));
    fields.add(RowCsv.number(trial.plantsForEach()));
    fields.addAll(RowCsv.difference(trial.margin()));
    fields.add(WorthWords.word(trial.pays()));
    fields.addAll(
        worth == null
            ? List.of("", "")
            : RowCsv.numbers(worth.netPresentValue(), worth.netPresentValueHalfWidth()));
    return fields;
  }

  /** A row for each step of the stair. */
  static String stepsCsv(Bottlenecks answer) {
    RowCsv table = new RowCsv();
    table.row(
        List.of("step", "place"),
        trialNames("step"),
        List.of("spaces-added"),
        RowCsv.differenceNames("gain-so-far"));
    for (int s = 0; s < answer.steps().size(); s++) {
      Bottlenecks.Step step = answer.steps().get(s);
      table.row(
          List.of(RowCsv.whole(s + 1L), step.place().name()),
          trialFields(step.trial()),
          List.of(RowCsv.whole(step.spacesAdded())),
          RowCsv.difference(step.gainSoFar()));
    }
    return table.text();
  }
}
