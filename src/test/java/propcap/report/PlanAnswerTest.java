package propcap.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import propcap.farm.Labour;
import propcap.farm.Scenario;
import propcap.farm.TinyFarm;
import propcap.study.Budget;
import propcap.study.Planned;
import propcap.study.Planning;
import propcap.study.PlanningQuestion;
import propcap.study.RunSettings;

/** What is said of a better plan. */
class PlanAnswerTest {
  private static final PlanningQuestion QUESTION = new PlanningQuestion(0.9, 3, 3, 1);

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
    List<String> lines = Answers.headlines(better);
    assertThat(lines.get(0)).startsWith("The new plan brings +").contains("EUR a spring");
    assertThat(lines.get(1)).contains("1 of 2 as it was, 2 now");
    assertThat(lines).allMatch(line -> line.length() <= Headlines.COLUMNS);
    assertThat(PlanChange.of(better)).isNotEmpty().allMatch(c -> !c.why().isBlank());
    assertThat(String.join(" ", lines)).contains("one moves 3 days earlier: it does as well");
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
            with.weather());
    assertThat(Answers.headlines(plan(without)).get(0))
        .startsWith("The new plan takes no more trays than the plan as it was, and +1");
  }

  @Test
  void whereHandsAreLackingThatIsSaid() throws Exception {
    Labour littleTime = new Labour(0.02, Labour.Minutes.DEFAULT, List.of());
    Planned late = plan(TinyFarm.make().withLabour(littleTime));
    assertThat(late.missed()).isNotEmpty();
    PlanWords words = PlanWords.of(late);
    assertThat(words.missed().get(0)).contains("hands: hours run out on");
    assertThat(words.bound()).contains("endless room and hands");
  }

  @Test
  void thePageHasBothPlansInOnePicture() {
    String html = PlanPage.of(better, "1").html();
    assertThat(html).contains("as it was, median").contains("now, median").contains("rooms");
    assertThat(html).doesNotContain("NaN").doesNotContain("Infinity");
  }

  @Test
  void thePlanHasTheColumnsThatItCameIn() {
    assertThat(PlanFiles.sowings(better).lines().findFirst())
        .hasValue("id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until");
  }

  @Test
  void aPlanThatCannotBeBetteredIsKeptAndThatIsSaid() throws Exception {
    Planned kept = plan(better.kept().scenario());
    assertThat(kept.isConfirmed()).isFalse();
    assertThat(kept.changes()).isEmpty();
    assertThat(kept.kept().scenario()).isEqualTo(better.kept().scenario());
    assertThat(Answers.headlines(kept).get(0)).startsWith("Keep the plan as it is");
    assertThat(PlanFiles.sowings(kept)).isEqualTo(PlanFiles.sowings(better));
  }
}
