package propcap.report.size;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.Csv;
import propcap.report.kit.Json;
import propcap.study.OrderList;
import propcap.study.Sizing;
import propcap.study.Sizing.Candidate;

/** How large a place must be, for other programs and for a spreadsheet. */
final class SizeFiles {
  private SizeFiles() {}

  static String json(Sizing sizing, OrderList order, String version) {
    SizeWords words = SizeWords.of(sizing);
    Json json =
        new Json()
            .put("scenario", sizing.scenario().name())
            .put("version", version)
            .put("seed", sizing.settings().seed())
            .put("places", Json.texts(sizing.places()))
            .put(
                "goal",
                new Json()
                    .put("measure", sizing.goal().measure().word())
                    .put("least", sizing.goal().least()))
            .put("match", sizing.match())
            .put("indifference", sizing.indifference())
            .put("confidence", sizing.confidence())
            .put("guaranteed", sizing.isDecided())
            .put("reached", sizing.reached())
            .put("seasonsRun", sizing.seasonsRun())
            .put("most", sizing.most());
    words.money().ifPresent(m -> json.put("currency", m.currency()));
    Candidate answer = sizing.answer();
    return json.put("verdict", SizeVerdict.of(sizing))
        .put("guarantee", SizeNotes.of(sizing).guarantee())
        .put("answer", answer == null ? null : candidate(answer, words))
        .put("holdsBack", new SizeNotes(words).holdsBack().orElse(""))
        .put("candidates", Json.each(sizing.candidates(), c -> candidate(c, words)))
        .put("order", Json.each(order.lines(), SizeFiles::line))
        .put("arithmetic", Json.texts(order.arithmetic()))
        .text();
  }

  private static Json candidate(Candidate c, SizeWords words) {
    @Nullable Double cost = words.costIsMoney() ? Double.valueOf(c.yearlyCost()) : null;
    return new Json()
        .put("spaces", Json.wholes(c.spaces()))
        .put("seasons", c.seasons())
        .put("mean", c.mean())
        .put("low", c.low())
        .put("high", c.high())
        .put("found", c.found().word())
        .put("yearlyCost", cost);
  }

  private static Json line(OrderList.Line line) {
    return new Json()
        .put("place", line.place())
        .put("what", line.what())
        .put("amount", line.amount())
        .put("unit", line.unit());
  }

  /** A row for each size or pair of sizes; a yearly cost only where places have a cost. */
  static String csv(Sizing sizing) {
    Csv table = new Csv();
    List<String> names = new ArrayList<>();
    SizeWords words = SizeWords.of(sizing);
    for (int p = 0; p < sizing.places().size(); p++) {
      names.add(words.countedIn(p) + " of " + sizing.places().get(p));
    }
    boolean inAll = sizing.places().size() > 1 && !words.withHands();
    table.row(
        names,
        inAll ? List.of("spaces-in-all") : List.of(),
        List.of("seasons", "mean", "low", "high", "found", "yearly-cost", "is-answer"));
    for (Candidate c : sizing.candidates()) {
      table.row(
          c.spaces().stream().map(s -> Csv.whole(s)).toList(),
          inAll ? Csv.wholes(c.spaces().stream().mapToLong(s -> s).sum()) : List.of(),
          Csv.wholes(c.seasons()),
          Csv.numbers(c.mean(), c.low(), c.high()),
          List.of(c.found().word()),
          words.costIsMoney() ? Csv.numbers(c.yearlyCost()) : List.of(""),
          List.of(c.equals(sizing.answer()) ? "yes" : "no"));
    }
    return table.text();
  }

  /** A row for each thing to order, its amount a bare number. */
  static String orderCsv(OrderList order) {
    Csv table = new Csv();
    table.row(List.of("place", "what", "amount", "unit"));
    order
        .lines()
        .forEach(l -> table.row(List.of(l.place(), l.what(), Csv.number(l.amount()), l.unit())));
    return table.text();
  }
}
