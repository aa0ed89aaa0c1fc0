package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The usual program holds nothing of Spark, and says how to get what does. */
class WithoutSparkTest {
  private static final String EXAMPLE = "src/test/resources/propcap/example/scenario.yaml";

  @TempDir private Path folder;

  @ParameterizedTest
  @ValueSource(strings = {"run", "bottleneck", "calendar", "order"})
  void aClusterIsRefusedWithAWord(String question) {
    Path out = folder.resolve("out");
    Run run = Run.of(question, EXAMPLE, "--out", out.toString(), "--on", "spark://127.0.0.1:7077");
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.err().lines())
        .singleElement()
        .asString()
        .isEqualTo(
            "--on spark://127.0.0.1:7077: this program was built without Spark. Build the one with"
                + " it by mvn -B -Pspark -DskipTests package, and start it as docs/cluster.md"
                + " says");
    assertThat(out).doesNotExist();
  }
}
