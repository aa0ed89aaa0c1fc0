package propcap.report.bottleneck;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.RoomWait;
import propcap.report.kit.Head;
import propcap.report.kit.Json;
import propcap.report.kit.Money;
import propcap.report.kit.Sheet.Cell;
import propcap.report.kit.Table;
import propcap.report.kit.TradeWords;
import propcap.report.kit.Words;
import propcap.report.kit.WorthTable;
import propcap.study.bottleneck.Bottlenecks;
import propcap.study.bottleneck.Bottlenecks.Trial;
import propcap.study.bottleneck.Bottlenecks.Worth;
import propcap.study.money.Investment;
import propcap.study.money.Investment.Pays;
import propcap.study.statistics.Difference;

/** What a little more or less of each place brings, and what helps step by step, as tables. */
record BottlenecksTables(Bottlenecks answer) {
  private static final Table<Trial> TRIAL =
      new Table<Trial>()
          .file("spaces", Trial::spaces)
          .difference("on-time", Trial::onTime)
          .file("plants-for-each", Trial::plantsForEach)
          .difference("margin", Trial::margin)
          .file("pays", Trial::pays)
          .csv("net-present-value", t -> t.worth() == null ? null : t.worth().netPresentValue())
          .csv(
              "net-present-value-half-width",
              t -> t.worth() == null ? null : t.worth().netPresentValueHalfWidth())
          .file("safe", Trial::safe)
          .json("worth", t -> WorthTable.WORTH.object(t.worth()));

  String json(String version) {
    Table<BottlenecksWords> file =
        new Table<BottlenecksWords>()
            .json("confidence", w -> answer.confidence())
            .json("currency", w -> Money.currency(answer.scenario()))
            .json("intervals", w -> answer.intervals())
            .json("verdict", BottlenecksWords::verdict)
            .json("plan", w -> new StairWords(answer).plan())
            .json("findings", BottlenecksWords::findings)
            .json("onTime", w -> answer.onTime())
            .json("safe", w -> answer.safe())
            .json("worths", w -> worths().objects(answer.worths()))
            .json("steps", w -> steps().objects(answer.steps()));
    return Json.text(
        Head.of(answer.scenario(), version, answer.seasons(), answer.settings()),
        file.members(new BottlenecksWords(answer)));
  }

  /** A row for each place: differences of the whole tenth. */
  Table<Worth> worths() {
    Optional<Money> money = Money.of(answer.scenario());
    String aSeason = money.map(Money::currency).orElse("") + " a season";
    boolean isAnyPriced = answer.worths().stream().anyMatch(w -> w.more().worth() != null);
    Table<Worth> table =
        new Table<Worth>("Place", w -> w.place().name(), w -> kind(w.place().place()))
            .file("place", w -> w.place().name())
            .file("kind", w -> word(w.place().place()))
            .csv("spaces", w -> w.place().size())
            .json(
                "hoursPerDay", w -> Optional.of(w.place().size()).filter(s -> w.place().isHands()))
            .json(
                "placeSpaces",
                w -> Optional.of(Math.round(w.place().size())).filter(s -> !w.place().isHands()))
            .cell(
                "Tenth",
                "spaces",
                w ->
                    Cell.of(Words.count(w.more().spaces()), "of " + Words.amount(w.place().size())))
            .file("more", TRIAL, Worth::more)
            .cell("So many more", "plants a spring", w -> plants(w.more()))
            .file("fewer", TRIAL, Worth::fewer)
            .cell("So many fewer", "plants a spring", w -> plants(w.fewer()))
            .when(
                money.isPresent(),
                t ->
                    t.cell("So many more", aSeason, w -> Cell.money(w.more().margin()))
                        .cell("So many fewer", aSeason, w -> margin(w.fewer())))
            .when(
                money.isPresent() && isAnyPriced,
                t ->
                    t.cell(
                        "Net present value",
                        money.orElseThrow().currency() + ", more",
                        w -> value(w.more().worth())))
            .words("Holds up", w -> BottlenecksWords.holdsUp(w).orElse("nothing clearly"))
            .json("moreWaiting", BottlenecksTables::waiting);
    for (RoomWait step : RoomWait.values()) {
      table.csv("more-wait-" + step.word(), Table.DIFFERENCE, w -> waiting(w).get(step));
    }
    return table;
  }

  private static Map<RoomWait, Difference> waiting(Worth worth) {
    Map<RoomWait, Difference> waiting = new LinkedHashMap<>();
    for (int s = 0; s < worth.moreWaiting().size(); s++) {
      waiting.put(RoomWait.values()[s], worth.moreWaiting().get(s));
    }
    return waiting;
  }

  private static String word(@Nullable Place place) {
    return place == null ? "hands" : place.kind().word();
  }

  private static String kind(@Nullable Place place) {
    return place == null ? "hours a day" : TradeWords.kind(place.kind());
  }

  private static Cell plants(@Nullable Trial trial) {
    if (trial == null) {
      return Cell.NONE;
    }
    return Cell.of(
            Words.difference(trial.onTime()),
            trial.spaces() == 1 ? "" : Words.signedAmount(trial.plantsForEach()) + " for each")
        .strongIf(trial.onTime().isClear());
  }

  private static Cell margin(@Nullable Trial trial) {
    return trial == null ? Cell.NONE : Cell.money(trial.margin());
  }

  private static Cell value(Investment.@Nullable Worth value) {
    return value == null || !value.isTold()
        ? Cell.NONE
        : Cell.of(Money.bare(value.netPresentValue(), value.netPresentValueHalfWidth()))
            .strongIf(value.pays() != Pays.NOT_TOLD);
  }

  /** A row for each step of the stair. */
  Table<Bottlenecks.Step> steps() {
    Optional<Money> money = Money.of(answer.scenario());
    return new Table<Bottlenecks.Step>("Step", s -> Integer.toString(number(s)))
        .csv("step", this::number)
        .csv("place", s -> s.place().name())
        .words("Place", s -> s.place().name())
        .csv("step", TRIAL, Bottlenecks.Step::trial)
        .json(TRIAL, Bottlenecks.Step::trial)
        .json("place", s -> s.place().name())
        .number("Spaces", "of this step", s -> Words.count(s.trial().spaces()))
        .file("spaces-added", Bottlenecks.Step::spacesAdded)
        .number("Spaces", "so far", s -> Words.count(s.spacesAdded()))
        .cell("Plants", "of this step", s -> Cell.of(s.trial().onTime()))
        .difference("gain-so-far", Bottlenecks.Step::gainSoFar)
        .cell("Plants", "so far", s -> Cell.of(s.gainSoFar()))
        .when(
            money.isPresent(),
            t ->
                t.cell(
                        "Margin",
                        money.orElseThrow().currency() + ", this step",
                        s -> Cell.money(s.trial().margin()))
                    .words("Pays", s -> pays(s.trial().pays())));
  }

  private int number(Bottlenecks.Step step) {
    return answer.steps().indexOf(step) + 1;
  }

  private static String pays(Pays pays) {
    return switch (pays) {
      case YES -> "yes";
      case NO -> "no";
      case NOT_TOLD -> "not told";
      case NOT_KNOWN -> "its cost is not known";
    };
  }
}
