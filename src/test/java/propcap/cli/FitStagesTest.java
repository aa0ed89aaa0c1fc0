package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Objects;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Crop;
import propcap.farm.Scenario;
import propcap.files.scenario.ScenarioReader;

class FitStagesTest {
  private static final String SCENARIO = "scenarios/spring.yaml";

  @TempDir Path folder;

  private Run fit(String log, String... more) throws IOException {
    Path file = folder.resolve("log.csv");
    Files.writeString(file, log);
    String[] args = {
      "fit", "stages", file.toString(), "--scenario", SCENARIO, "--out", out().toString()
    };
    String[] all = Arrays.copyOf(args, args.length + more.length);
    System.arraycopy(more, 0, all, args.length, more.length);
    return Run.of(all);
  }

  private Path out() {
    return folder.resolve("out");
  }

  private JsonObject crop() throws IOException {
    return JsonParser.parseString(Files.readString(out().resolve("stages.json")))
        .getAsJsonObject()
        .getAsJsonArray("crops")
        .get(0)
        .getAsJsonObject();
  }

  private static Crop crop(Scenario scenario, String name) {
    return Objects.requireNonNull(scenario.crops().get(name));
  }

  private static double value(JsonObject crop, String figure) {
    return crop.getAsJsonObject(figure).getAsJsonObject("learned").get("value").getAsDouble();
  }

  @Test
  void theDemonstrationsLogGivesAnEntryThatTheSimulatorReads() throws Exception {
    Run run = fit(Files.readString(Path.of("demo-data/tray-log.csv")));
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("tomato: growing on takes").contains("  tomato:\n");
    assertThat(run.out().lines().takeWhile(l -> !l.isBlank()).count()).isLessThanOrEqualTo(12);
    assertThat(out())
        .isDirectoryContaining("glob:**stages.html")
        .isDirectoryContaining("glob:**stage-trays.csv");
    Path changed = folder.resolve("changed.yaml");
    Files.writeString(
        changed,
        "extends: "
            + Path.of(SCENARIO).toAbsolutePath()
            + "\n"
            + Files.readString(out().resolve("stages.yaml")));
    Scenario scenario = ScenarioReader.read(changed);
    Crop old = crop(ScenarioReader.read(Path.of(SCENARIO)), "tomato");
    Crop now = crop(scenario, "tomato");
    // What made it was 19.5 days and 10 %; the list has 17 days and weighs 10 trays of 32.
    assertThat(now.growingOn().takesDays()).isBetween(18.2, 20.0);
    assertThat(now.growingOn().baseC()).isEqualTo(old.growingOn().baseC());
    assertThat(now.pottingOn().takesDays()).isEqualTo(old.pottingOn().takesDays());
    assertThat(now.hardening().frostLoss()).isEqualTo(old.hardening().frostLoss());
    assertThat(now.emergence()).isEqualTo(old.emergence());
  }

  @Test
  void theSameLogGivesTheSameBytes() throws Exception {
    // A sowing of each crop: all five take more than twice as long.
    String log =
        Files.readAllLines(Path.of("demo-data/tray-log.csv")).stream()
            .filter(row -> !row.startsWith("tomato-25b") && !row.startsWith("tomato-25c"))
            .filter(row -> !row.startsWith("zinnia-25b"))
            .collect(Collectors.joining("\n", "", "\n"));
    fit(log);
    assertThat(out().resolve("stages.json")).content().contains("tomato").contains("zinnia");
    String first = Files.readString(out().resolve("stages.html"));
    fit(log);
    assertThat(Files.readString(out().resolve("stages.html"))).isEqualTo(first);
  }

  @Test
  void oneTrayShiftsTheListALittle() throws Exception {
    Run run =
        fit(
            """
            sowing,tray,event,date,plants
            tomato-1,1,off-heat,2025-03-27,66
            tomato-1,1,ready,2025-04-22,63
            """);
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("by 1 tray and the crop list").doesNotContain("NaN");
    assertThat(value(crop(), "takesDays")).isBetween(17.0, 18.0);
    assertThat(value(crop(), "loss")).isBetween(0.02, 0.025);
    assertThat(value(crop(), "hardeningLoss")).isEqualTo(0.02);
  }

  @Test
  void theListWeighsWhatItIsToldTo() throws Exception {
    String log = Files.readString(Path.of("demo-data/tray-log.csv"));
    fit(log, "--list-weighs", "1");
    double light = value(crop(), "takesDays");
    fit(log, "--list-weighs", "1000");
    double heavy = value(crop(), "takesDays");
    assertThat(light).isGreaterThan(19.3);
    assertThat(heavy).isBetween(17.0, 17.3);
    assertThat(fit(log, "--list-weighs", "0").exitCode()).isEqualTo(2);
  }

  @Test
  void aLogThatTellsNothingLeavesTheListAsItIs() throws Exception {
    Run run = fit("sowing,tray,event,date,plants\ncosmos-1,1,sown,2025-04-20,72\n");
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("no tray tells");
    Crop cosmos = crop(ScenarioReader.read(Path.of(SCENARIO)), "cosmos");
    assertThat(value(crop(), "takesDays")).isEqualTo(cosmos.growingOn().takesDays());
    assertThat(value(crop(), "outbreakChance")).isEqualTo(cosmos.growingOn().dampingOff().chance());
  }

  @Test
  void allLostAndNoneLostAreAnswered() throws Exception {
    StringBuilder dead = new StringBuilder("sowing,tray,event,date,plants\n");
    StringBuilder alive = new StringBuilder("sowing,tray,event,date,plants\n");
    for (int tray = 1; tray <= 5; tray++) {
      String row = "tomato-1," + tray + ",off-heat,2025-03-27,66\ntomato-1," + tray;
      dead.append(row).append(",thrown-out,2025-04-05,0\n");
      alive.append(row).append(",ready,2025-04-20,66\n");
    }
    assertThat(fit(dead.toString()).exitCode()).isZero();
    assertThat(value(crop(), "outbreakChance")).isGreaterThan(0.3);
    assertThat(value(crop(), "loss")).isLessThan(0.05);
    assertThat(fit(alive.toString()).exitCode()).isZero();
    assertThat(value(crop(), "loss")).isLessThan(0.02);
    assertThat(Files.readString(out().resolve("stages.html"))).doesNotContain("NaN");
  }

  @Test
  void faultsAreExitCode2AndNothingIsWritten() throws Exception {
    Run run =
        fit(
            """
            sowing,tray,event,date,plants
            tomato-1,1,redy,2025-03-27,66
            tomat-1,1,ready,2025-04-22,63
            """);
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains("log.csv:2:").contains("did you mean ready?");
    assertThat(run.err()).contains("log.csv:3:").contains("tomato-1?");
    assertThat(out()).doesNotExist();
    assertThat(Run.of("fit", "stages", "no.csv").exitCode()).isEqualTo(2);
    assertThat(Run.of("fit", "stages", "no.csv", "--scenario", SCENARIO).err())
        .contains("no file 'no.csv'");
  }
}
