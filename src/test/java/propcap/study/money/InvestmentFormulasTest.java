package propcap.study.money;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InvestmentFormulasTest {
  /** USDA Natural Resources Conservation Service, discounting worksheet. */
  @Test
  void aSumInTenYearsIsWorthWhatTheWorksheetSays() {
    assertThat(3400 * InvestmentFormulas.presentValue(.07, 10)).isCloseTo(1728.39, within(.005));
  }

  /** The same worksheet. */
  @Test
  void thirtyYearsAtSevenPercentHaveTheFactorOfTheWorksheet() {
    assertThat(InvestmentFormulas.annuityFactor(.07, 30)).isCloseTo(12.409, within(.0005));
  }

  @ParameterizedTest
  @CsvSource({".06, 12", ".01, 40", ".5, 3", "1, 1"})
  void anAnnuityIsTheSumOfItsYears(double rate, int years) {
    double sum =
        IntStream.rangeClosed(1, years)
            .mapToDouble(y -> InvestmentFormulas.presentValue(rate, y))
            .sum();
    assertThat(InvestmentFormulas.annuityFactor(rate, years)).isCloseTo(sum, within(1e-12 * years));
  }

  @Test
  void withoutInterestEachYearCountsWhole() {
    assertThat(InvestmentFormulas.annuityFactor(0, 12)).isEqualTo(12);
    assertThat(InvestmentFormulas.annuityFactor(1e-12, 12)).isCloseTo(12, within(1e-9));
    assertThat(InvestmentFormulas.presentValue(0, 12)).isEqualTo(1);
  }

  /** A posted textbook exercise, recomputed: 200,000 paid back by 40,000 a year. */
  @ParameterizedTest
  @CsvSource({"0, 5.0", ".12, 8.09"})
  void anOutlayIsPaidBackWhenTheTextbookSays(double rate, double years) {
    assertThat(InvestmentFormulas.payback(200_000, 40_000, rate)).isCloseTo(years, within(.005));
  }

  @Test
  void withinAYearReceiptsComeInEvenly() {
    assertThat(InvestmentFormulas.payback(100, 40, 0)).isEqualTo(2.5);
    // 110 after a year is worth 100 today: half of it pays 50 back.
    assertThat(InvestmentFormulas.payback(50, 110, .10)).isCloseTo(.5, within(1e-12));
  }

  @Test
  void receiptsThatNeverAddUpToTheOutlayNeverPayItBack() {
    assertThat(InvestmentFormulas.payback(100, 0, 0)).isNull();
    assertThat(InvestmentFormulas.payback(100, -5, .06)).isNull();
    // 6 a year for ever at 6 % are worth 100.
    assertThat(InvestmentFormulas.payback(100.01, 6, .06)).isNull();
    assertThat(InvestmentFormulas.payback(99.99, 6, .06)).isGreaterThan(100);
  }

  /** Gains a hair above the interest on the outlay: longer than anyone waits, but told at once. */
  @ParameterizedTest
  @CsvSource({"99.9999999999, 6, .06", "1e9, .001, 0", "1e9, 1.0000000000001e-3, 1e-12"})
  void aPaybackInTheFarFutureIsToldAtOnce(double outlay, double yearly, double rate) {
    assertThat(InvestmentFormulas.payback(outlay, yearly, rate)).isFinite().isGreaterThan(300);
  }

  @Test
  void paybackIsTheYearInWhichDiscountedReceiptsReachTheOutlay() {
    for (double outlay : new double[] {1, 39.9, 40, 40 / 1.08, 123.4, 300, 480}) {
      double left = outlay;
      int year = 0;
      while (40 * InvestmentFormulas.presentValue(.08, year + 1) < left) {
        left -= 40 * InvestmentFormulas.presentValue(.08, ++year);
      }
      assertThat(InvestmentFormulas.payback(outlay, 40, .08))
          .isCloseTo(
              year + left / (40 * InvestmentFormulas.presentValue(.08, year + 1)), within(1e-9));
    }
  }

  @Test
  void nothingToPayIsPaidAtOnce() {
    assertThat(InvestmentFormulas.payback(0, 10, .06)).isZero();
    assertThat(InvestmentFormulas.payback(0, -10, .06)).isZero();
  }
}
