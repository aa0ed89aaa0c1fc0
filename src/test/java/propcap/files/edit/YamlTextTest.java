package propcap.files.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.schema.FailsafeSchema;
import propcap.files.RandomYaml;
import propcap.files.edit.YamlText.Step;

/** One key is changed; every comment and every other line stays. */
class YamlTextTest {
  private static final String SCENARIO =
      """
      # What if?
      name: Spring   # of 2027
      places:
        # Dark and damp.
        - {name: Chamber, spaces: 40, climate: {constant: 21 C}}   # the old one
        - {name: Yard, kind: hardening, # outside
           spaces: 160}
      rounds: {at: "08:00", rest: [SUNDAY]}
      """;

  private static List<Step> place(String name, String... keys) {
    List<Step> path = new ArrayList<>(List.of(Step.to("places"), Step.toItem("name", name)));
    for (String key : keys) {
      path.add(Step.to(key));
    }
    return path;
  }

  @Test
  void aValueIsReplacedAndNothingElse() {
    assertThat(YamlText.set(SCENARIO, place("Chamber", "spaces"), "60"))
        .isEqualTo(SCENARIO.replace("spaces: 40", "spaces: 60"));
    assertThat(YamlText.set(SCENARIO, place("Chamber", "climate", "constant"), "22 C"))
        .isEqualTo(SCENARIO.replace("21 C", "22 C"));
    assertThat(YamlText.set(SCENARIO, List.of(Step.to("rounds"), Step.to("at")), "07:30"))
        .isEqualTo(SCENARIO.replace("08:00", "07:30"));
  }

  @Test
  void aKeyIsAddedWhereItBelongs() {
    assertThat(YamlText.set(SCENARIO, place("Yard", "stretch-loss"), "2 %/day"))
        .isEqualTo(SCENARIO.replace("spaces: 160}", "spaces: 160, stretch-loss: 2 %/day}"));
    assertThat(YamlText.set(SCENARIO, List.of(Step.to("frost-at")), "-1 C"))
        .isEqualTo(SCENARIO + "frost-at: -1 C\n");
  }

  @Test
  void aPlaceIsAddedOnALineOfItsOwn() {
    assertThat(YamlText.set(SCENARIO, place("Chamber 2", "like"), "Chamber"))
        .isEqualTo(
            SCENARIO.replace(
                "spaces: 160}\n", "spaces: 160}\n  - {name: Chamber 2, like: Chamber}\n"));
  }

  @Test
  void whatAScenarioLacksIsMade() {
    String text = YamlText.set("extends: spring.yaml\n", place("Chamber", "spaces"), "60");
    assertThat(text).isEqualTo("extends: spring.yaml\nplaces:\n  - {name: Chamber, spaces: 60}\n");
    assertThat(YamlText.remove(text, place("Chamber", "spaces")))
        .isEqualTo("extends: spring.yaml\nplaces:\n  - {name: Chamber}\n");
    assertThat(YamlText.remove(text, place("Chamber"))).isEqualTo("extends: spring.yaml\n");
  }

  @Test
  void aCommentBesideWhatIsTakenOutStays() {
    assertThat(YamlText.remove(SCENARIO, place("Yard", "spaces")))
        .contains("kind: hardening # outside")
        .doesNotContain("160");
    assertThat(YamlText.remove(SCENARIO, place("Chamber"))).contains("# Dark and damp.");
  }

  @Test
  void whatWouldMeanSomethingElseIsQuoted() {
    for (String word :
        List.of("a: b", "# 1", "*", "{x}", "- x", "", " x", "yes #no", "é😀", "a\"b\\")) {
      String text = YamlText.set(SCENARIO, place("Chamber", "spaces"), word);
      assertThat(read(text).toString()).contains("spaces=" + word + ",");
    }
  }

  /** Anything else than the change is the same to the byte, whatever the file looks like. */
  @ParameterizedTest
  @ValueSource(ints = {0, 100, 200, 300, 400, 500, 600, 700, 800, 900})
  void whatIsReadAfterAChangeIsWhatWasMeant(int first) {
    for (int seed = first; seed < first + 100; seed++) {
      SplittableRandom luck = new SplittableRandom(seed);
      RandomYaml file = new RandomYaml(luck);
      String text = file.text();
      Object model = read(text);
      for (int edit = 0; edit < 6; edit++) {
        RandomYaml.Edit next = RandomYaml.edit(model, luck);
        String changed =
            next.value() == null
                ? YamlText.remove(text, next.path())
                : YamlText.set(text, next.path(), next.value());
        assertThat(read(changed))
            .as("seed %s, %s in%n%s", seed, next, text)
            .isEqualTo(next.after());
        assertThatTheRestIsAsItWas(text, changed, "seed " + seed + ", " + next);
        text = changed;
        model = next.after();
      }
    }
  }

  /** The lines before and after the one piece that changed are the same, and so is each comment. */
  private static void assertThatTheRestIsAsItWas(String before, String after, String as) {
    List<String> old = List.of(before.split("(?<=\n)", -1));
    List<String> now = List.of(after.split("(?<=\n)", -1));
    int start = 0;
    while (start < Math.min(old.size(), now.size()) && old.get(start).equals(now.get(start))) {
      start++;
    }
    int end = 0;
    while (end < Math.min(old.size(), now.size()) - start
        && old.get(old.size() - 1 - end).equals(now.get(now.size() - 1 - end))) {
      end++;
    }
    String gone = String.join("", old.subList(start, old.size() - end));
    // A piece of the file was touched, not the whole of it: at most one of its top keys.
    assertThat(gone.lines().filter(l -> l.matches("[a-z].*")).count())
        .as(as)
        .isLessThanOrEqualTo(2);
    for (String line : old) {
      if (line.strip().startsWith("#") && !gone.contains(line)) {
        assertThat(after).as(as).contains(line);
      }
    }
  }

  private static Object read(String text) {
    Object read =
        new Load(LoadSettings.builder().setSchema(new FailsafeSchema()).build())
            .loadFromString(text.startsWith("\uFEFF") ? text.substring(1) : text);
    return read == null ? new LinkedHashMap<>(Map.of()) : read;
  }
}
