package propcap.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.Crop;
import propcap.files.CropBook;

/** The crop list against what its sources print. */
class PublishedTimesTest {
  /** Temperatures of the list are rounded to half a degree C, weeks come of whole days. */
  private static final double HALF_A_DEGREE = 0.5;

  private static final double HALF_A_DAY_IN_WEEKS = 0.5 / 7;

  static List<PublishedRow> times() {
    return PublishedRow.of("published-times.csv");
  }

  static List<PublishedRow> leastGermination() {
    return PublishedRow.of("least-germination.csv");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("times")
  void anEntryNamesTheSourceThatItIsHeldAgainst(PublishedRow row) {
    assertThat(row.isSourcedBy(row.text("source"))).isTrue();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("times")
  void seedlingsShowWithinThePublishedDaysAtThePublishedTemperature(PublishedRow row) {
    Crop.Emergence emergence = row.crop().emergence();
    if (row.has("F from")) {
      assertThat(emergence.atC())
          .isBetween(
              celsius(row.number("F from")) - HALF_A_DEGREE,
              celsius(row.number("F to")) + HALF_A_DEGREE);
    }
    if (row.has("days from")) {
      assertThat(emergence.halfByDays()).isBetween(row.number("days from"), row.number("days to"));
      // A range ends when most are up; a single figure says nothing of the last.
      if (row.number("days from") < row.number("days to")) {
        assertThat(emergence.mostByDays()).isLessThanOrEqualTo(row.number("days to"));
      }
    }
  }

  private static double celsius(double fahrenheit) {
    return (fahrenheit - 32) * 5 / 9;
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("times")
  void sowingToPlantingTakesThePublishedWeeks(PublishedRow row) {
    if (row.has("weeks from")) {
      assertThat(StageDays.asGiven(row.crop()).weeksToBed())
          .isBetween(
              row.number("weeks from") - HALF_A_DAY_IN_WEEKS,
              row.number("weeks to") + HALF_A_DAY_IN_WEEKS);
    }
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
}
