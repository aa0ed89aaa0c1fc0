package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The commands that ask what to do, end to end on the demonstration's farm. */
class QuestionsTest {
  private static final String SPRING = "scenarios/spring.yaml";

  @TempDir Path folder;

  private Run ask(String... args) {
    List<String> all = new ArrayList<>(List.of(args));
    all.addAll(List.of("--seasons", "60", "--out", folder.resolve("out").toString()));
    return Run.of(all.toArray(String[]::new));
  }

  @Test
  void compareAnswersWithPageDataAndTables() {
    Run run = ask("compare", SPRING, "scenarios/extra-greenhouse.yaml");
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("An extra greenhouse").contains("±");
    assertThat(folder.resolve("out"))
        .isDirectoryContaining("glob:**comparison.html")
        .isDirectoryContaining("glob:**comparison.json")
        .isDirectoryContaining("glob:**comparison.csv");
  }

  @Test
  void aFileIsComparedWithAnotherAndNotWithItself() {
    assertBad("is named twice", ask("compare", SPRING, "./" + SPRING));
    assertBad("compare needs two scenarios or more", ask("compare", SPRING));
  }

  @Test
  void aPlaceWithoutACostIsNotFree() throws IOException {
    Path file = folder.resolve("free.yaml");
    Path spring = Path.of(SPRING).toAbsolutePath();
    Files.writeString(
        file,
        "extends: "
            + folder.toAbsolutePath().relativize(spring)
            + "\nname: More\nplaces:\n  - {name: Glasshouse 2, like: Glasshouse}\n");
    Run run = ask("compare", SPRING, file.toString());
    assertThat(run.err()).isEmpty();
    assertThat(run.out())
        .contains("Glasshouse 2 has no cost in the scenario")
        .contains("Give it a cost");
    assertThat(Files.readString(folder.resolve("out").resolve("comparison-money.csv")))
        .contains("More,Glasshouse 2,Glasshouse 2,,,");
  }

  @Test
  void scenariosInDifferentCurrenciesAreAFaultAndNotASubtraction() throws IOException {
    Path file = folder.resolve("dollars.yaml");
    Path spring = Path.of(SPRING).toAbsolutePath();
    Files.writeString(
        file,
        "extends: "
            + folder.toAbsolutePath().relativize(spring)
            + "\nname: In dollars\nmoney: {currency: USD}\n");
    assertBad(
        "Spring at Tern Hill reckons in EUR and In dollars in USD",
        ask("compare", SPRING, file.toString()));
    assertThat(folder.resolve("out")).doesNotExist();
  }

  @Test
  void whatIsNoWholeNumberIsSaidToBeNone() {
    assertBad("'abc' is not a whole number", size("Glasshouse", "abc", "100", "met>=90%"));
    assertBad("'1e3' is not a whole number", size("Glasshouse", "0", "1e3", "met>=90%"));
    assertBad("'99999999999' is too large", size("Glasshouse", "0", "99999999999", "met>=90%"));
    assertBad("'x' is not a whole number", ask("shift", SPRING, "--seed", "x"));
  }

  @Test
  void bottleneckAnswers() {
    Run run = ask("bottleneck", SPRING, "--steps", "1");
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("Glasshouse");
    assertThat(folder.resolve("out")).isDirectoryContaining("glob:**bottleneck.html");
  }

  @Test
  void sizeAnswersAndSaysNoWithExitCode3() {
    String[] question = {
      "size",
      SPRING,
      "--place",
      "Glasshouse",
      "--from",
      "200",
      "--to",
      "300",
      "--step",
      "50",
      "--goal",
      "on-time>=50%"
    };
    Run yes = ask(question);
    assertThat(yes.exitCode()).isZero();
    assertThat(yes.out()).contains("200 spaces");
    question[question.length - 1] = "on-time>=100%";
    Run no = ask(question);
    assertThat(no.exitCode()).isEqualTo(3);
    assertThat(no.out()).contains("short of the goal").contains("What holds it back there");
    List<String> some = new ArrayList<>(List.of(question));
    some.addAll(List.of("--match", "snapdragon*"));
    assertThat(ask(some.toArray(String[]::new)).out())
        .contains("What holds the 4 sowings of snapdragon back there: ")
        .contains("In the whole house: ")
        .containsPattern("Larger\\s+sizes were not tried.");
  }

