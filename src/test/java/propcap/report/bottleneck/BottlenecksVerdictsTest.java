package propcap.report.bottleneck;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.report.Questions;
import propcap.study.Capacity;
import propcap.study.bottleneck.Bottlenecks;
import propcap.study.bottleneck.Bottlenecks.Trial;
import propcap.study.bottleneck.Bottlenecks.Worth;
import propcap.study.money.Investment.Pays;
import propcap.study.statistics.Difference;

/** What is said of bottlenecks in a sentence, and what must not be said. */
class BottlenecksVerdictsTest {
  @Test
  void wherePlacesDoNotMatterNoneIsToBeBought() {
    BottlenecksWords words = new BottlenecksWords(Questions.noBottleneck());
    assertThat(words.verdict())
        .isEqualTo("No tenth more of any one place clearly gains plants on time.");
    assertThat(new StairWords(Questions.noBottleneck()).plan())
        .isEqualTo("There is nothing to buy: no tenth of any place clearly helps.");
    assertThat(words.findings()).isEmpty();
  }

  @Test
  void whatWasTriedIsToldAndNothingOfASingleSpace() {
    assertThat(new BottlenecksWords(Questions.bottlenecks()).verdict())
        .isEqualTo(
            "House 1 helps most: 33 more spaces bring +1,240 ± 90 plants on time a spring, 38 for"
                + " each of them; 11 of 12 sowings safe with them, as it is 10. That relieves what"
                + " waits to be sown (-44.0 ± 9.0 tray-days), to"
                + " leave the heat (-96.0 ± 9.0 tray-days) and to be potted on (-31.0 ± 9.0"
                + " tray-days). By the space House 2 is not told apart from it.");
    assertThat(new BottlenecksWords(Questions.oneSpace(false)).verdict())
        .isEqualTo(
            "House 1 helps most: one more space brings +30.0 ± 2.0 plants on time a spring, by itself"
                + " no difference that matters; 11 of 12 sowings safe with it, as it is 10.");
  }

  @Test
  void onlyWhatClearlyPaysIsToBeBought() {
    assertThat(new StairWords(Questions.bottlenecks()).plan())
        .isEqualTo(
            "Buy first 33 more spaces of House 1 (+1,240 ± 90 plants a spring, net present value"
                + " +1,900 ± 130 EUR), then 36 more spaces of House 1 (+790 ± 84 plants a spring,"
                + " net present value +1,900 ± 130 EUR). After that, what helps most is 6 more"
                + " spaces of Chamber (+410 ± 70 plants a spring), then 7 more spaces of Chamber"
                + " (+95 ± 52 plants a spring). Whether they pay is not told: the springs are too"
                + " few for that.");
    assertThat(new BottlenecksWords(Questions.bottlenecks()).findings())
        .contains(
            "Do not buy 12 more spaces of House 2: they bring +440 ± 70 plants on time a spring, but"
                + " cost more than that is worth (net present value -420 ± 130 EUR).");
  }

  /** A step that pays only once one before it is there, of which that is not told, is no advice. */
  @Test
  void ofStepsThatDoNotAllPayItIsSaidWhichAreNotTold() {
    Bottlenecks b = Questions.bottlenecks();
    Bottlenecks mixed =
        new Bottlenecks(
            b.scenario(),
            b.settings(),
            b.seasons(),
            b.confidence(),
            b.intervals(),
            b.onTime(),
            b.safe(),
            b.worths(),
            List.of(b.steps().get(2), b.steps().get(0), b.steps().get(3)),
            false);
    assertThat(new StairWords(mixed).plan())
        .startsWith("Step by step, what helps most is 6 more spaces of Chamber ")
        .endsWith("Whether step 1 and step 3 pay is not told: the springs are too few for that.")
        .doesNotContain("uy first");
  }

