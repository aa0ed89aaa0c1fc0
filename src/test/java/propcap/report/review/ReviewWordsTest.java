package propcap.report.review;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.TinyFarm;
import propcap.study.RunSettings;
import propcap.study.review.LogFigure;
import propcap.study.review.Review;
import propcap.study.review.Review.Came;
import propcap.study.review.Review.Figure;
import propcap.study.review.Review.ForecastCheck;
import propcap.study.review.Review.Range;

/** A look back in the terminal's words. */
class ReviewWordsTest {
  private static ReviewAnswer answer(ForecastCheck winter, Figure... figures) {
    return answer(winter, 4, figures);
  }

  private static ReviewAnswer answer(ForecastCheck winter, double byChance, Figure... figures) {
    Scenario farm = TinyFarm.make();
    Scenario known =
        farm.withSoFar(new SoFar(farm.season().end().plusDays(1), List.of(), List.of()));
    Review review =
        new Review(
            known,
            new RunSettings(1, 200, null, 1),
            200,
            List.of(winter, new ForecastCheck(LocalDate.of(2027, 4, 1), 30, 24, 24, 20, 28)),
            List.of(),
            List.of(),
            List.of(figures),
            byChance);
    return new ReviewAnswer(review, "log.csv", "scenario.yaml");
  }

  private static ForecastCheck winter(double inside) {
    return new ForecastCheck(TinyFarm.make().season().start(), 50, inside, 41, 34, 46);
  }

  private static Figure figure(String crop, LogFigure figure, double off) {
    return new Figure(
        crop, figure, 20, figure.isDays() ? 21.3 : 0.88, figure.isDays() ? 26 : 0.71, off);
  }

  @Test
  void theVerdictComesFirstWithWhatIsUsual() {
    assertThat(answer(winter(40)).headlines().lines())
        .startsWith(
            "Winter's forecast held, as far as one spring can tell.",
            "Winter: 40 of 50 sowings came within their ranges of 8 springs of 10; 34 to 46 are usual.");
    assertThat(answer(winter(20)).headlines().lines().get(0)).contains("did not hold", "too often");
    assertThat(answer(winter(50)).headlines().lines().get(0)).contains("held too well");
  }

  @Test
  void threeWrongNumbersAndWhatMendsThemStandInTenLines() {
    List<String> lines =
        answer(
                winter(20),
                figure("tomato", LogFigure.ON_TABLE, 9.1),
                figure("zinnia", LogFigure.STAND, -6.2),
                figure("pepper", LogFigure.LOST_ON_TABLE, 5),
                figure("onion", LogFigure.LOST_OUTSIDE, 4.5))
            .headlines()
            .lines();
    assertThat(lines).hasSizeLessThanOrEqualTo(10);
    assertThat(lines)
        .contains(
            "Off by more than chance, worst first:",
            "tomato, days on the table: 21 assumed, 26 seen (9.1 standard errors)",
            "zinnia, cells with a seedling: 88 % assumed, 71 % seen (6.2 standard errors)",
            "To mend them: ./propcap fit stages log.csv --scenario scenario.yaml")
        .noneMatch(l -> l.contains("onion"));
  }

  @Test
  void whatChanceExplainsIsNotCalledWrong() {
    assertThat(answer(winter(40), figure("tomato", LogFigure.ON_TABLE, 3.9)).headlines().lines())
        .anyMatch(l -> l.startsWith("No number of the crop list is off by more than chance"))
        .noneMatch(l -> l.contains("fit stages"));
  }

  @Test
  void ofTooFewSpringsNoNumberIsToldRightOrWrong() {
    ReviewAnswer few =
        answer(winter(40), Double.POSITIVE_INFINITY, figure("tomato", LogFigure.ON_TABLE, 9));
    assertThat(few.headlines().lines())
        .anyMatch(l -> l.startsWith("Fewer than 19 springs do not tell"))
        .noneMatch(l -> l.startsWith("No number"));
    assertThat(few.files("1").get("review.json")).contains("\"byChance\": null");
  }

  /** The season is looked at from winter on and on five more days: too many columns for a page. */
  @Test
  void theTableOfSowingsFitsThePageAndTheFileHasAll() {
    Scenario farm = TinyFarm.make();
    List<ForecastCheck> looks =
        IntStream.range(0, 6)
            .mapToObj(
                m -> new ForecastCheck(farm.season().start().plusDays(10L * m), 1, 0.8, 0.8, 0, 1))
            .toList();
    List<Range> ranges = looks.stream().map(l -> new Range(1803.6, 1803, 1803)).toList();
    Review review =
        new Review(
            farm.withSoFar(new SoFar(farm.season().end().plusDays(1), List.of(), List.of())),
            new RunSettings(1, 200, null, 1),
            200,
            looks,
            List.of(new Came(farm.sowings().get(0), 1803, true, ranges)),
            List.of(),
            List.of(figure("tomato", LogFigure.ON_TABLE, 1)),
            4);
    Map<String, String> files = new ReviewAnswer(review, "log.csv", "s.yaml").files("1");
    String page = requireNonNull(files.get("review.html"));
    assertThat(page)
        .contains(">Winter<", ">31 Mar<", ">20 Apr<", ">Number<", ">1,804")
        .contains("1 of 1 sowing came within its range of 8 springs of 10; 0 to 1 are usual.")
        .doesNotContain(">11 Mar<", ">10 Apr<", "1,803–1,803", "\"></th>", ">0.8<");
    assertThat(files.get("review.csv"))
        .contains("2027-03-11,2027-03-11-low", "2027-04-20,2027-04-20-low");
  }
}
