package propcap.evidence.germination;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.Tried;

/**
 * How often the 95 % limits of a germination test hold. A share of 1,000 has a standard error of
 * 0.7 points, one of 500 of 1 point.
 */
@Tag("guarantees")
class CoverageGuaranteesTest {
  private static final int TESTS = 1_000;
  private static final int LINES = 500;

  /**
   * Limits that hold in 93 to 97 % leave this range, over 1,000 tests, once or twice in a hundred.
   */
  private static final double LEAST = 92;

  private static final double MOST = 98;

  private static void assertHeld(Coverage coverage, double least, double most) {
    assertThat(coverage.percents())
        .isNotEmpty()
        .allSatisfy((what, percent) -> assertThat(percent).as(what).isBetween(least, most));
  }

  /** 85 % germinate, half of those by day 5, looked at daily for 14 days. */
  @ParameterizedTest(name = "{0} trays of 50 seeds, correlation {1}")
  @CsvSource({
    "1, 0", "3, 0", "3, 0.02", "4, 0", "4, 0.02", "4, 0.05", "8, 0", "8, 0.02", "8, 0.05"
  })
  void limitsOfATestThatWasLongEnoughHold(int trays, double correlation) {
    Coverage coverage =
        Coverage.ofTrays(new Trays.Law(0.85, correlation, 5, 0.25, 1, 14), trays, 50, TESTS);
    row(trays + " trays of 50 seeds, correlation " + correlation + ", 14 days", coverage);
    assertHeld(coverage, LEAST, MOST);
  }

  /**
   * What the answer says of so few trays, and docs of trays of which nearly all come up and which
   * differ much.
   */
  @ParameterizedTest(name = "share {0}, {1} trays, correlation {2}")
  @CsvSource({"0.85, 2, 0.02", "0.85, 2, 0.05", "0.95, 4, 0.05"})
  void limitsThatHoldLessOftenAreToldToDoSo(double share, int trays, double correlation) {
    Coverage coverage =
        Coverage.ofTrays(new Trays.Law(share, correlation, 5, 0.25, 1, 14), trays, 50, TESTS);
    row(
        trays
            + " trays of 50 seeds, share "
            + share
            + ", correlation "
            + correlation
            + ", 14 days (told to hold less often)",
        coverage);
    assertHeld(coverage, 80, MOST);
  }

  /**
   * As before, but counted no longer than to a day on which few or half are up. Where no upper
   * limit can be told, only the lower one can fail.
   */
  @ParameterizedTest(name = "{0} trays of {1} seeds, correlation {2}, half by day {3}, to day {4}")
  @CsvSource({
    "1, 200, 0, 5, 5",
    "1, 200, 0, 5, 6",
    "1, 200, 0, 5, 7",
    "1, 200, 0, 10, 9",
    "1, 50, 0, 5, 6",
    "4, 50, 0.02, 5, 6"
  })
  void limitsOfATestThatEndedEarlyHold(
      int trays, int seeds, double correlation, double half, int lastDay) {
    Coverage coverage =
        Coverage.ofTrays(
            new Trays.Law(0.85, correlation, half, 0.25, 1, lastDay), trays, seeds, TESTS);
    String tried =
        trays
            + " trays of "
            + seeds
            + " seeds, correlation "
            + correlation
            + ", half by day "
            + half;
    row(tried + ", ended on day " + lastDay, coverage);
    assertHeld(coverage, LEAST, 100);
  }

  /** The optimum may lie beyond all of them, between two, or just below the warmest. */
  @ParameterizedTest(name = "optimum {0} C, {1} trays at {2} C")
  @CsvSource({"40, 1, 10 15 20", "22, 3, 10 15 20 25 30", "19, 3, 10 15 20", "40, 2, 10 20"})
  void limitsOfTheBaseHold(double optimumC, int trays, String at) {
    double[] temperatures = Trays.numbers(at);
    Coverage coverage = Coverage.ofBase(optimumC, trays, LINES, temperatures);
    row(
        trays + " trays of 50 seeds at " + at + " C, optimum " + optimumC + " C, of 500 tests",
        coverage);
    assertHeld(coverage, 91, 99.5);
  }

  private static void row(String tried, Coverage coverage) {
    Tried.row("guarantees", "95 % limits of a germination test", tried, coverage.toString());
  }
}
