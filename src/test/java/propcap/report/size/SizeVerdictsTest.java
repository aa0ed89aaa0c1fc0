package propcap.report.size;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import propcap.report.Forecasts;
import propcap.report.Questions;
import propcap.study.forecast.Forecast;
import propcap.study.size.Goal;
import propcap.study.size.Goal.Measure;
import propcap.study.size.Sizing;
import propcap.study.size.Sizing.Candidate;
import propcap.study.size.Sizing.Found;

/** What the answer to a size says in a sentence, and what it must not say. */
class SizeVerdictsTest {
  private static Candidate candidate(double mean, double se, Found found, Integer... spaces) {
    return new Candidate(
        List.of(spaces),
        100,
        mean,
        mean - 1.96 * se,
        mean + 1.96 * se,
        found,
        List.of(spaces).get(0));
  }

  private static String verdict(Goal goal, @Nullable Candidate answer, Candidate... candidates) {
    Sizing sizing = Questions.sizing(List.of("House 2"), goal, List.of(candidates), answer);
    return SizeVerdict.of(sizing);
  }

  private static Sizing tried(Goal goal, @Nullable Candidate answer, Candidate... candidates) {
    return Questions.sizing(List.of("House 2"), goal, List.of(candidates), answer);
  }

  @Test
  void theSmallestSizeIsNamedWithItsGoalAndWhatIsPromised() {
    Candidate less = candidate(0.8, 0.01, Found.FAILS, 100);
    Candidate enough = candidate(0.907, 0.01, Found.HOLDS, 120);
    Sizing sizing = tried(new Goal(Measure.MET, 0.9), enough, less, enough);
    assertThat(SizeVerdict.of(sizing))
        .isEqualTo(
            "House 2 is large enough as it is: with 120 spaces every sowing has its plants on time"
                + " in at least 90 % of springs (90.7 %, between 88.7 and 92.7 %).");
    assertThat(SizeNotes.of(sizing).guarantee())
        .isEqualTo(
            "With 95 % confidence this is right, or within 2 percentage points of the goal.");
  }

  /** There are 120: a goal that they reach is never told as a purchase. */
  @Test
  void whatComesOfTodaysSizeIsSaid() {
    Candidate now = candidate(0.99, 0.001, Found.HOLDS, 120);
    Candidate fewer = candidate(0.96, 0.001, Found.HOLDS, 40);
    Goal goal = new Goal(Measure.ON_TIME_SHARE, 0.95);
    assertThat(verdict(goal, fewer, fewer, now))
        .isEqualTo(
            "House 2 is large enough as it is: with 120 spaces at least 95 % of the plants needed"
                + " are on time (99.00 %, between 98.80 and 99.20 %). 40 spaces, 80 fewer than now,"
                + " would do: the smallest of 2 sizes tried (96.00 %, between 95.80 and 96.20 %).");
    Candidate fails = candidate(0.9, 0.001, Found.FAILS, 120);
    Candidate more = candidate(0.96, 0.001, Found.HOLDS, 150);
    assertThat(verdict(goal, more, fails, more))
        .startsWith("House 2 needs 150 spaces, 30 more than now: the smallest of 2 sizes tried")
        .endsWith(" As it is, with 120, it is 90.00 %, between 89.80 and 90.20 %.");
    Candidate best = candidate(0.94, 0.001, Found.FAILS, 150);
    assertThat(verdict(goal, null, fails, best))
        .endsWith(" As it is, with 120, it is 90.00 %, between 89.80 and 90.20 %.");
  }

  @Test
  void aSingleSizeIsNotCalledTheSmallest() {
    Candidate only = candidate(0.96, 0.01, Found.HOLDS, 40);
    assertThat(verdict(new Goal(Measure.ON_TIME_SHARE, 0.925), only, only))
        .isEqualTo(
            "House 2 needs 40 spaces, 80 fewer than now: the only size tried, and with it at least"
                + " 92.5 % of the plants needed are on time (96.0 %, between 94.0 and 98.0 %).");
  }

  // Where the springs ran out.

  @Test
  void anAnswerThatIsNotDecidedSaysWhatWasReachedAndHowSure() {
    Candidate less = candidate(0.75, 0.06, Found.NEAR, 100);
    Candidate seems = candidate(0.83, 0.05, Found.NEAR, 120);
    Sizing sizing = tried(new Goal(Measure.MET, 0.8), seems, less, seems);
    assertThat(SizeVerdict.of(sizing))
        .isEqualTo(
            "Not decided in 2,000 springs: House 2 seems to need 120 spaces, as many as now, so"
                + " that every sowing has its plants on time in at least 80 % of springs. With 120"
                + " it is 83.0 %, between 73.2 and 92.8 %; with 100 it is 75 %, between 63 and 87 %.");
    assertThat(SizeNotes.of(sizing).guarantee())
        .isEqualTo(
            "With 95 % confidence this is right, or within 3.4 percentage points of the goal, not"
                + " within 2 percentage points as asked; more springs would tell more"
                + ".");
  }

