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
 * What README and docs print is what the commands print, and what {@code results} shows is what
 * they write. A block is marked {@code <!-- output: ... -->} with the command's arguments; results
 * go to another folder here. The blocks of a page are run in its order, on a farm {@code my-farm}
 * that {@code propcap new} wrote, into which files marked {@code <!-- file: my-farm/... -->} are
 * put.
 */
class PrintedInDocsTest {
  private static final Pattern BLOCK =
      Pattern.compile("<!-- (output|file): (.+?) -->\\s*```\\n(.*?)```", Pattern.DOTALL);

  /** What hangs on the clock and on which build it was that wrote a file. */
  private static final Pattern OF_ITS_MAKING =
      Pattern.compile(
          "(?m)^(DTSTAMP|LAST-MODIFIED|SEQUENCE):.*$"
              + "|(?<=Propcap |\"version\": \")([0-9]+(\\.[0-9]+)+|from source)");

  private static final String FARM = "my-farm";

  /** Commands that write no results, so that they take no folder for them. */
  private static final List<String> WITHOUT_FOLDER = List.of("weather", "crops");

  @TempDir Path folder;

  @TestFactory
  List<DynamicTest> everyPrintedOutputIsTrue() throws IOException {
    List<Path> docs = new ArrayList<>(List.of(Path.of("README.md")));
    try (DirectoryStream<Path> more = Files.newDirectoryStream(Path.of("docs"), "*.md")) {
      more.forEach(docs::add);
    }
    return docs.stream()
        .flatMap(doc -> blocks(doc).stream())
        .map(block -> DynamicTest.dynamicTest(block.toString(), () -> check(block)))
        .toList();
  }

  /** A block of a page, of a command's output or of a file's content. */
  private record Block(Path doc, boolean isFile, String named, String content) {
    @Override
    public String toString() {
      return named;
    }
  }

  private static List<Block> blocks(Path doc) {
    try {
      Matcher matcher = BLOCK.matcher(Files.readString(doc));
      return matcher
          .results()
          .map(m -> new Block(doc, m.group(1).equals("file"), m.group(2), m.group(3)))
          .toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void check(Block block) throws IOException {
    Path farm = folder.resolve(block.doc.getFileName()).resolve(FARM);
    if (!Files.exists(farm)) {
      assertThat(Run.of("new", farm.toString()).exitCode()).isZero();
    }
    if (block.isFile) {
      Files.writeString(farm.resolveSibling(block.named), block.content);
      return;
    }
    List<String> args = new ArrayList<>();
    for (String arg : block.named.split(" ", -1)) {
      args.add(arg.startsWith(FARM) ? farm.resolveSibling(arg).toString() : arg);
    }
    String results = resultsOf(args);
    Path out = farm.resolveSibling(results);
    if (!WITHOUT_FOLDER.contains(args.get(0))) {
      args.addAll(List.of("--out", out.toString()));
    }
    Run run = Run.of(args.toArray(String[]::new));
    assertThat(run.err()).isEmpty();
    String printed = run.out().replace(out.toString(), results).replace(farm.toString(), FARM);
    assertThat(printed).isEqualTo(block.content);
    if (Files.isDirectory(Path.of(results))) {
      compare(Path.of(results), out);
    }
  }

  /** The results that the repository shows are those that come of the command. */
  private static void compare(Path shown, Path made) throws IOException {
    List<Path> files = filesOf(made);
    assertThat(files.stream().map(Path::getFileName))
        .containsExactlyElementsOf(filesOf(shown).stream().map(Path::getFileName).toList());
    for (Path file : files) {
      Path same = shown.resolve(file.getFileName());
      String text = textOf(file);
      // How wide a chart's words are hangs on the machine's fonts.
      if (!text.contains("<svg")) {
        assertThat(text).as(same.toString()).isEqualTo(textOf(same));
      }
    }
  }

  /** All but Propcap's own record of them, which is not kept in the repository. */
  private static List<Path> filesOf(Path results) throws IOException {
    try (Stream<Path> files = Files.list(results)) {
      return files.filter(f -> !f.getFileName().toString().startsWith(".")).sorted().toList();
    }
  }

  private static String textOf(Path file) throws IOException {
    return OF_ITS_MAKING.matcher(Files.readString(file)).replaceAll("");
  }

  /** The folder that results go to; where it is given, it is taken out. */
  private static String resultsOf(List<String> args) {
    int given = args.indexOf("--out");
    if (given < 0) {
      return "results/" + folderOf(args);
    }
    args.remove(given);
    return args.remove(given);
  }

  /** The folder that results go to where none is given. */
  private static String folderOf(List<String> args) {
    String command = args.get(0);
    boolean isFit = command.equals("fit");
    String ending =
        switch (command) {
          case "run" -> "";
          case "germination" -> "-indices";
          case "fit" -> "-" + args.get(1);
          default -> "-" + command;
        };
    String file = args.get(isFit ? 2 : 1);
    return Path.of(file).getFileName().toString().replaceFirst("\\.(yaml|csv)$", "") + ending;
  }

  @TestFactory
  List<DynamicTest> everyScenarioReadsAndRuns() throws IOException {
    try (Stream<Path> scenarios = Files.list(Path.of("scenarios"))) {
      return scenarios
          .filter(file -> file.toString().endsWith(".yaml"))
          .map(
              file ->
                  DynamicTest.dynamicTest(
                      file.toString(),
                      () -> {
                        Path out = folder.resolve(file.getFileName());
                        List<String> args =
                            new ArrayList<>(
                                List.of(
                                    "run",
                                    file.toString(),
                                    "--seasons",
                                    "5",
                                    "--out",
                                    out.toString()));
                        if (Files.readString(file).contains("\nso-far:")) {
                          // Its log has days that are still to come by the clock.
                          args.addAll(List.of("--on", "2027-04-10"));
                        }
                        Run run = Run.of(args.toArray(String[]::new));
                        assertThat(run.err()).isEmpty();
                        assertThat(run.exitCode()).isZero();
                      }))
          .toList();
    }
  }
}
