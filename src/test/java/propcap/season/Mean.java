package propcap.season;

import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** A simulated mean of independent values, to be held against an expected one. */
record Mean(double mean, double standardError) {
  static Mean of(double[] values) {
    double mean = Arrays.stream(values).average().orElseThrow();
    double squares = Arrays.stream(values).map(v -> (v - mean) * (v - mean)).sum();
    return new Mean(mean, Math.sqrt(squares / (values.length - 1) / values.length));
  }

  static <T> Mean of(List<T> seasons, ToDoubleFunction<T> number) {
    return of(seasons.stream().mapToDouble(number).toArray());
  }

  /** How many standard errors the mean lies from an expected one, above 0. */
  double errorsFrom(double expected) {
    return Math.abs(mean - expected) / standardError;
  }

  /** The same for the mean of other, independent values that is expected to be equal. */
  double errorsFrom(Mean other) {
    return Math.abs(mean - other.mean) / Math.hypot(standardError, other.standardError);
  }
}
