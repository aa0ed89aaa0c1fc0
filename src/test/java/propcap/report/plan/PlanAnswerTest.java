package propcap.report.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TinyFarm;
import propcap.report.Questions;
import propcap.report.kit.Lines;
import propcap.study.RunSettings;
import propcap.study.plan.Budget;
import propcap.study.plan.Planned;
import propcap.study.plan.Planning;
import propcap.study.plan.PlanningQuestion;

/** What is said of a better plan. */
class PlanAnswerTest {
  private static final PlanningQuestion QUESTION = new PlanningQuestion(0.9, 3, 3, 1, List.of());

  private static Planned better;

  @BeforeAll
  static void aBetterPlan() throws Exception {
    better = plan(TinyFarm.make());
  }

  private static Planned plan(Scenario scenario) throws Exception {
    return Planning.plan(
        scenario, QUESTION, new RunSettings(1, 20, null, 1), Budget.ofTries(300), share -> {});
  }

  @Test
  void whatItBringsComesFirstAndWhatChangesHasItsReason() {
    List<String> lines = new PlannedAnswer(better).headlines().lines();
    assertThat(lines.get(0)).startsWith("The new plan brings +").contains("EUR a spring");
    assertThat(lines.get(1)).contains("1 of 2 as it was, 2 now");
    assertThat(lines).allMatch(line -> line.length() <= Lines.COLUMNS);
    assertThat(PlanChange.of(better)).isNotEmpty().allMatch(c -> !c.why().isBlank());
    assertThat(String.join(" ", lines))
        .contains("one moves 2 days earlier: by itself it raises the chance of two by 100 points");
  }

  @Test
  void withoutMoneyItIsTraysAndSowingsThatCount() throws Exception {
    Scenario with = TinyFarm.make();
    Scenario without =
        new Scenario(
            with.name(),
            with.season(),
            with.frostAtC(),
            with.rounds(),
            with.places(),
            with.crops(),
            with.sowings(),
            with.weather(),
            null,
            Labour.NOT_LIMITED);
    assertThat(new PlannedAnswer(plan(without)).headlines().lines().get(0))
        .startsWith("The new plan takes no more trays than the plan as it was, and +1");
  }

  @Test
  void whereHandsAreLackingThatIsSaid() throws Exception {
    Labour littleTime = new Labour(0.02, Labour.Minutes.DEFAULT, List.of());
    Planned late = plan(TinyFarm.make().withLabour(littleTime));
    assertThat(late.missed()).isNotEmpty();
    assertThat(new PlanMissed(late).all().get(0).lacks())
        .contains("hands: hours run out on")
        .contains("alone with endless room and hands it comes to 100 %");
  }

  /**
   * All four spaces are the large sowing's when the small one is due: it is the one or the other.
   */
  private static Planned oneOrTheOther(List<String> giveUp) throws Exception {
    Farms farm = new Farms();
    farm.mats = 4;
    farm.house = 20;
    farm.yard = 20;
    farm.sowings.add(sowing("large", 4, 80, 22));
    farm.sowings.add(sowing("small", 2, 20, 23));
    return Planning.plan(
        farm.make(),
        new PlanningQuestion(0.9, 0, 0, 1, giveUp),
        new RunSettings(1, 20, null, 1),
        Budget.ofTries(60),
        share -> {});
  }

  private static Sowing sowing(String id, int trays, int needed, int bedBy) {
    return new Sowing(
        id,
        "cosmos",
        "lot",
        Farms.day(0),
        trays,
        needed,
        Farms.day(0),
        Farms.day(bedBy),
        null,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  @Test
  void whatIsGivenUpIsSaidBeforeAllElse() throws Exception {
    Planned planned = oneOrTheOther(List.of("large"));
    assertThat(new PlannedAnswer(planned).headlines().lines().get(0))
        .startsWith("The new plan gives up large (")
        .endsWith(" of its 80 plants on time, 40 as it was).");
    assertThat(new PlanTables(planned).json("1")).contains("\"givenUp\": [\n    \"large\"\n  ]");
    assertThat(new PlannedAnswer(oneOrTheOther(List.of())).headlines().lines())
        .noneMatch(l -> l.contains("gives up"));
  }

  @Test
  void aReasonIsWhatWasMeasured() {
    PlanChange change = PlanChange.of(better).get(0);
    assertThat(change.why())
        .isEqualTo("by itself it raises the chance of two by 100 points and brings 14 EUR");
    Planned.Effect nothing =
        new Planned.Effect(Questions.d(2, 5), Questions.d(0.01, 0.03), null, null);
    assertThat(new PlanChange(better, change.change(), Optional.of(nothing)).why())
        .isEqualTo("by itself it does nothing that could be told from chance");
    assertThat(new PlanChange(better, change.change(), Optional.empty()).why())
        .isEqualTo("what it does by itself was not measured");
  }

  @Test
  void thePageHasBothPlansInOnePicture() {
    String html = PlanPage.of(better, List.of(), "1").html();
    assertThat(html).contains("as it was, median").contains("now, median").contains("rooms");
    assertThat(html).doesNotContain("NaN").doesNotContain("Infinity");
  }

  @Test
  void thePlanHasTheColumnsThatItCameIn() {
    assertThat(new PlanTables(better).sowingPlan().lines().findFirst())
        .hasValue("id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until");
  }

  @Test
  void aPlanThatCannotBeBetteredIsKeptAndThatIsSaid() throws Exception {
    Planned kept = plan(better.kept().scenario());
    assertThat(kept.isConfirmed()).isFalse();
    assertThat(kept.changes()).isEmpty();
    assertThat(kept.kept().scenario()).isEqualTo(better.kept().scenario());
    assertThat(new PlannedAnswer(kept).headlines().lines().get(0))
        .startsWith("Keep the plan as it is");
    assertThat(new PlanTables(kept).sowingPlan()).isEqualTo(new PlanTables(better).sowingPlan());
  }
}
