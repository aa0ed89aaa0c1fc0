package propcap.report.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import propcap.farm.Variants.Setting;
import propcap.farm.Variants.Variant;
import propcap.report.Questions;
import propcap.study.Stats;
import propcap.study.statistics.Difference;
import propcap.study.sweep.Sweep;
import propcap.study.sweep.Sweep.Swept;

class SweepAnswerTest {

  private static Swept swept(
      String name, int spaces, int shift, double onTime, @Nullable Difference toFirst) {
    return new Swept(
        new Variant(
            name,
            Questions.scenario(name),
            List.of(
                new Setting("" + spaces, (double) spaces),
                new Setting(shift + " days", (double) shift))),
        Stats.always(onTime, 400),
        Stats.always(12, 400),
        Stats.always(3, 400),
        2,
        spaces < 50 ? "Chamber" : "",
        spaces < 50 ? 9.5 : 0,
        null,
        toFirst,
        null);
  }

  private static Sweep sweep(List<Swept> scenarios, List<Integer> ranking, List<Integer> notTold) {
    return new Sweep(
        List.of("spaces of Chamber", "shift of zinnia*"),
        scenarios,
        Questions.SETTINGS,
        0.95,
        false,
        ranking,
        notTold,
        true);
  }

  private static Sweep three(Difference one, Difference two, List<Integer> ranking, int... alike) {
    return sweep(
        List.of(
            swept("now", 40, 0, 1000, null),
            swept("larger", 60, 0, 1000 + one.mean(), one),
            swept("later", 40, 7, 1000 + two.mean(), two)),
        ranking,
        IntStream.of(alike).boxed().toList());
  }

  @Test
  void theVerdictComesFirstAndSaysWhatIsNotTold() {
    assertThat(
            new SweepAnswer(three(Questions.d(40, 9), Questions.d(35, 9), List.of(1, 2, 0), 2))
                .headlines()
                .lines())
        .containsExactly(
            "larger is best: +40.0 ± 9.0 plants on time a spring against now.",
            "The springs do not tell it from later: with 95 % confidence one of these is the best.",
            "1. larger: 1,040 (in all 400 springs) on time, 2 of 12 sowings safe",
            "2. later: 1,035 (in all 400 springs) on time, 2 of 12 sowings safe",
            "3. now: 1,000 (in all 400 springs) on time, 2 of 12 sowings safe",
            "3 scenarios: 400 springs of each, seed 7");
  }

  @Test
  void whatIsBestAsItIsAndWhatIsNotClearIsSaid() {
    assertThat(
            new SweepAnswer(three(Questions.d(-40, 9), Questions.d(-35, 9), List.of(0, 2, 1)))
                .headlines()
                .lines())
        .startsWith(
            "now is best as it is: none of the 2 other scenarios came out with more plants on time.",
            "With 95 % confidence none of the others is better.");
    assertThat(
            String.join(
                " ",
                new SweepAnswer(three(Questions.d(4, 9), Questions.d(-35, 9), List.of(1, 0, 2), 0))
                    .headlines()
                    .lines()))
        .startsWith("Nothing tried clearly has more plants on time than now: larger came out");
  }

  @Test
  void itsFilesHaveARowForEachScenarioInTheOrderAskedFor() {
    Map<String, String> files =
        new SweepAnswer(three(Questions.d(40, 9), Questions.d(35, 9), List.of(1, 2, 0), 2))
            .files("1");
    assertThat(files).containsOnlyKeys("sweep.html", "sweep.json", "sweep.csv");
    assertThat(
            String.valueOf(files.get("sweep.csv")).lines().map(l -> l.substring(0, l.indexOf(','))))
        .containsExactly("scenario", "now", "larger", "later");
    JsonObject json = JsonParser.parseString(files.get("sweep.json")).getAsJsonObject();
    assertThat(json.get("best").getAsString()).isEqualTo("larger");
    assertThat(json.getAsJsonArray("notTold").get(0).getAsString()).isEqualTo("later");
    JsonObject later = json.getAsJsonArray("scenarios").get(2).getAsJsonObject();
    assertThat(later.getAsJsonObject("settings").get("shift of zinnia*").getAsString())
        .isEqualTo("7 days");
    assertThat(later.getAsJsonObject("toFirst").get("mean").getAsDouble()).isEqualTo(35);
    assertThat(files.get("sweep.html"))
        .contains("The scenarios, best first.")
        .contains("not told from the best")
        .contains("sweep-response")
        .contains("shift of zinnia*: 7");
  }

  @Test
  void whatIsNoNumberIsDrawnRowByRowAndManyRowsByTheBest() {
    List<Swept> many = new ArrayList<>(List.of(swept("first", 40, 0, 1000, null)));
    for (int i = 1; i <= 50; i++) {
      many.add(swept("change " + i, 40 + i, i, 1000 - i, Questions.d(-i, 0.1)));
    }
    List<Integer> ranking = IntStream.range(0, many.size()).boxed().toList();
    SweepAnswer answer = new SweepAnswer(sweep(many, ranking, List.of()));
    assertThat(answer.html()).contains("sweep-rows").contains("The 30 best;").contains("change 50");
    assertThat(answer.headlines().lines()).hasSizeLessThanOrEqualTo(10);
  }
}
