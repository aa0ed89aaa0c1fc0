package propcap.evidence.weather;

import java.time.LocalDate;
import java.time.Year;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.LUDecomposition;
import org.apache.commons.math3.linear.RealMatrix;

/**
 * A smooth course through the year whose mean over each month is just what was given: a constant,
 * five harmonics and the sine of the sixth, twelve terms for twelve months. A line through the
 * months' middles would cut off summer and winter; this is the constraint by which NOAA's daily
 * normals follow from the monthly ones (Arguez and Applequist 2013, Journal of Atmospheric and
 * Oceanic Technology 30).
 */
final class AnnualCycle {
  private static final int MONTHS = 12;

  /** The terms are fixed on a year of 365 days; a leap year differs by hundredths of a degree. */
  private static final int COMMON_YEAR = 2001;

  private final double[] weights;

  AnnualCycle(double[] monthlyMeans) {
    RealMatrix means = new Array2DRowRealMatrix(MONTHS, MONTHS);
    for (LocalDate day = LocalDate.of(COMMON_YEAR, 1, 1);
        day.getYear() == COMMON_YEAR;
        day = day.plusDays(1)) {
      double[] terms = terms(day);
      for (int term = 0; term < MONTHS; term++) {
        means.addToEntry(day.getMonthValue() - 1, term, terms[term] / day.lengthOfMonth());
      }
    }
    weights =
        new LUDecomposition(means).getSolver().solve(new ArrayRealVector(monthlyMeans)).toArray();
  }

  double on(LocalDate day) {
    double[] terms = terms(day);
    double sum = 0;
    for (int term = 0; term < MONTHS; term++) {
      sum += weights[term] * terms[term];
    }
    return sum;
  }

  private static double[] terms(LocalDate day) {
    double angle = 2 * Math.PI * (day.getDayOfYear() - 0.5) / Year.of(day.getYear()).length();
    double[] terms = new double[MONTHS];
    terms[0] = 1;
    for (int term = 1; term < MONTHS; term++) {
      // Sines and cosines by turns. The sixth's cosine is left out: it is 0 in each month's mean.
      int harmonic = (term + 1) / 2;
      terms[term] = term % 2 == 1 ? Math.sin(harmonic * angle) : Math.cos(harmonic * angle);
    }
    return terms;
  }
}
