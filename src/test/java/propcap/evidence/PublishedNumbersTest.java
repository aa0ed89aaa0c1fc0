package propcap.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.Crop;
import propcap.farm.Materials;
import propcap.files.scenario.CropBook;

/** The crop list against what its sources print, and docs/crops.md against both. */
class PublishedNumbersTest {
  private static final Path DOCS = Path.of("docs", "crops.md");

  /** Temperatures of the list are rounded to half a degree C. */
  private static final double HALF_A_DEGREE = 0.5;

  /** Sources whose days are of the first seedlings, of the mean of lots, or of roots on paper. */
  private static final Set<String> FIRST_OR_MEAN = Set.of("ISU14", "DEM", "HDPH04");

  static List<PublishedRow> leastGermination() {
    return PublishedRow.of("least-germination.csv");
  }

  private static List<PublishedRow> times() {
    return PublishedRow.of("published-times.csv");
  }

  /** Why the list is not what a source prints, by crop, source and what. */
  private static Map<String, String> reasons() {
    return PublishedRow.of("differences.csv").stream()
        .collect(
            Collectors.toMap(
                r -> r.name() + "," + r.text("source") + "," + r.text("what"), r -> r.text("why")));
  }

  @Test
  void anEntryLiesWithinEveryPublishedRangeButForTheDifferencesNamed() {
    assertThat(PublishedRanges.ofTheList().differences().stream().map(PublishedDifference::key))
        .as("%s", PublishedRanges.ofTheList().differences())
        .containsExactlyInAnyOrderElementsOf(reasons().keySet());
    assertThat(reasons().values()).noneMatch(String::isBlank);
  }

  /** The twin: geranium was 1.6 times as slow as its source; so slow, half of all would be seen. */
  @Test
  void daysSixtenthsTooLongWouldBeNoticed() {
    long days =
        times().stream()
            .filter(r -> r.has("days from") && r.text("source").equals("ISU23"))
            .count();
    assertThat(
            PublishedRanges.of(c -> slower(c, 1.6)).differences().stream()
                .filter(d -> d.what().equals("days") && d.source().equals("ISU23"))
                .count())
        .isGreaterThan(days / 2);
  }

  private static Crop slower(Crop crop, double times) {
    Crop.Emergence e = crop.emergence();
    return new Crop(
        crop.name(),
        crop.cells(),
        crop.seedsPerCell(),
        crop.germination(),
        new Crop.Emergence(
            e.baseC(),
            e.optimumC(),
            e.ceilingC(),
            e.atC(),
            times * e.halfByDays(),
            times * e.mostByDays()),
        crop.germinateIn(),
        crop.leaveAt(),
        crop.pullAfterDays(),
        crop.standWindowDays(),
        crop.failBelow(),
        crop.growingOn(),
        crop.pottingOn(),
        crop.hardening(),
        Materials.NOT_KNOWN);
  }

  @Test
  void anEntryNamesEverySourceThatItIsHeldAgainst() {
    Stream.of(times(), PublishedRow.of("cardinal-temperatures.csv"))
        .flatMap(List::stream)
        .forEach(r -> assertThat(r.isSourcedBy(r.text("source"))).as("%s", r).isTrue());
  }

  /** Nine in ten are up by the end of the latest published days, where any source has a range. */
  @Test
  void flowersAreUpByTheEndOfThePublishedDays() {
    for (CropBook.Entry entry : PublishedRow.LIST.entries()) {
      String name = entry.crop().name();
      List<PublishedRow> days =
          rowsOf(name, r -> r.has("days from") && !FIRST_OR_MEAN.contains(r.text("source")));
      boolean ranges = days.stream().anyMatch(r -> !r.text("days from").equals(r.text("days to")));
      if (entry.kind().equals("flower") && ranges) {
        assertThat(entry.crop().emergence().mostByDays())
            .as(name)
            .isLessThanOrEqualTo(
                days.stream().mapToDouble(r -> r.number("days to")).max().orElseThrow());
      }
    }
  }