  private Run pair(String... ladders) {
    List<String> args =
        new ArrayList<>(
            List.of("size", SPRING, "--place", "Chamber", "--place", "Glasshouse", "--goal"));
    args.add("on-time>=50%");
    args.addAll(List.of(ladders));
    return ask(args.toArray(String[]::new));
  }

  @Test
  void twoPlacesHaveALadderEachOrOneForBoth() throws IOException {
    Run each = pair("--from", "40", "--to", "60", "--from", "200", "--to", "300", "--step", "100");
    assertThat(each.err()).isEmpty();
    assertThat(each.out()).contains("40 spaces of Chamber and 200 of Glasshouse are needed");
    assertThat(Files.readString(folder.resolve("out").resolve("size.csv")))
        .contains("\n40,200,")
        .contains("\n40,300,")
        .doesNotContain("\n60,")
        .doesNotContain("\n200,");
    Run both = pair("--from", "100", "--to", "200", "--step", "100");
    assertThat(both.out()).contains("100 spaces of Chamber and 100 of Glasshouse are needed");
    assertBad(
        "--from is given 3 times and --place 2 times; give it once for all",
        pair("--from", "1", "--from", "2", "--from", "3", "--to", "60"));
  }

  /** Near 320 spaces the goal is reached: sixty springs cannot tell on which side. */
  @Test
  void whereTheSpringsRunOutNothingIsGuaranteed() throws IOException {
    Run run =
        ask(
            "size",
            SPRING,
            "--place",
            "Glasshouse",
            "--from",
            "280",
            "--to",
            "340",
            "--step",
            "20",
            "--goal",
            "met>=80%",
            "--match",
            "snapdragon*");
    assertThat(run.out())
        .startsWith("Not decided in 75 springs: ")
        .contains("more springs would tell more")
        .doesNotContain("or within 2 percentage points");
    Path out = folder.resolve("out");
    assertThat(Files.readString(out.resolve("size.json")))
        .contains("\"guaranteed\": false")
        .contains("Not decided in 75 springs: ");
    assertThat(Files.readString(out.resolve("size.html"))).contains("Not decided in 75 springs: ");
  }

  @Test
  void shiftAnswers() {
    Run run = ask("shift", SPRING, "--match", "zinnia*");
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("zinnia*");
    assertThat(folder.resolve("out")).isDirectoryContaining("glob:**shift.html");
  }

  @Test
  void badQuestionsAreExitCode2AndSayWhatWouldBeRight() {
    assertBad("no place is named 'Glashouse'", size("Glashouse", "0", "100", "met>=90%"));
    assertBad("Glasshouse", size("Glashouse", "0", "100", "met>=90%"));
    assertBad("--from 0 --to 400", size("Glasshouse", "100", "0", "met>=90%"));
    assertBad("met>=90%", size("Glasshouse", "0", "100", "most"));
    assertBad("no sowing's id matches", ask("shift", SPRING, "--match", "orchid*"));
    assertBad("outside the season", ask("shift", SPRING, "--from", "-60", "--to", "0"));
    assertBad("no.yaml", ask("compare", SPRING, "no.yaml"));
    assertThat(folder.resolve("out")).doesNotExist();
  }

  private Run size(String place, String from, String to, String goal) {
    return ask("size", SPRING, "--place", place, "--from", from, "--to", to, "--goal", goal);
  }

  private static void assertBad(String message, Run run) {
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains(message).doesNotContain("Exception");
  }
}
