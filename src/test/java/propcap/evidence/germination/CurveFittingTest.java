package propcap.evidence.germination;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import propcap.evidence.Estimate;
import propcap.evidence.germination.GerminationFit.AtTemperature;
import propcap.farm.CountedTray;

/** Curves through published counts, and what is said where no curve can be told. */
class CurveFittingTest {
  /**
   * Verbascum blattaria, 4 dishes of 25 seeds together, from the data set verbascum of the R
   * package drcte (GPL), looked at daily up to day 15.
   */
  private static final CountedTray BLATTARIA =
      Trays.daily(20, "all", 100, 15, 0, 0, 9, 30, 34, 5, 2, 1, 3);

  private static CurveFit fit(CurveFamily family, CountedTray... trays) {
    ShowingCounts counts = new ShowingCounts(List.of(trays));
    CurveFitting fitting = new CurveFitting(counts, 1);
    return fitting.fit(fitting.peak(family));
  }

  private static AtTemperature only(CountedTray... trays) {
    return GerminationFitting.fit(List.of(trays), Map.of()).lots().get(0).temperatures().get(0);
  }

  /**
   * Published: b 7.198025, d 0.840064, e 4.031763 (Onofri, tutorial on seed germination of the
   * project stats4biology, section 13).
   */
  @Test
  void theLogLogisticCurveOfMulleinIsThePublishedOne() {
    CurveFit fit = fit(CurveFamily.LOG_LOGISTIC, BLATTARIA);
    assertThat(1 / fit.spread().value()).isCloseTo(7.198025, within(2e-3));
    assertThat(fit.germinating().share().value()).isCloseTo(0.840064, within(2e-5));
    assertThat(fit.halfByDays().value()).isCloseTo(4.031763, within(2e-4));
  }

  /** Computed apart from this code, by another optimiser in Python: 3.843, .8400, 4.066. */
  @Test
  void theLognormalCurveOfMulleinIsTheOneFoundByAnotherProgram() {
    CurveFit fit = fit(CurveFamily.LOGNORMAL, BLATTARIA);
    assertThat(1 / fit.spread().value()).isCloseTo(3.842978, within(1e-3));
    assertThat(fit.germinating().share().value()).isCloseTo(0.8400002, within(2e-5));
    assertThat(fit.halfByDays().value()).isCloseTo(4.066177, within(2e-4));
  }

  /**
   * Likewise computed apart: shape 3.385820, scale 4.661594; and the log-likelihoods -168.7477,
   * -170.9042, -184.1783 make the log-logistic the best of the three.
   */
  @Test
  void theBestShapeIsTheOneOfTheHighestLikelihood() {
    CurveFit weibull = fit(CurveFamily.WEIBULL, BLATTARIA);
    assertThat(1 / weibull.spread().value()).isCloseTo(3.385820, within(1e-3));
    double scale = weibull.halfByDays().value() / Math.pow(Math.log(2), weibull.spread().value());
    assertThat(scale).isCloseTo(4.661594, within(2e-4));
    assertThat(weibull.akaike()).isCloseTo(2 * 3 + 2 * 184.17834, within(1e-3));
    AtTemperature at = only(BLATTARIA);
    assertThat(requireNonNull(at.best()).family()).isEqualTo(CurveFamily.LOG_LOGISTIC);
    assertThat(requireNonNull(at.best()).akaike()).isCloseTo(2 * 3 + 2 * 168.74769, within(1e-3));
    assertThat(requireNonNull(at.lognormal()).family()).isEqualTo(CurveFamily.LOGNORMAL);
  }

  /**
   * Of 84 in 100 the binomial profile limits are 76.0 and 90.3 %: the curve hardly changes them.
   */
  @Test
  void aLimitOfTheShareIsThatOfTheLikelihoodRatio() {
    Estimate share = fit(CurveFamily.LOGNORMAL, BLATTARIA).germinating().share();
    for (double limit : new double[] {share.low(), share.high()}) {
      double fall = 2 * (84 * Math.log(0.84 / limit) + 16 * Math.log(0.16 / (1 - limit)));
      assertThat(fall).isCloseTo(3.8415, within(0.01));
    }
  }