  @Test
  void whereNoCostIsKnownItHelpsMostAndIsNotCalledToBeBought() {
    assertThat(new StairWords(Questions.oneSpace(false)).plan())
        .isEqualTo(
            "Step by step, what helps most is one more space of House 1 (+30.0 ± 2.0 plants a"
                + " spring). Whether it pays is not asked: the scenario has no money.");
    assertThat(new StairWords(Questions.oneSpace(true)).plan())
        .endsWith(
            " Whether it pays cannot be told: its cost is not written. Before buying it brings +9 ±"
                + " 3 EUR of margin a season.");
  }

  @Test
  void whatClearlyHelpsWithLessAndHarmsWithMoreIsFound() {
    assertThat(new BottlenecksWords(Questions.bottlenecks()).findings())
        .containsSubsequence(
            "Less of Chamber helps: 6 fewer spaces bring +210 ± 58 plants on time a spring and +71 ±"
                + " 21 EUR of margin a season.",
            "More of Mats loses plants: 4 more spaces bring -161 ± 30 a spring.")
        .hasSize(3);
  }

  private static Worth worth(String place, int spaces, Difference plants, Difference margin) {
    Scenario scenario = Questions.bottlenecks().scenario();
    Place of =
        scenario.places().stream().filter(p -> p.name().equals(place)).findFirst().orElseThrow();
    Trial more = new Trial(spaces, plants, margin, null, Pays.NOT_KNOWN, 10);
    return new Worth(Capacity.of(of), more, more, List.of());
  }

  private static Difference told(double mean, double halfWidth) {
    return new Difference(mean, halfWidth, halfWidth / 2, 0.5, 1.0, 400);
  }

  private static Bottlenecks with(Worth... worths) {
    Bottlenecks b = Questions.bottlenecks();
    return new Bottlenecks(
        b.scenario(),
        b.settings(),
        400,
        0.95,
        30,
        b.onTime(),
        10,
        List.of(worths),
        List.of(),
        true);
  }

  /** By the space the house, by all its plants the yard, by money the mats. */
  @Test
  void whereAnotherOrderPutsAnotherPlaceFirstItIsSaid() {
    Worth house = worth("House 1", 10, told(300, 20), told(30, 9));
    Worth yard = worth("Yard", 40, told(400, 20), told(35, 9));
    Worth mats = worth("Mats", 40, told(100, 20), told(90, 9));
    assertThat(new BottleneckOrders(with(house, yard, mats)).others().orElseThrow())
        .startsWith(
            "That order is by the space. By the plants of a whole tenth Yard comes first (40 more"
                + " spaces: +400 ± 20 a season) and by the margin of a whole tenth Mats comes first"
                + " (40 more spaces: +90.0 ± 9.0 EUR a season).");
    // Not told apart, nothing is said.
    Worth alike = worth("Yard", 40, told(330, 20), told(35, 9));
    assertThat(new BottleneckOrders(with(house, alike)).others()).isEmpty();
    assertThat(new BottleneckOrders(with(house)).others()).isEmpty();
  }

  /** Half a per cent of the plants needed, or of what they are worth, is not worth a change. */
  @Test
  void whatDoesNotMatterIsNoFinding() {
    Worth little = worth("House 1", 4, told(9, 2), told(6, 3));
    assertThat(new BottlenecksWords(with(little)).findings()).isEmpty();
    Worth harms = worth("House 1", 4, told(-9, 2), told(-6, 3));
    assertThat(new BottlenecksWords(with(harms)).findings()).isEmpty();
    Worth saves = worth("House 1", 4, told(0, 0), told(60_000, 3));
    assertThat(new BottlenecksWords(with(saves)).findings())
        .singleElement()
        .asString()
        .startsWith("Less of House 1 helps: 4 fewer spaces bring");
  }

  @Test
  void aPlaceHoldsUpOnlyWhatClearlyWaitsLess() {
    assertThat(BottlenecksWords.holdsUp(Questions.bottlenecks().worths().get(2)))
        .hasValue("to be sown (-71.0 ± 9.0 tray-days)");
    assertThat(BottlenecksWords.holdsUp(Questions.bottlenecks().worths().get(3))).isEmpty();
  }
}