  /** The size before the answer fails, but one before that is still open. */
  @Test
  void theNextSizeThatIsOpenIsNamedAndNotOneThatFails() {
    Candidate open = candidate(0.78, 0.05, Found.NEAR, 80);
    Candidate fails = candidate(0.6, 0.01, Found.FAILS, 100);
    Candidate holds = candidate(0.9, 0.01, Found.HOLDS, 120);
    assertThat(verdict(new Goal(Measure.MET, 0.8), holds, open, fails, holds))
        .startsWith("Not decided in 2,000 springs: ")
        .endsWith(
            "With 120 it is 90.0 %, between 88.0 and 92.0 %; with 80 it is 78.0 %, between 68.2 and 87.8 %.");
  }

  @Test
  void thatNoneIsEnoughIsNotDecidedWhileOneIsOpen() {
    Candidate fails = candidate(0.5, 0.01, Found.FAILS, 100);
    Candidate open = candidate(0.79, 0.05, Found.NEAR, 120);
    assertThat(verdict(new Goal(Measure.MET, 0.8), null, fails, open))
        .isEqualTo(
            "Not decided in 2,000 springs: none of the 2 sizes tried seems enough: the best of"
                + " them, 120 spaces of House 2, comes to 79.0 %, between 69.2 and 88.8 %, and the"
                + " goal is 80 %.");
    assertThat(verdict(new Goal(Measure.MET, 0.8), null, open))
        .startsWith("Not decided in 2,000 springs: the only size tried seems not enough: 120 ");
  }

  @Test
  void aPairThatIsNotDecidedIsNamedWithTheNextCheaperOne() {
    Candidate cheaper = candidate(0.75, 0.06, Found.NEAR, 40, 100);
    Candidate seems = candidate(0.83, 0.05, Found.NEAR, 60, 120);
    Sizing sizing =
        Questions.sizing(
            List.of("Chamber", "House 2"),
            new Goal(Measure.MET, 0.8),
            List.of(cheaper, seems),
            seems);
    assertThat(SizeVerdict.of(sizing))
        .startsWith(
            "Not decided in 2,000 springs: 60 spaces of Chamber and 120 of House 2 seem to be"
                + " needed, so that every")
        .endsWith("with 40 spaces of Chamber and 100 of House 2 it is 75 %, between 63 and 87 %.");
  }

  @Test
  void aMarginThatIsNotDecidedSaysHowMuchBetterAnotherMayBe() {
    Candidate best = candidate(34_200.5, 150, Found.NEAR, 120);
    Candidate other = candidate(34_100, 150, Found.NEAR, 140);
    Sizing sizing = tried(new Goal(Measure.MARGIN, 0), best, best, other);
    assertThat(SizeVerdict.of(sizing))
        .startsWith(
            "Not decided in 2,000 springs: House 2 seems best with 120 spaces, as many as now: of"
                + " 2 sizes tried the largest mean margin of a season so far, 34,201");
    assertThat(SizeNotes.of(sizing).guarantee())
        .startsWith("With 95 % confidence this is right, or within 411 of money of the best, not");
  }

  @Test
  void whereNoneHoldsItIsSaidHowMuchTheBestLacks() {
    assertThat(
            verdict(
                new Goal(Measure.MET, 0.9),
                null,
                candidate(0.5, 0.05, Found.FAILS, 20),
                candidate(0.71, 0.015, Found.FAILS, 400)))
        .isEqualTo(
            "None of the 2 sizes tried is enough: the best of them, 400 spaces of House 2, comes"
                + " to 71.0 %, between 68.1 and 73.9 %, which falls 19 percentage points short of the goal of 90 %."
                + " Larger sizes were not tried.");
    assertThat(
            verdict(
                new Goal(Measure.ON_TIME, 80_000), null, candidate(77_700, 150, Found.FAILS, 20)))
        .isEqualTo(
            "No: the only size tried is not enough: 20 spaces of House 2 come to 77,700 plants, between 77,406 and 77,994 plants, which falls 2,300 plants short of the goal of"
                + " 80,000 plants. Larger sizes were not tried.");
    assertThat(
            verdict(
                new Goal(Measure.MET, 0.9),
                null,
                candidate(0.71, 0.05, Found.FAILS, 20),
                candidate(0.5, 0.015, Found.FAILS, 400)))
        .endsWith("short of the goal of 90 %.");
  }

