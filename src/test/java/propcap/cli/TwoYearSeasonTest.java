package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A season from November to July: no day of its first year is told as if it were of the second. */
class TwoYearSeasonTest {
  /** A day of November or December without its year, beside it or at the end of its span. */
  private static final Pattern BARE =
      Pattern.compile(
          "\\d(?: |&nbsp;|\u00a0)(?:Nov|Dec)(?:ember)?\\b(?!(?: |&nbsp;|\u00a0)\\d{4})(?! – \\d+ \\w+ \\d{4})");

  @TempDir Path folder;

  private Path scenario() throws IOException {
    String plan =
        Files.readString(Path.of("demo-data/sowings.csv"))
            .lines()
            .filter(row -> row.matches("(id|onion-1|tomato-1|zinnia-1|lettuce-1),.*"))
            .collect(Collectors.joining("\n", "", "\n"));
    Files.writeString(
        folder.resolve("sowings.csv"),
        plan.replace(
                "onion-1,onion,onion-a,2027-01-11,22,3600,2027-03-22,2027-04-10",
                "onion-1,onion,onion-a,2026-11-23,22,3600,2027-03-22,2027-04-10")
            + "winter-1,lettuce,let-w,2026-11-03,6,300,2026-12-21,2026-12-31,2027-03-20,\n");
    return Files.writeString(
        folder.resolve("winter.yaml"),
        "extends: "
            + Path.of("scenarios/spring.yaml").toAbsolutePath()
            + "\nseason: {start: 2026-11-02, end: 2027-07-04}\n"
            + "sowings: sowings.csv\n");
  }

  private List<String> told(String... command) throws IOException {
    List<String> args = new ArrayList<>(List.of(command));
    args.addAll(
        List.of("--seasons", "2", "--threads", "1", "--out", folder.resolve("out").toString()));
    Run run = Run.of(args.toArray(String[]::new));
    assertThat(run.exitCode()).as(run.err()).isZero();
    List<String> told = new ArrayList<>(run.out().lines().toList());
    try (Stream<Path> files = Files.list(folder.resolve("out"))) {
      for (Path file : files.filter(f -> f.toString().matches(".*\\.(html|ics)")).toList()) {
        // A sheet's head names the year once, for all its days; an axis does so at its start.
        String text =
            Files.readString(file)
                .replaceAll("(?s)<svg.*?</svg>", "")
                .replaceAll("(?s)<thead>.*?</thead>", "")
                .replaceAll("<h2 class=\"day\">.*?</h2>", "")
                .replace("\r\n ", "");
        told.addAll(text.lines().map(l -> file.getFileName() + ": " + l).toList());
      }
    }
    return told;
  }

  @Test
  void theReportNeverReadsWrong() throws IOException {
    List<String> told = told("run", scenario().toString());

    assertThat(told).noneMatch(BARE.asPredicate()).anyMatch(l -> l.contains("Nov 2026"));
    // Days of the year in which it ends need none.
    assertThat(told).noneMatch(l -> l.matches(".*by \\d+ (May|June) 2027.*"));
    assertThat(Files.readString(folder.resolve("out/report.html")))
        .contains(">1 Dec 2026<", ">1 Jan 2027<", ">1 Feb<");
  }

  @Test
  void theSheetsTheFeedAndTheTerminalNeverReadWrong() throws IOException {
    List<String> told = told("calendar", scenario().toString());

    assertThat(told)
        .noneMatch(BARE.asPredicate())
        .anyMatch(l -> l.contains("28 Dec 2026 – 3 Jan 2027"))
        .anyMatch(l -> l.contains("labels.html") && l.contains("Nov 2026"))
        .anyMatch(l -> l.contains("calendar.ics") && l.contains("Nov 2026"));
  }

  /** A bed of the year after next, which a copied plan may have, is not of this summer. */
  @Test
  void aBedOfAnotherYearIsToldWithIt() throws IOException {
    Path file = scenario();
    Path plan = folder.resolve("sowings.csv");
    Files.writeString(
        plan,
        Files.readString(plan)
            .replaceAll(
                "(tomato-1,tomato,[^,]*,[^,]*,[^,]*,[^,]*,[^,]*,)2027(-[^,]*,)2027",
                "$12028$22028"));

    assertThat(told("run", file.toString())).anyMatch(l -> l.contains("May 2028"));
  }
}
