package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The report as a browser lays it out; skipped where there is no Chromium. */
class ReportInBrowserTest {
  @TempDir Path folder;
  private Path report;

  @BeforeEach
  void aReport() {
    assumeTrue(browser().isPresent(), "Chromium is not installed: the report is not opened");
    Path out = folder.resolve("out");
    Run.of("run", "scenarios/spring.yaml", "--seasons", "20", "--out", out.toString());
    report = out.resolve("report.html");
  }

  private static Optional<String> browser() {
    return Stream.of(System.getenv("PATH").split(File.pathSeparator, -1))
        .map(dir -> Path.of(dir, "chromium"))
        .filter(Files::isExecutable)
        .map(Path::toString)
        .findFirst();
  }

  private String open(Path page, String... more) throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(browser().orElseThrow());
    command.addAll(
        List.of(
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--disable-quic",
            "--no-first-run",
            "--disable-background-networking",
            "--disable-component-update",
            "--disable-sync",
            "--user-data-dir=" + folder.resolve("profile")));
    command.addAll(List.of(more));
    command.add(page.toUri().toString());
    Path printed = folder.resolve("printed");
    Process process =
        new ProcessBuilder(command)
            .redirectOutput(printed.toFile())
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    assertThat(process.waitFor(120, TimeUnit.SECONDS)).as("Chromium ends").isTrue();
    return Files.readString(printed, StandardCharsets.UTF_8);
  }

  @Test
  void theReportIsDrawn() throws Exception {
    Path picture = folder.resolve("report.png");
    open(report, "--screenshot=" + picture, "--window-size=1000,2000");
    // An empty page of this size is under 10 kB.
    assertThat(Files.size(picture)).isGreaterThan(50_000);
  }

  @Test
  void theReportFitsAPhone() throws Exception {
    assertThat(widthAt(500)).isLessThanOrEqualTo(500);
  }

  @Test
  void aPageThatIsTooWideForAPhoneIsNoticed() throws Exception {
    Files.writeString(
        report, Files.readString(report).replace("<body", "<body style='min-width:900px'"));
    assertThat(widthAt(500)).isGreaterThanOrEqualTo(900);
  }

  /** How wide the page is laid out in a window, which Chromium holds at 500 pixels or more. */
  private int widthAt(int window) throws Exception {
    Path measured = folder.resolve("measured.html");
    Files.writeString(
        measured,
        Files.readString(report)
            .replace(
                "</body>",
                "<script>document.title = 'w' + document.documentElement.scrollWidth</script></body>"));
    String dom = open(measured, "--dump-dom", "--window-size=" + window + ",900");
    Matcher matcher = Pattern.compile("<title>w(\\d+)</title>").matcher(dom);
    assertThat(matcher.find()).as("the page ran").isTrue();
    return Integer.parseInt(matcher.group(1));
  }
}
