package propcap.evidence.germination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import propcap.evidence.Estimate;
import propcap.farm.CountedTray;

/** How alike the seeds of one tray fare. */
class TrayCorrelationTest {
  private static List<CountedTray> group(int[]... seedsAndEmerged) {
    List<CountedTray> trays = new ArrayList<>();
    for (int[] t : seedsAndEmerged) {
      trays.add(Trays.total(20, "tray " + trays.size(), t[0], t[1]));
    }
    return trays;
  }

  /**
   * Data set gcdata of the R package germinationmetrics (ICAR-NBPGR, GPL): five genotypes in three
   * replications. Pearson's statistic over its degrees of freedom is 1.46, yet the likelihood is
   * highest at no correlation.
   */
  @Test
  void fiveGenotypesInThreeReplicationsShowNone() {
    Estimate rho =
        TrayCorrelation.of(
                List.of(
                    group(new int[] {50, 40}, new int[] {49, 46}, new int[] {51, 48}),
                    group(new int[] {51, 42}, new int[] {48, 42}, new int[] {51, 44}),
                    group(new int[] {48, 45}, new int[] {47, 40}, new int[] {49, 47}),
                    group(new int[] {51, 46}, new int[] {52, 45}, new int[] {48, 44}),
                    group(new int[] {50, 48}, new int[] {50, 45}, new int[] {48, 42})))
            .orElseThrow();
    assertThat(rho.value()).isZero();
    assertThat(rho.low()).isZero();
    // Computed apart: the profile has fallen by 1.92 between 0.01 (0.62) and 0.03 (2.56).
    assertThat(rho.high()).isBetween(0.02, 0.03);
  }

  /** Computed apart, in Python: 0.123158 with limits 0.039392 and 0.365189. */
  @Test
  void traysThatDifferMuchShowOne() {
    Estimate rho =
        TrayCorrelation.of(
                List.of(
                    group(
                        new int[] {50, 30},
                        new int[] {50, 45},
                        new int[] {50, 38},
                        new int[] {50, 48},
                        new int[] {50, 25},
                        new int[] {50, 41})))
            .orElseThrow();
    assertThat(rho.value()).isCloseTo(0.123158, within(2e-4));
    assertThat(rho.low()).isCloseTo(0.039392, within(2e-4));
    assertThat(rho.high()).isCloseTo(0.365189, within(5e-4));
  }

  /**
   * 400 trays of 50 seeds with a correlation of 0.05. Its error by the curvature is about 0.005; 4
   * of those are allowed, a false alarm in 16,000. The twin, drawn with 0.08, lies outside.
   */
  @Test
  void aCorrelationIsFoundAgain() {
    assertThat(found(0.05)).isBetween(0.03, 0.07);
    assertThat(found(0.09)).isGreaterThan(0.07);
  }

  private static double found(double correlation) {
    Trays.Law law = new Trays.Law(0.85, correlation, 5, 0.2, 1, 20);
    List<CountedTray> trays = law.draw(new Well19937c(71), 20, 400, 50);
    return TrayCorrelation.of(List.of(trays)).orElseThrow().value();
  }

  @Test
  void aTrayByItselfTellsNothing() {
    assertThat(TrayCorrelation.of(List.of(group(new int[] {50, 40})))).isEmpty();
    assertThat(TrayCorrelation.of(List.of(group(new int[] {50, 0}, new int[] {50, 0})))).isEmpty();
  }

  /** 20 of 50 by day 5 in each; the second was counted on, and had 45 by day 9. */
  @Test
  void aTrayThatWasCountedForLongerDoesNotDiffer() {
    List<CountedTray> trays =
        List.of(
            Trays.daily(20, "short", 50, 5, 0, 0, 2, 6, 12),
            Trays.daily(20, "long", 50, 9, 0, 0, 3, 6, 11, 10, 8, 5, 2));
    List<List<CountedTray>> alike = ReplicateGroups.of(trays);
    assertThat(alike).hasSize(1);
    assertThat(alike.get(0)).extracting(CountedTray::emerged).containsExactly(20, 20);
    assertThat(TrayCorrelation.of(alike).orElseThrow().value()).isZero();
    assertThat(Heterogeneity.of(alike).weight()).isEqualTo(1);
  }

  /**
   * 40, 46 and 48 of 50: chi-square 7.2761 of 2 degrees of freedom (computed apart). A seed counts
   * for 3.8415 over that factor and the square of Student's t, 4.3027, of one in trays alike.
   */
  @Test
  void aSeedOfTraysThatDifferCountsForLess() {
    Heterogeneity differ =
        Heterogeneity.of(
            List.of(group(new int[] {50, 40}, new int[] {50, 46}, new int[] {50, 48})));
    assertThat(differ.chiSquare()).isCloseTo(7.2761, within(1e-4));
    assertThat(differ.weight()).isCloseTo(3.8415 / (7.2761 / 2 * 4.3027 * 4.3027), within(1e-4));
    assertThat(Heterogeneity.of(List.of(group(new int[] {50, 44}, new int[] {50, 45}))).weight())
        .isEqualTo(1);
  }
}
