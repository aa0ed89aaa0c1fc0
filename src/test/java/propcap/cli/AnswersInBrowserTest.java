package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.openqa.selenium.OutputType;
import propcap.report.Forecasts;
import propcap.report.Questions;
import propcap.report.bottleneck.BottlenecksAnswer;
import propcap.report.compare.ComparisonAnswer;
import propcap.report.forecast.ForecastAnswer;
import propcap.report.shift.ShiftsAnswer;
import propcap.report.size.SizingAnswer;
import propcap.results.Answer;
import propcap.web.Chromium;

/** The answers' pages as a browser lays them out; skipped where there is no Chromium. */
class AnswersInBrowserTest {
  private static final int PHONE = 390;
  private static final int DESK = 1280;

  /** Smaller type is hard to read at an arm's length, CSS pixels; from experience, not measured. */
  private static final double LEAST_TYPE = 11;

  private static final List<Path> PAGES = new ArrayList<>();

  @TempDir static Path folder;
  private static @Nullable Chromium window;

  @BeforeAll
  static void somePages() throws IOException {
    window = Chromium.start(DESK, 1000);
    List<Answer> answers =
        List.of(
            new ForecastAnswer(Forecasts.spring()),
            new ForecastAnswer(Forecasts.shortOfHands()),
            new ComparisonAnswer(Questions.comparison()),
            new BottlenecksAnswer(Questions.bottlenecks()),
            new SizingAnswer(Questions.sizing(), Questions.order()),
            new ShiftsAnswer(Questions.shifts(true)));
    for (int a = 0; a < answers.size(); a++) {
      Path page = folder.resolve(answers.get(a).kind().word() + a + ".html");
      Files.writeString(page, answers.get(a).files("test").values().iterator().next());
      PAGES.add(page);
    }
    answered(
        "now",
        "scenarios/in-season.yaml",
        "--on=2027-04-10",
        "--seasons=2",
        "--exactly",
        "--no-advice");
    Run.of("new", folder.resolve("farm").toString());
    String farm = folder.resolve("farm/scenario.yaml").toString();
    answered("latest", farm, "--seasons=2", "--exactly");
    answered("calendar", farm, "--seasons=2", "--exactly");
    answered("germination", "demo-data/germination-counts.csv");
  }

  /** Keeps the pages that a command writes. */
  private static void answered(String command, String... rest) throws IOException {
    Path out = folder.resolve(command);
    List<String> words = new ArrayList<>(List.of(command));
    words.addAll(List.of(rest));
    words.add("--out=" + out);
    Run run = Run.of(words.toArray(String[]::new));
    assertThat(run.exitCode()).as(run.err()).isZero();
    try (Stream<Path> files = Files.list(out)) {
      files
          .filter(file -> file.toString().endsWith(".html") && !file.endsWith("labels.html"))
          .sorted()
          .forEach(PAGES::add);
    }
  }

  @AfterAll
  static void closeBrowser() {
    PAGES.clear();
    if (window != null) {
      window.close();
    }
  }

  private static Chromium open(Path page, int width) {
    Chromium browser = Objects.requireNonNull(window);
    browser.resize(width, 900);
    browser.driver().get(page.toUri().toString());
    return browser;
  }

  private static List<String> faults(Path page, int width, double leastType) {
    return Layout.faults(open(page, width).driver(), leastType);
  }

  /** A page with something put in front of what is in it. */
  private static Path spoiled(Path page, String with) throws IOException {
    String html = Files.readString(page, StandardCharsets.UTF_8);
    Path spoiled = folder.resolve("spoiled.html");
    Files.writeString(spoiled, html.replace("<main>", "<main>" + with));
    return spoiled;
  }

  @Test
  void onAPhoneNothingIsCutOrTooSmallToRead() {
    for (Path page : PAGES) {
      assertThat(faults(page, PHONE, LEAST_TYPE)).as(page.toString()).isEmpty();
    }
  }

  @Test
  void onADeskNoTableIsCut() {
    for (Path page : PAGES) {
      assertThat(faults(page, DESK, 0)).as(page.toString()).isEmpty();
    }
  }

  @Test
  void whatIsCutOrTooSmallIsNoticed() throws IOException {
    Path report = PAGES.get(0);
    assertThat(faults(spoiled(report, "<p style='width:900px'>wide"), PHONE, 0))
        .anyMatch(f -> f.startsWith("wider than the screen"));
    assertThat(faults(spoiled(report, "<p style='font-size:9px'>small"), PHONE, LEAST_TYPE))
        .containsExactly("of 9.0 pixels: small");
    String svg = "<svg width=99 height=20 viewBox='0 0 99 20' font-size=12><text x=90 y=15>cut off";
    assertThat(faults(spoiled(report, svg + "</text></svg>"), PHONE, LEAST_TYPE))
        .containsExactly("cut: cut off");
    String table = "<div class=wide><table style='min-width:800px'><tr><td>far</table></div>";
    assertThat(faults(spoiled(report, table), PHONE, LEAST_TYPE))
        .anyMatch(f -> f.startsWith("to be scrolled sideways"));
  }

  /**
   * What is folded on a phone takes half of a page's length there; on a desk and on paper none is.
   */
  @Test
  void whatIsLongIsFoldedOnAPhoneAlone() {
    Chromium phone = open(PAGES.get(0), PHONE);
    assertThat(shown(phone, ".verdict, .first")).isPositive();
    assertThat(shown(phone, ".fold > summary")).isPositive();
    assertThat(shown(phone, ".fold table, .fold .chart")).isZero();
    Chromium desk = open(PAGES.get(0), DESK);
    assertThat(shown(desk, ".fold > summary")).isZero();
    assertThat(shown(desk, ".fold table, .fold .chart")).isPositive();
    phone.resize(PHONE, 900);
    var unused =
        phone
            .driver()
            .executeCdpCommand("Emulation.setEmulatedMedia", java.util.Map.of("media", "print"));
    assertThat(shown(phone, ".fold table, .fold .chart")).isPositive();
    unused =
        phone
            .driver()
            .executeCdpCommand("Emulation.setEmulatedMedia", java.util.Map.of("media", ""));
  }

  private static long shown(Chromium page, String css) {
    Object number =
        page.driver()
            .executeScript(
                "return [...document.querySelectorAll(arguments[0])]"
                    + ".filter((e) => e.checkVisibility()).length",
                css);
    return ((Number) Objects.requireNonNull(number)).longValue();
  }

  @Test
  void theReportIsDrawn() throws IOException {
    byte[] picture = open(PAGES.get(0), DESK).driver().getScreenshotAs(OutputType.BYTES);
    // An empty page of this size is under 10 kB.
    assertThat(picture.length).isGreaterThan(50_000);
  }
}
