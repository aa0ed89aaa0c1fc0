package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/**
 * What README and docs print is what the commands print. A block is marked {@code <!-- output: ...
 * -->} with the command's arguments; results go to another folder here.
 */
class PrintedInDocsTest {
  private static final Pattern BLOCK =
      Pattern.compile("<!-- output: (.+?) -->\\s*```\\n(.*?)```", Pattern.DOTALL);

  @TempDir Path folder;

  @TestFactory
  List<DynamicTest> everyPrintedOutputIsTrue() throws IOException {
    List<Path> docs = new ArrayList<>(List.of(Path.of("README.md")));
    try (DirectoryStream<Path> more = Files.newDirectoryStream(Path.of("docs"), "*.md")) {
      more.forEach(docs::add);
    }
    return docs.stream()
        .flatMap(PrintedInDocsTest::blocks)
        .map(block -> DynamicTest.dynamicTest(block.command, () -> check(block)))
        .toList();
  }

  private record Block(String command, String printed) {}

  private static Stream<Block> blocks(Path doc) {
    try {
      Matcher matcher = BLOCK.matcher(Files.readString(doc));
      return matcher.results().map(m -> new Block(m.group(1), m.group(2)));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void check(Block block) {
    String name = block.command.split(" ", 2)[0];
    Path out = folder.resolve(name);
    String[] args = (block.command + " --out " + out).split(" ", -1);
    Run run = Run.of(args);
    assertThat(run.err()).isEmpty();
    String stem = Path.of(args[1]).getFileName().toString().replaceFirst("\\.yaml$", "");
    String ending = name.equals("run") ? "" : "-" + name;
    String printed = run.out().replace(out.toString(), "results/" + stem + ending);
    assertThat(printed).isEqualTo(block.printed);
  }

  @TestFactory
  List<DynamicTest> everyScenarioReadsAndRuns() throws IOException {
    try (Stream<Path> scenarios = Files.list(Path.of("scenarios"))) {
      return scenarios
          .map(
              file ->
                  DynamicTest.dynamicTest(
                      file.toString(),
                      () -> {
                        Path out = folder.resolve(file.getFileName());
                        Run run =
                            Run.of(
                                "run", file.toString(), "--seasons", "5", "--out", out.toString());
                        assertThat(run.err()).isEmpty();
                        assertThat(run.exitCode()).isZero();
                      }))
          .toList();
    }
  }
}
