package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.disk.Child;
import propcap.disk.Holder;

/** Two programs that want the same folder at once. */
class TwoRunsTest {
  @TempDir Path folder;

  @Test
  void theSecondRunIsToldWhoHoldsTheFolderAndAKilledOneHoldsNothing() throws Exception {
    Path farm = folder.resolve("farm");
    assertThat(Run.of("new", farm.toString()).exitCode()).isZero();
    Path out = folder.resolve("out");
    String[] command = {
      "run", farm.resolve("scenario.yaml").toString(), "--seasons", "20", "--out", out.toString()
    };
    try (Child first = Child.start(Holder.class, out.toString(), "propcap run other.yaml")) {
      assertThat(first.line()).startsWith("holds");
      Run second = Run.of(command);
      assertThat(second.exitCode()).isEqualTo(2);
      assertThat(second.out()).isEmpty();
      assertThat(second.err())
          .matches(
              "\\Q"
                  + out
                  + "\\E: in use by propcap run other\\.yaml \\(process "
                  + first.pid()
                  + ", since \\d+ [A-Z][a-z]+ \\d\\d:\\d\\d\\); wait until it has ended, or take"
                  + " another folder with --out\n");
      first.kill();
    }
    assertThat(Files.exists(out.resolve(".propcap").resolve("lock"))).isTrue();
    Run third = Run.of(command);
    assertThat(third.err()).isEmpty();
    assertThat(third.exitCode()).isZero();
    assertThat(out.resolve(".propcap")).doesNotExist();
  }
}
