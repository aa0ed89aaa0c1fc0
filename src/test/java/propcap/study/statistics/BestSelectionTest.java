package propcap.study.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class BestSelectionTest {
  private static double[] always(double number, int seasons) {
    double[] numbers = new double[seasons];
    Arrays.fill(numbers, number);
    return numbers;
  }

  /** Even and odd seasons differ by 20; the second is ahead by 2 in all, the third by 1 or 3. */
  private static double[] swinging(int seasons, double even, double odd) {
    double[] numbers = new double[seasons];
    for (int s = 0; s < seasons; s++) {
      numbers[s] = s % 2 == 0 ? even : 20 + odd;
    }
    return numbers;
  }

  @Test
  void theLargestMeanLeadsAndOfTwoAlikeTheFirst() {
    List<double[]> numbers = List.of(always(1, 50), always(3, 50), always(3, 50));
    assertThat(BestSelection.of(numbers, Strata.one(50), .95).leader()).isEqualTo(1);
  }

  @Test
  void commonSeasonsAreTakenOff() {
    // Each swings by 20, but their difference by 2 alone: 2 -+ 2.01 * 1.01 / sqrt(50).
    BestSelection contest =
        BestSelection.of(List.of(swinging(50, 0, 0), swinging(50, 1, 3)), Strata.one(50), .95);
    assertThat(contest.beaten()).containsExactly(0);
    assertThat(contest.behind()).isZero();
  }

  @Test
  void whatIsNotBeatenMayBeBetterBySoMuch() {
    BestSelection contest =
        BestSelection.of(List.of(swinging(50, -1, 1.2), swinging(50, 0, 0)), Strata.one(50), .95);
    assertThat(contest.leader()).isZero();
    assertThat(contest.beaten()).isEmpty();
    // A mean of .1 ahead, with a half-width of 2.01 * 1.111 / sqrt(50) = .316.
    assertThat(contest.behind()).isCloseTo(.216, within(.005));
  }

  /**
   * Alike in all of 50 seasons: another may come in at most 1 - .025^(1 / 50) = 7.1 % of them, and
   * differ by no more than all that was seen, which is 2.
   */
  @Test
  void whatNeverDifferedMayStillDifferInSomeSeasons() {
    BestSelection contest =
        BestSelection.of(List.of(always(1, 50), always(3, 50)), Strata.one(50), .95);
    assertThat(contest.leader()).isEqualTo(1);
    assertThat(contest.beaten()).containsExactly(0);
    BestSelection near =
        BestSelection.of(List.of(swinging(50, 0, 0), swinging(50, .1, .1)), Strata.one(50), .95);
    assertThat(near.beaten()).isEmpty();
    assertThat(near.behind()).isCloseTo(.0711 * (.1 + 20.1) - .1, within(.005));
  }
}
