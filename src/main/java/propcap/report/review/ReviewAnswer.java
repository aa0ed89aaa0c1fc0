package propcap.report.review;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.report.kit.AnswerPage;
import propcap.report.kit.Dates;
import propcap.report.kit.Fact;
import propcap.report.kit.Head;
import propcap.report.kit.Json;
import propcap.report.kit.Lines;
import propcap.report.kit.PagedAnswer;
import propcap.report.kit.Part;
import propcap.report.kit.Words;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.review.Review;

/**
 * A season looked back upon.
 *
 * @param log name of the log's file
 * @param file name of the scenario's file
 */
public record ReviewAnswer(Review review, String log, String file) implements PagedAnswer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "review",
          "-review",
          "review.json",
          "scenario looks figures",
          "review.html review.csv review-figures.csv");

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    ReviewWords words = new ReviewWords(review);
    Lines lines = new Lines();
    List<String> forecasts = words.forecasts();
    lines.add(forecasts.get(0));
    forecasts.stream().skip(1).limit(1).forEach(lines::add);
    if (review.wrong().isEmpty()) {
      // The last forecast, which knew most.
      forecasts.stream().skip(Math.max(2, forecasts.size() - 1L)).forEach(lines::add);
    }
    words.figures().forEach(lines::add);
    words.mending(log, file).forEach(lines::add);
    return lines.endingWith(
        review.scenario().name()
            + ", up to "
            + Dates.day(review.scenario().today(), review.scenario().season())
            + Fact.run(review.seasons(), " of each forecast", review.settings().seed()));
  }

  private record Members(
      List<Review.ForecastCheck> looks,
      List<Review.Came> sowings,
      List<String> notOver,
      List<Review.Figure> figures,
      @Nullable Double byChance,
      List<String> verdicts) {}

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("review.html", page(version).html());
    files.put(
        KIND.file(),
        Json.text(
            Head.of(review.scenario(), version, review.seasons(), review.settings()),
            new Members(
                review.looks(),
                review.sowings(),
                review.notOver().stream().map(s -> s.id()).toList(),
                review.figures(),
                Double.isInfinite(review.byChance()) ? null : review.byChance(),
                verdicts())));
    files.put("review.csv", ReviewTables.sowings(review).csv(review.sowings()));
    files.put("review-figures.csv", ReviewTables.figures(review).csv(review.figures()));
    return files;
  }

  private List<String> verdicts() {
    ReviewWords words = new ReviewWords(review);
    List<String> told = new ArrayList<>(words.forecasts());
    told.addAll(words.figures());
    return told;
  }

  @Override
  public AnswerPage page(String version) {
    ReviewWords words = new ReviewWords(review);
    Part forecasts =
        new Part(
            "forecasts",
            "What was forecast, and what came",
            // The table has the others.
            words.forecasts().stream().limit(2).toList(),
            words.leftOut(),
            List.of(),
            List.of(
                ReviewTables.looks(review)
                    .sheet(
                        "How often the ranges held.",
                        "Of the sowings that were not over then. What one spring can hardly bring if"
                            + " all numbers are right is bold.",
                        review.looks().stream().filter(l -> l.sowings() > 0).toList()),
                ReviewTables.sowings(review)
                    .sheet(
                        "Plants on time, sowing by sowing.",
                        "Of the first forecast, one in the middle and the last; review.csv has all."
                            + " Below each its range; one that did not hold, and too few plants, are"
                            + " bold.",
                        review.sowings())));
    List<String> told = new ArrayList<>(words.figures());
    told.addAll(words.mending(log, file));
    Part figures =
        new Part(
            "figures",
            "The numbers, and what the log says of them",
            told,
            List.of(
                ReviewTables.figures(review)
                    .sheet(
                        "By crop, the farthest off first.",
                        "Of sowings all of whose trays are past it. What chance alone hardly makes"
                            + " is bold.",
                        review.figures())));
    return new AnswerPage(
        review.scenario().name(),
        "Looking back",
        Fact.of(
            review.scenario(),
            Words.count(review.seasons()) + " of each forecast",
            review.settings()),
        version,
        List.of(forecasts, figures),
        reading());
  }

  private static List<AnswerPage.Term> reading() {
    return List.of(
        new AnswerPage.Term(
            "The range of 8 springs of 10",
            "leaves out the lowest and the highest tenth of the simulated springs of that forecast."
                + " What came lies within it in 8 springs of 10, or more often where many springs have"
                + " the same number."),
        new AnswerPage.Term(
            "Usual",
            "is what 95 springs of 100 have if all numbers are right: so many sowings then come within their ranges. It is not as narrow"
                + " as for as many throws of a coin, since the sowings of one spring share its weather:"
                + " each simulated spring of the forecast was taken for the one that came."),
        new AnswerPage.Term(
            "A forecast of a later day",
            "was made anew from the log up to the morning of that day: stands that could not have been"
                + " counted by then are left out of it."),
        new AnswerPage.Term(
            "Assumed",
            "is the mean of the same trays in springs simulated from the crop list and the plan, in"
                + " this spring's weather if it is known: waiting for room is in it."),
        new AnswerPage.Term(
            "A standard error",
            "is how much the mean of these trays differs from spring to spring by luck. Of many"
                + " numbers some are always far off: bold is what is farther than the farthest of all is"
                + " in 19 of 20 springs of a farm whose numbers are right."));
  }
}