  @Test
  void largerSizesThatFailAreAWarning() {
    Candidate enough = candidate(0.96, 0.01, Found.HOLDS, 320);
    Goal goal = new Goal(Measure.MET, 0.9);
    List<Candidate> tried =
        List.of(
            candidate(0.2, 0.01, Found.FAILS, 300),
            enough,
            candidate(0.1, 0.01, Found.FAILS, 340),
            candidate(0.97, 0.01, Found.HOLDS, 360));
    assertThat(
            SizeNotes.of(Questions.sizing(List.of("House 2"), goal, tried, enough)).moreDoesHarm())
        .hasValueSatisfying(words -> assertThat(words).contains("with 340 spaces the goal fails"));
    assertThat(SizeNotes.of(Questions.sizing()).moreDoesHarm()).isEmpty();
  }

  private static String edge(Goal goal, Candidate answer, Candidate other) {
    List<Candidate> tried =
        answer.spaces().get(0) < other.spaces().get(0)
            ? List.of(answer, other)
            : List.of(other, answer);
    return SizeNotes.of(Questions.sizing(List.of("House 2"), goal, tried, answer))
        .atTheEdge()
        .orElse("");
  }

  @Test
  void anEndOfTheLadderIsSaidToBeOne() {
    Candidate small = candidate(34_200, 150, Found.HOLDS, 120);
    Candidate large = candidate(34_100, 150, Found.HOLDS, 140);
    Goal margin = new Goal(Measure.MARGIN, 0);
    assertThat(edge(margin, small, large))
        .isEqualTo("It is the smallest tried: a smaller one may be better still.");
    assertThat(edge(margin, large, small))
        .isEqualTo("It is the largest tried: a larger one may be better still.");
    Goal plants = new Goal(Measure.ON_TIME, 30_000);
    assertThat(edge(plants, small, large))
        .isEqualTo("It is the smallest tried: a smaller one may do as well.");
    assertThat(edge(plants, large, small)).isEmpty();
    assertThat(edge(margin, candidate(1, 0, Found.HOLDS, 0), large)).isEmpty();
  }

  private static Sizing about(String match, @Nullable Forecast nearest) {
    Candidate tried = candidate(0.5, 0.05, Found.FAILS, 400);
    return new Sizing(
        Forecasts.spring().scenario(),
        Questions.SETTINGS,
        List.of("House 2"),
        new Goal(Measure.MET, 0.8),
        match,
        0.02,
        0.01,
        0.95,
        List.of(tried),
        nearest == null ? tried : null,
        nearest,
        null,
        100,
        2000);
  }

  @Test
  void theSowingsOfAGoalAreNamed() {
    String crop = Forecasts.spring().sowings().get(0).sowing().crop();
    assertThat(SizeWords.of(about(crop + "-1", null)).goal())
        .isEqualTo(crop + "-1 has its plants on time in at least 80 % of springs");
    assertThat(SizeWords.of(about(crop + "*", null)).goal())
        .startsWith(crop + "-1, " + crop + "-2 and " + crop + "-3 have their plants on time in");
    int many =
        Math.toIntExact(
            Forecasts.spring().sowings().stream()
                .filter(s -> s.sowing().id().endsWith("-1"))
                .count());
    assertThat(SizeWords.of(about("*-1", null)).goal())
        .startsWith("all " + many + " sowings of *-1 have their plants on time in");
    assertThat(SizeWords.of(about("*", null)).goal()).startsWith("every sowing has its plants on");
  }

  @Test
  void whatHoldsSomeSowingsBackIsTheirOwnWaiting() {
    Forecast forecast = Forecasts.spring();
    String crop = forecast.sowings().get(0).sowing().crop();
    assertThat(SizeNotes.of(about(crop + "-1", forecast)).holdsBack().orElseThrow())
        .startsWith("What holds " + crop + "-1 back there: ")
        .contains("are needed. In the whole house: The bottleneck is")
        .endsWith("That need not be what holds it back.");
    assertThat(SizeNotes.of(about("*", forecast)).holdsBack().orElseThrow())
        .startsWith("What holds it back there: The bottleneck is");
  }

  @Test
  void theLargestMarginIsCalledBest() {
    Candidate best = candidate(34_200.5, 150, Found.HOLDS, 120);
    Candidate other = candidate(30_000, 150, Found.FAILS, 140);
    assertThat(verdict(new Goal(Measure.MARGIN, 0), best, best, other))
        .startsWith(
            "House 2 is best with 120 spaces, as many as now: of 2 sizes tried the largest mean margin of a season,"
                + " 34,201 of money, between 33,907 and 34,495 of money.");
  }

  @Test
  void aPairIsChosenByWhatItCosts() {
    assertThat(SizeVerdict.of(Questions.pairs()))
        .startsWith(
            "80 spaces of Chamber and 120 of House 2 are needed: the cheapest (200 spaces in all) of"
                + " 30 pairs tried for which every sowing");
  }
}
