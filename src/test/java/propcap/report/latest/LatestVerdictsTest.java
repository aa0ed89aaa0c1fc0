package propcap.report.latest;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.RunSettings;
import propcap.study.fill.FirstPlan.Filled;
import propcap.study.latest.Latest;
import propcap.study.latest.Latest.Course;
import propcap.study.latest.Latest.Day;
import propcap.study.latest.Latest.ForSowing;
import propcap.study.latest.LatestQuestion;

/** What is said of a last day to sow. Day 0 is 1 March 2027. */
class LatestVerdictsTest {
  private static final RunSettings SETTINGS = new RunSettings(1, 500, null, 1);

  /** Chances in percent by day from some day on, each known to 3 in 100. */
  private static Course course(int from, boolean isWhole, int... percents) {
    List<Day> days = new ArrayList<>();
    for (int d = 0; d < percents.length; d++) {
      double chance = percents[d] / 100.0;
      days.add(
          new Day(
              Farms.day(from + d),
              500,
              chance,
              Math.max(0, chance - 0.03),
              Math.min(1, chance + 0.03)));
    }
    return new Course(days, isWhole);
  }

  private static ForSowing sowing(String id, int sow, Course alone, Course inHouse) {
    return new ForSowing(Farms.sowing(id, sow, 2, 0, 45), 0.9, alone, inHouse);
  }

  private static Latest latest(ForSowing... sowings) {
    return latest(List.of(), sowings);
  }

  private static Latest latest(List<String> begun, ForSowing... sowings) {
    Farms farm = new Farms();
    farm.crops = List.of(new Crops().make());
    farm.sowings = List.of(sowings).stream().map(ForSowing::sowing).toList();
    Scenario scenario = farm.make();
    return new Latest(
        scenario,
        new LatestQuestion(0.9, List.of("*"), Farms.START),
        SETTINGS,
        List.of(sowings),
        List.of(),
        begun);
  }

  private static final ForSowing USUAL =
      sowing("a", 5, course(0, true, 99, 99, 99), course(8, false, 99, 98, 92, 88, 60, 40, 10));

  private static String told(ForSowing... sowings) {
    List<String> lines = new LatestAnswer(latest(sowings), List.of()).headlines().lines();
    return String.join(" ", lines).replaceAll("\\s+", " ");
  }

  @Test
  void theVerdictHasTheDayItsErrorTheDayAloneAndThePlans() {
    assertThat(told(USUAL))
        .startsWith(
            "a: sow by 11 March to have its 10 plants on time in 9 springs of 10 (with 95 %"
                + " confidence 10–12 Mar); alone in the house, by 3 March. After 13 March it is too"
                + " late for 5 springs of 10. The plan's 6 March leaves 5 days to spare.");
  }

  /** The last is 10, 11 March; 11 is not told from it. */
  @Test
  void aPlanThatIsTooLateIsToldByHowManyDays() {
    ForSowing late = sowing("a", 12, USUAL.alone(), USUAL.inHouse());
    assertThat(told(late)).contains("The plan's 13 March is 2 days too late.");
    ForSowing near = sowing("a", 11, USUAL.alone(), USUAL.inHouse());
    assertThat(told(near)).contains("The plan's 12 March is 1 day later, within the error.");
  }

  @Test
  void whereNoDayWillDoTheBestIsToldAndWhetherRoomIsWhatItLacks() {
    Course lacking = course(0, true, 40, 70, 30);
    assertThat(told(sowing("a", 1, USUAL.inHouse(), lacking)))
        .startsWith(
            "a: on no working day that is left does it have its 10 plants on time in 9 springs of 10;"
                + " the best is 2 March, with 70 % (67–73 %); alone in the house it would, sown by 11"
                + " March. After 2 March it is too late for 5 springs of 10.");
    assertThat(told(sowing("a", 1, lacking, lacking)))
        .contains("alone in the house it does not either (at best 70 % (67–73 %))");
    assertThat(told(sowing("a", 1, lacking, course(0, true, 88, 89))))
        .contains("which the springs do not tell from it");
  }

  @Test
  void whereNoDayIsLeftItIsSaid() {
    Course none = new Course(List.of(), true);
    assertThat(told(sowing("a", 1, none, none)))
        .startsWith("a: no working day is left before its bed's last, 15 April.");
  }

  @Test
  void daysThatWillNotDoAreNotPassedOver() {
    Course hole = course(0, true, 99, 99, 60, 50, 99, 20);
    assertThat(told(sowing("a", 1, hole, hole)))
        .contains(
            "Not on every day before that: sown on 2 days from 3 March to 4 March it falls short.");
    Course early = course(0, true, 20, 99, 99, 20);
    assertThat(told(sowing("a", 1, early, early)))
        .contains("Nor too early: on the days tried before 2 March it falls short.");
    assertThat(told(sowing("a", 0, early, early)))
        .contains("The plan's 1 March is in time, and yet it falls short on it.");
  }