  /** A tenth of the seeds, the same shares: limits about three times as wide. */
  @Test
  void aSmallTestHasWideLimits() {
    Estimate many =
        only(Trays.daily(20, "a", 200, 12, 0, 0, 20, 60, 50, 20, 10)).germinating().share();
    Estimate few = only(Trays.daily(20, "a", 20, 12, 0, 0, 2, 6, 5, 2, 1)).germinating().share();
    assertThat(few.value()).isCloseTo(many.value(), within(1e-3));
    assertThat((few.high() - few.low()) / (many.high() - many.low())).isBetween(2.7, 3.4);
  }

  /** Half the seeds are up and they still come: the share may be anything above that. */
  @Test
  void aTestThatEndsTooEarlySetsNoUpperLimit() {
    AtTemperature at = only(Trays.daily(20, "a", 40, 5, 0, 0, 2, 7, 11));
    assertThat(at.germinating().share().low()).isBetween(0.35, 0.6);
    assertThat(at.germinating().share().high()).isGreaterThan(0.999);
  }

  /** Exact limit (Clopper and Pearson 1934): 1 - 0.025^(1/50). */
  @Test
  void whereNothingGerminatedTheUpperLimitIsStillTold() {
    AtTemperature at = only(Trays.daily(20, "a", 50, 14));
    assertThat(at.germinating().share().value()).isZero();
    assertThat(at.germinating().share().low()).isZero();
    assertThat(at.germinating().share().high()).isCloseTo(0.07112, within(1e-5));
    assertThat(at.lognormal()).isNull();
    assertThat(at.best()).isNull();
  }

  @Test
  void whereEverySeedCameUpTheLowerLimitIsTheExactOne() {
    AtTemperature at = only(Trays.daily(20, "a", 50, 14, 0, 0, 5, 20, 15, 10));
    assertThat(at.germinating().share().value()).isEqualTo(1);
    assertThat(at.germinating().share().high()).isEqualTo(1);
    assertThat(at.germinating().share().low()).isCloseTo(1 - 0.07112, within(1e-5));
    assertThat(requireNonNull(at.lognormal()).band().at(4)).isPresent();
  }

  @Test
  void seedlingsOfOneOrTwoNeighbouringDaysTellNoCurve() {
    assertThat(only(Trays.daily(20, "a", 50, 14, 0, 0, 40)).lognormal()).isNull();
    assertThat(only(Trays.daily(20, "a", 50, 14, 0, 0, 20, 20)).lognormal()).isNull();
    assertThat(only(Trays.daily(20, "a", 50, 14, 0, 0, 20, 0, 20)).lognormal()).isNotNull();
    assertThat(only(Trays.daily(20, "a", 50, 14, 0, 0, 10, 20, 10)).lognormal()).isNotNull();
  }

  /** Drawn by hand from two flushes, a week apart, that no single curve follows. */
  @Test
  void aCurveThatDoesNotFitIsCalledPoor() {
    CurveFit poor =
        fit(
            CurveFamily.LOGNORMAL,
            Trays.daily(20, "a", 200, 16, 0, 0, 20, 50, 30, 0, 0, 0, 0, 0, 20, 40, 20));
    assertThat(requireNonNull(poor.test()).isPoor()).isTrue();
    CurveFit good =
        fit(CurveFamily.LOGNORMAL, Trays.daily(20, "a", 200, 16, 0, 0, 6, 39, 58, 41, 19, 7, 2, 1));
    assertThat(requireNonNull(good.test()).isPoor()).isFalse();
  }

  /** The same seedlings, looked at every second day by one and daily by the other. */
  @Test
  void traysMayBeLookedAtOnDifferentDays() {
    CountedTray everyDay = Trays.daily(20, "a", 50, 10, 0, 0, 4, 16, 14, 6, 2);
    CountedTray everySecond =
        new CountedTray(
            "lot",
            "crop",
            20,
            "b",
            50,
            List.of(
                new CountedTray.Inspection(2, 0),
                new CountedTray.Inspection(4, 20),
                new CountedTray.Inspection(6, 40),
                new CountedTray.Inspection(8, 42)));
    AtTemperature at = only(everyDay, everySecond);
    assertThat(requireNonNull(at.lognormal()).halfByDays().value()).isBetween(3.9, 4.2);
  }
}
