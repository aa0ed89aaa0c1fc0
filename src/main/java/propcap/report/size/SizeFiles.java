package propcap.report.size;

import java.util.List;
import java.util.stream.IntStream;
import propcap.report.kit.Json;
import propcap.report.kit.Table;
import propcap.report.kit.WorthTable;
import propcap.study.compare.Comparison;
import propcap.study.size.FurnishingList;
import propcap.study.size.Goal;
import propcap.study.size.Sizing;
import propcap.study.size.Sizing.Candidate;

/** How large a place must be, for other programs and for a spreadsheet. */
final class SizeFiles {
  /** A row for each thing to order, its amount a bare number. */
  static final Table<FurnishingList.Line> ORDER =
      new Table<FurnishingList.Line>("What", l -> l.place() + ": " + l.what())
          .file("place", FurnishingList.Line::place)
          .file("what", FurnishingList.Line::what)
          .file("amount", FurnishingList.Line::amount)
          .file("unit", FurnishingList.Line::unit)
          .number("Amount", "", FurnishingList.Line::shown);

  private static final Table<Comparison> CHANGE =
      new Table<Comparison>()
          .json("onTime", c -> c.total(Comparison.Kind.ON_TIME).differences().get(0))
          .json("safe", c -> c.safe().get(1))
          .json("safeAsItIs", c -> c.safe().get(0))
          .json(
              "worth",
              c ->
                  c.investments().isEmpty()
                      ? null
                      : WorthTable.WORTH.object(c.investments().get(0).worth()));

  private SizeFiles() {}

  private record Question(
      String scenario,
      String version,
      long seed,
      List<String> places,
      Goal goal,
      String match,
      double indifference) {}

  static String json(Sizing sizing, FurnishingList order, String version) {
    SizeWords words = SizeWords.of(sizing);
    Table<Candidate> candidates = candidates(sizing);
    Table<Sizing> told =
        new Table<Sizing>()
            .json("confidence", Sizing::confidence)
            .json("guaranteed", Sizing::isDecided)
            .json("reached", Sizing::reached)
            .json("seasonsRun", Sizing::seasonsRun)
            .json("most", Sizing::most)
            .json("currency", s -> words.money().map(m -> m.currency()))
            .json("verdict", SizeVerdict::of)
            .json("guarantee", s -> SizeNotes.of(s).guarantee())
            .json("answer", s -> candidates.object(s.answer()))
            .json("change", s -> s.changes().map(CHANGE::object))
            .json("holdsBack", s -> new SizeNotes(words).holdsBack().orElse(""))
            .json("candidates", s -> candidates.objects(s.candidates()))
            .json("order", s -> ORDER.objects(order.lines()))
            .json("arithmetic", s -> order.arithmetic());
    return Json.text(
        new Question(
            sizing.scenario().name(),
            version,
            sizing.settings().seed(),
            sizing.places(),
            sizing.goal(),
            sizing.match(),
            sizing.indifference()),
        told.members(sizing));
  }

  /** A row for each size or pair of sizes; a yearly cost only where places have a cost. */
  static Table<Candidate> candidates(Sizing sizing) {
    SizeWords words = SizeWords.of(sizing);
    Table<Candidate> table = new Table<Candidate>().json("spaces", Candidate::spaces);
    IntStream.range(0, sizing.places().size())
        .forEach(
            p ->
                table.csv(
                    words.countedIn(p) + " of " + sizing.places().get(p), c -> c.spaces().get(p)));
    return table
        .when(
            sizing.places().size() > 1 && !words.withHands(),
            t -> t.csv("spaces-in-all", c -> c.spaces().stream().mapToInt(s -> s).sum()))
        .file("seasons", Candidate::seasons)
        .file("mean", Candidate::mean)
        .file("low", Candidate::low)
        .file("high", Candidate::high)
        .file("found", Candidate::found)
        .file("yearly-cost", c -> words.costIsMoney() ? c.yearlyCost() : null)
        .csv("is-answer", c -> c.equals(sizing.answer()) ? "yes" : "no");
  }
}