  @Test
  void goalsThatAreNoTenthsAreGivenAsTheyAre() {
    assertThat(LatestWords.springs(0.9)).isEqualTo("9 springs of 10");
    assertThat(LatestWords.springs(0.95)).isEqualTo("95 % of springs");
  }

  @Test
  void ofManyItIsToldHowTheyStand() {
    Course lacking = course(0, true, 40, 70, 30);
    Course hole = course(0, true, 99, 99, 60, 50, 99, 20);
    String told =
        told(
            USUAL,
            sowing("b", 12, USUAL.alone(), USUAL.inHouse()),
            sowing("c", 10, USUAL.alone(), USUAL.inHouse()),
            sowing("d", 1, lacking, lacking),
            sowing("e", 11, USUAL.alone(), USUAL.inHouse()),
            sowing("f", 2, hole, hole));
    assertThat(told)
        .startsWith("2 of 6 sowings are sown by their last day as planned.")
        .contains("After it, within the error: e.")
        .contains("Before it, and yet short of the goal on their day: f.")
        .contains("Too late as planned: b (by 2 days; sow by 11 March).")
        .contains("Not in time often enough on any day that is left: d (at best 70 %).")
        .contains("c has the least to spare: 0 days, to 11 March.");
  }

  @Test
  void whatWasFilledInIsToldAndHasNoDayOfThePlan() throws Exception {
    Sowing a = USUAL.sowing();
    LatestAnswer answer =
        new LatestAnswer(latest(USUAL), List.of(new Filled(a, true, true, 0.9, 0.6, 160)));
    assertThat(String.join(" ", answer.headlines().lines()).replaceAll("\\s+", " "))
        .contains("Filled in where the sowing plan is empty: a (2 trays on 6 March).")
        .contains("Even by itself, with endless room, no day tried brings a to its goal.")
        .doesNotContain("The plan's");
  }

  @Test
  void theFilesHaveAllDaysAndTheirChances() {
    LatestAnswer answer = new LatestAnswer(latest(USUAL), List.of());
    assertThat(answer.files("1").keySet())
        .containsExactlyInAnyOrderElementsOf(LatestAnswer.KIND.files());
    assertThat(answer.files("1").get("latest.csv"))
        .contains("\na,cosmos,2,10,2027-04-15,0.9,2027-03-06,,2027-03-11,2027-03-10,2027-03-12,");
    assertThat(answer.files("1").get("latest-days.csv")).hasLineCount(1 + 3 + 7);
    JsonObject json =
        JsonParser.parseString(answer.files("1").get("latest.json")).getAsJsonObject();
    assertThat(
            json.getAsJsonArray("sowings")
                .get(0)
                .getAsJsonObject()
                .getAsJsonObject("inHouse")
                .get("surely")
                .getAsString())
        .isEqualTo("2027-03-10");
    assertThat(answer.html()).contains("<svg").contains("11 Mar").contains("10–12 Mar");
  }

  @Test
  void aDayThatIsPerhapsNoneSaysSo() {
    LocalDate day = Farms.day(0);
    Course unsure = course(0, true, 91, 50);
    assertThat(told(sowing("a", 0, unsure, unsure)))
        .contains("(with 95 % confidence no later than 1 March, and perhaps on no day)");
    assertThat(unsure.last(0.9).orElseThrow().perhaps()).isEqualTo(day);
  }

  @Test
  void thePageOfOneSowingBeginsWithItsVerdict() {
    Course early = course(0, true, 0, 99, 99, 20);
    String page = new LatestAnswer(latest(sowing("a", 1, early, early)), List.of()).html();
    assertThat(page.indexOf("a: sow by 3 March"))
        .isPositive()
        .isLessThan(page.indexOf("<svg"))
        .isLessThan(page.indexOf("<table"));
    assertThat(page)
        .containsOnlyOnce("a: sow by 3 March")
        .contains("goal, 90\u00a0%")
        .contains("Where the line is low on the left it is too early to sow.");
    assertThat(new LatestAnswer(latest(USUAL), List.of()).html()).doesNotContain("too early");
  }

  @Test
  void whatIsSownAlreadyIsLeftOutAndCounted() {
    LatestAnswer answer = new LatestAnswer(latest(List.of("x", "y"), USUAL), List.of());
    String left =
        "Left out, as they are sown already: 2 sowings. The question “now” tells whether to sow again.";
    assertThat(String.join(" ", answer.headlines().lines()).replaceAll("\\s+", " ")).contains(left);
    assertThat(answer.html()).contains(left);
  }
}
