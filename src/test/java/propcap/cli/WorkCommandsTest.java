package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The calendar and the order list, end to end on the demonstration's farm. */
class WorkCommandsTest {
  private static final String SPRING = "scenarios/spring.yaml";

  @TempDir Path folder;

  private Run ask(String... args) {
    return ask(Run.EVENING, args);
  }

  private Run ask(Instant moment, String... args) {
    List<String> all = new ArrayList<>(List.of(args));
    all.addAll(List.of("--seasons", "30", "--out", folder.resolve("out").toString()));
    return Run.at(moment, all.toArray(String[]::new));
  }

  private Map<String, String> contents() throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.list(folder.resolve("out"))) {
      for (Path file : files.filter(f -> !f.getFileName().toString().startsWith(".")).toList()) {
        contents.put(file.getFileName().toString(), Files.readString(file));
      }
    }
    return contents;
  }

  @Test
  void calendarWritesSheetsLabelsTablesAndAFeed() throws IOException {
    Run run = ask("calendar", SPRING, "--week", "2027-W12", "--threads", "1");
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("cabbage-3 18").contains("22–28 Mar");
    Map<String, String> one = contents();
    assertThat(one)
        .containsOnlyKeys(
            "weeks.html",
            "months.html",
            "labels.html",
            "calendar.ics",
            "calendar.csv",
            "calendar.json");
    assertThat(one.values()).allSatisfy(WorkCommandsTest::isFinite);
    assertThat(one.get("weeks.html")).contains("Week 12").doesNotContain("Week 13");
    String labels = text(one, "labels.html");
    assertThat(run.out())
        .contains("Sow: " + (labels.split("class=\"id\"", -1).length - 1) + " tray");
    assertThat(text(one, "calendar.csv").lines().skip(1))
        .allMatch(row -> row.contains("2027-03-2"));
    // Later and on more threads: only the calendar file says when it was written.
    ask(Run.EVENING.plusSeconds(3600), "calendar", SPRING, "--week", "2027-W12", "--threads", "3");
    Map<String, String> later = contents();
    assertThat(text(one, "calendar.ics")).contains("DTSTAMP:20261130T174510Z");
    assertThat(text(later, "calendar.ics")).contains("DTSTAMP:20261130T184510Z");
    one.computeIfPresent("calendar.ics", (name, feed) -> withoutStamps(feed));
    later.computeIfPresent("calendar.ics", (name, feed) -> withoutStamps(feed));
    assertThat(later).isEqualTo(one);
  }

  private static String withoutStamps(String feed) {
    return feed.replaceAll("(DTSTAMP|LAST-MODIFIED|SEQUENCE):[0-9TZ]+", "$1");
  }

  @Test
  void orderWritesThePageAndTheTables() throws IOException {
    Run run = ask("order", SPRING, "--chance", "80%", "--threads", "1");
    assertThat(run.err()).isEmpty();
    assertThat(run.exitCode()).isZero();
    assertThat(run.out()).contains("with 80 %").contains("seeds of 33 lots");
    Map<String, String> one = contents();
    assertThat(one).containsOnlyKeys("order.html", "order.csv", "order.json");
    assertThat(one.values()).allSatisfy(WorkCommandsTest::isFinite);
    ask("order", SPRING, "--chance", "80%", "--threads", "3");
    assertThat(contents()).isEqualTo(one);
  }

  private static String text(Map<String, String> contents, String file) {
    return contents.getOrDefault(file, "");
  }

  private static void isFinite(String file) {
    assertThat(file).doesNotContain("NaN").doesNotContain("Infinity");
  }

  @Test
  void badOptionsAreExitCode2AndSayWhatWouldBeRight() {
    assertBad("such as 2027-W12", ask("calendar", SPRING, "--week", "12"));
    assertBad("outside the season", ask("calendar", SPRING, "--week", "2027-W40"));
    assertBad("outside the season", ask("calendar", SPRING, "--to", "2026-12-31"));
    assertBad("2027-05-02", ask("calendar", SPRING, "--from", "2027-05-02", "--to", "2027-05-01"));
    assertBad("not for both", ask("calendar", SPRING, "--week", "2027-W12", "--to", "2027-05-01"));
    assertBad("--from", ask("calendar", SPRING, "--from", "May"));
    assertBad("do not fit on A4", ask("calendar", SPRING, "--rows", "9"));
    assertBad("such as 70x37mm", ask("calendar", SPRING, "--label", "large"));
    assertBad("such as 90%", ask("order", SPRING, "--chance", "100%"));
    assertBad("such as 90%", ask("order", SPRING, "--chance", "90"));
    assertBad("no.yaml", ask("order", "no.yaml"));
    assertThat(folder.resolve("out")).doesNotExist();
  }

  private static void assertBad(String message, Run run) {
    assertThat(run.exitCode()).isEqualTo(2);
    assertThat(run.err()).contains(message).doesNotContain("Exception");
  }
}
