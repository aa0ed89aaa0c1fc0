package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Tried;

/** Names that a spreadsheet would work out, through every answer and back. */
@Tag("attack")
class NamesInTablesTest {
  private static final List<String> NAMES =
      List.of("=1+1", "+1+1", "-1+1", "@sum", "=HYPERLINK(\"http://x\"; \"y\")", "--", "'=1");

  @TempDir Path folder;

  @Test
  void noAnswerHasAFormulaAndABetterPlanIsReadBack() throws IOException {
    Path farm = folder.resolve("farm");
    assertThat(Run.of("new", farm.toString()).exitCode()).isZero();
    Path plan = farm.resolve("sowings.csv");
    String text = Files.readString(plan).replace("tom-a", "=lot").replace("zin-a", "@lot");
    for (String name : NAMES) {
      text = text.replaceFirst("\n[a-z]+-[0-9],", "\n\"" + name.replace("\"", "\"\"") + "\",");
    }
    Files.writeString(plan, text);
    String scenario = farm.resolve("scenario.yaml").toString();
    Path changes = farm.resolve("changes.csv");
    Files.writeString(changes, "name,shift of *\n'=1+1,1 day\n,2 days\n");
    int cells = 0;
    List<List<String>> questions =
        List.of(
            List.of("run", scenario),
            List.of("shift", scenario),
            List.of("sweep", scenario, "--changes", changes.toString()),
            List.of("bottleneck", scenario, "--steps", "1"),
            List.of("calendar", scenario),
            List.of("order", scenario),
            List.of("plan", scenario, "--tries", "3"));
    for (List<String> question : questions) {
      Path out = folder.resolve(question.get(0));
      List<String> command = new ArrayList<>(question);
      command.addAll(List.of("--seasons", "20", "--out", out.toString()));
      Run run = Run.of(command.toArray(String[]::new));
      assertThat(run.exitCode()).as(run.err()).isIn(Propcap.DONE, Propcap.NO);
      cells += cellsWithoutAFormula(out);
    }
    Files.copy(folder.resolve("plan").resolve("sowings.csv"), farm.resolve("better.csv"));
    Path better = farm.resolve("better.yaml");
    Files.writeString(better, "extends: scenario.yaml\nsowings: better.csv\n");
    Path again = folder.resolve("again");
    Run run = Run.of("run", better.toString(), "--seasons", "20", "--out", again.toString());
    assertThat(run.err()).isEmpty();
    String summary = Files.readString(again.resolve("summary.json"));
    for (String name : List.of("=1+1", "+1+1", "-1+1", "@sum", "--", "=1")) {
      assertThat(summary).contains("\"id\": \"" + name + "\"");
    }
    Tried.row(
        "attack",
        "no cell of a table is a formula, and a better plan with such names is read back",
        NAMES.size() + " names, " + questions.size() + " questions, " + cells + " cells",
        "none began with = + - @ but numbers; every name came back");
  }

  private static int cellsWithoutAFormula(Path out) throws IOException {
    int cells = 0;
    try (Stream<Path> files = Files.list(out)) {
      for (Path file : files.filter(f -> f.toString().endsWith(".csv")).toList()) {
        try (CsvReader<CsvRecord> rows = CsvReader.builder().ofCsvRecord(Files.readString(file))) {
          for (CsvRecord row : rows) {
            for (String cell : row.getFields()) {
              cells++;
              assertThat(cell.matches("(?s)[=+@-].*") && !cell.matches("-?[0-9.]+"))
                  .as(file + ": " + cell)
                  .isFalse();
            }
          }
        }
      }
    }
    return cells;
  }
}
