package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.files.scenario.CropBook;

class CropsCommandTest {
  @TempDir Path folder;

  @Test
  void everyCropIsListedInALineThatFitsAScreen() {
    Run run = Run.of("crops");
    assertThat(run.exitCode()).isZero();
    assertThat(run.out().lines()).allMatch(line -> line.length() <= 80);
    for (CropBook.Entry entry : CropBook.ofPropcap().entries()) {
      assertThat(run.out().lines())
          .filteredOn(line -> line.startsWith(entry.crop().name() + " "))
          .hasSize(1);
    }
  }

  /** Zinnia by hand: half by 6 days at 21 C, base 8 C: at 65 F, 18.33 C, 78 / 10.33 is 7.5. */
  @Test
  void aCropIsShownWithItsSourcesAndItsDaysAtATemperature() {
    Run run = Run.of("crops", "zinnia", "--at", "65F");
    assertThat(run.exitCode()).isZero();
    assertThat(run.out())
        .startsWith("zinnia (flower, tender)")
        .contains("    cells: 128")
        .contains("Half of the seedlings show after 7.5 days")
        .contains("at 18.3 C (65 F)")
        .contains("[ISU23] Iowa State University");
  }

  @Test
  void whereSeedDoesNotComeUpThatIsWhatIsSaid() {
    assertThat(Run.of("crops", "lettuce", "--at", "100 F").out())
        .contains("It does not come up at 37.8 C (100 F).")
        .doesNotContain("Infinity")
        .doesNotContain("NaN")
        .doesNotContain("From sowing to the bed");
    assertThat(Run.of("crops", "basil", "--at", "6.5 C").out())
        .contains("It does not grow on at 6.5 C (43.7 F).");
    Run all = Run.of("crops", "--at", "-5C");
    assertThat(all.out()).contains("never at -5 C").doesNotContain("Infinity");
    assertThat(all.out().lines()).allMatch(line -> line.length() <= 80);
  }

  @Test
  void aCropThatTheListLacksIsExitCode2WithTheNearest() {
    Run run = Run.of("crops", "zinia");
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err()).contains("no crop 'zinia'").contains("did you mean zinnia?");
  }

  @Test
  void aTemperatureWithoutItsUnitIsExitCode2() {
    Run run = Run.of("crops", "zinnia", "--at", "65");
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains("a unit is missing");
  }

  @Test
  void aListOfOnesOwnIsShownInItsPlace() throws IOException {
    Run.of("new", folder.resolve("farm").toString());
    Path own = folder.resolve("farm").resolve("crops.yaml");
    Run run = Run.of("crops", "--crops", own.toString());
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("snapdragon").doesNotContain("lisianthus");
    assertThat(Run.of("crops", "lettuce", "--crops", own.toString()).out())
        .contains("[HM54] Harrington and Minges");

    Files.writeString(own, Files.readString(own).replace("cells: 200", "cells: lots"));
    Run wrong = Run.of("crops", "--crops", own.toString());
    assertThat(wrong.exitCode()).isEqualTo(2);
    assertThat(wrong.err()).contains("crops.yaml:").contains("cells");
  }
}
