package propcap.evidence.germination;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleBinaryOperator;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;
import umontreal.ssj.probdist.NormalDist;

/**
 * Limits lie where the log-likelihood, written down afresh here and searched by force on grids, has
 * fallen by half of 3.8415: on tests that ended half-way, where many pairs of share and days are
 * nearly as likely as each other.
 */
class ProfileByForceTest {
  private static final double FALL = 3.8415;
  private static final int GRID = 24;

  /** All counts together: a multinomial law. */
  private static double logLikelihood(
      CountedTray tray, double share, double median, double spread) {
    double sum = 0;
    double before = 0;
    int counted = 0;
    for (Inspection look : tray.inspections()) {
      double now = NormalDist.cdf01(Math.log(look.days() / median) / spread);
      int fresh = look.emerged() - counted;
      sum += fresh == 0 ? 0 : fresh * Math.log(share * (now - before));
      before = now;
      counted = look.emerged();
    }
    return sum + (tray.seeds() - counted) * Math.log(1 - share * before);
  }

  /** The highest on grids, each a fifth as wide as the one before, around its best. */
  private static double highest(
      DoubleBinaryOperator f, double x, double dx, double y, double dy, double mostX) {
    double best = Double.NEGATIVE_INFINITY;
    double[] at = {x, y};
    for (int round = 0; round < 9; round++) {
      double[] from = at.clone();
      for (int i = -GRID; i <= GRID; i++) {
        double a = Math.min(mostX, from[0] + dx * i / GRID);
        for (int j = -GRID; j <= GRID; j++) {
          double b = from[1] + dy * j / GRID;
          double value = f.applyAsDouble(a, b);
          if (value > best) {
            best = value;
            at = new double[] {a, b};
          }
        }
      }
      dx /= 5;
      dy /= 5;
    }
    return best;
  }

  private static double withMedian(CountedTray tray, double median) {
    return highest(
        (g, s) -> g <= 0 ? -1e9 : logLikelihood(tray, g, median, Math.exp(s)), 0.6, 0.4, -1, 2, 1);
  }

  private static double withShare(CountedTray tray, double share) {
    return highest(
        (m, s) -> logLikelihood(tray, share, Math.exp(m), Math.exp(s)), 1.7, 1.2, -1, 2, 5);
  }

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(ints = {0, 3})
  void limitsLieWhereForceHasThem(int seed) {
    CountedTray drawn = EarlyEndTest.halfWay(seed).get(0);
    ShowingCounts counts = new ShowingCounts(List.of(drawn));
    CurveFitting fitting = new CurveFitting(counts, 1);
    CurveFit fit = fitting.fit(fitting.peak(CurveFamily.LOGNORMAL));
    double top =
        Math.max(
            withMedian(drawn, fit.halfByDays().value()),
            fitting.peak(CurveFamily.LOGNORMAL).likelihood().height());
    assertThat(2 * (top - withMedian(drawn, fit.halfByDays().low()))).isCloseTo(FALL, within(0.02));
    assertThat(2 * (top - withMedian(drawn, fit.halfByDays().high())))
        .isCloseTo(FALL, within(0.02));
    assertThat(2 * (top - withShare(drawn, fit.germinating().share().low())))
        .isCloseTo(FALL, within(0.02));
  }
}