  /** Vegetables come up at other temperatures too: their days are of a table of temperatures. */
  @Test
  void aFlowerComesUpAndIsGrownOnAtATemperatureThatASourceNames() {
    for (CropBook.Entry entry : PublishedRow.LIST.entries()) {
      Crop crop = entry.crop();
      if (entry.kind().equals("flower")) {
        isNamed(crop.name(), "F", crop.emergence().atC());
      }
      isNamed(crop.name(), "grow F", crop.growingOn().atC());
    }
  }

  private static void isNamed(String crop, String what, double atC) {
    List<PublishedRow> rows = rowsOf(crop, r -> r.has(what + " from"));
    if (!rows.isEmpty()) {
      assertThat(rows)
          .as("%s %s: %s C", crop, what, atC)
          .anyMatch(
              r ->
                  atC >= PublishedRanges.celsius(r.number(what + " from")) - HALF_A_DEGREE
                      && atC <= PublishedRanges.celsius(r.number(what + " to")) + HALF_A_DEGREE);
    }
  }

  private static List<PublishedRow> rowsOf(String crop, Function<PublishedRow, Boolean> which) {
    return times().stream().filter(r -> r.name().equals(crop) && which.apply(r)).toList();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("leastGermination")
  void seedIsNoPoorerThanMayBeSold(PublishedRow row) {
    CropBook.Entry entry = row.entry();
    assertThat(row.isSourcedBy(row.text("rule"))).isTrue();
    assertThat(100 * entry.crop().germination().rate())
        .isGreaterThanOrEqualTo(row.number("percent"));
    assertThat(String.join(" ", entry.text()))
        .contains(row.text("percent") + " % at least [" + row.text("rule") + "]");
  }

  @Test
  void everyVegetableAndHerbIsHeldAgainstItsLegalMinimum() {
    assertThat(PublishedRow.LIST.entries())
        .filteredOn(e -> !e.kind().equals("flower"))
        .extracting(e -> e.crop().name())
        .isSubsetOf(leastGermination().stream().map(PublishedRow::name).toList());
  }

  @Test
  void theDocsNameEveryDifference() throws IOException {
    assertThat(Files.readString(DOCS)).contains(differences());
  }

  private static String differences() {
    PublishedRanges ranges = PublishedRanges.ofTheList();
    StringBuilder text = new StringBuilder();
    text.append(
        "Of %d published figures and ranges, the list lies within %d. It does not lie within these %d:%n%n"
            .formatted(
                ranges.held(),
                ranges.held() - ranges.differences().size(),
                ranges.differences().size()));
    text.append("| crop | source | what | it says | the list | why |\n|---|---|---|---|---|---|\n");
    List<PublishedDifference> byCrop =
        ranges.differences().stream()
            .sorted(Comparator.comparing(PublishedDifference::crop))
            .toList();
    for (PublishedDifference d : byCrop) {
      text.append(
          "| %s | %s | %s | %s | %s | %s |%n"
              .formatted(
                  d.crop(),
                  d.source(),
                  d.what(),
                  d.published(),
                  d.listed(),
                  reasons().getOrDefault(d.key(), "")));
    }
    return text.toString();
  }

  @Test
  void theDocsNameTheEntriesWhoseDaysOrWeeksAreFromMemory() throws IOException {
    Set<String> days = named(times().stream().filter(r -> r.has("days from")));
    days.addAll(named(PublishedRow.of("days-to-emergence.csv").stream()));
    Set<String> weeks = named(times().stream().filter(r -> r.has("weeks from")));
    assertThat(Files.readString(DOCS).replaceAll("\\s+", " "))
        .contains("No days to show were found published of " + without(days) + ".")
        .contains("No weeks were found published of " + without(weeks) + ".");
  }

  private static Set<String> named(Stream<PublishedRow> rows) {
    return rows.map(PublishedRow::name).collect(Collectors.toCollection(TreeSet::new));
  }

  private static String without(Set<String> published) {
    List<String> memory =
        PublishedRow.LIST.entries().stream()
            .map(e -> e.crop().name())
            .filter(name -> !published.contains(name))
            .toList();
    return memory.size() + " entries: " + String.join(", ", memory);
  }
}
