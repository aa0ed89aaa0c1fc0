package propcap.chance;

/** How two samples vary together, with the standard error that the samples themselves show. */
record Moments(double covariance, double standardError) {

  /** The covariance of two samples of one size; of a sample with itself, its variance. */
  static Moments of(double[] x, double[] y) {
    int n = x.length;
    double meanX = mean(x);
    double meanY = mean(y);
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      double product = (x[i] - meanX) * (y[i] - meanY);
      sum += product;
      squares += product * product;
    }
    double mean = sum / n;
    return new Moments(sum / (n - 1), Math.sqrt((squares / n - mean * mean) / n));
  }

  static double mean(double[] x) {
    double sum = 0;
    for (double v : x) {
      sum += v;
    }
    return sum / x.length;
  }

  static double correlation(double[] x, double[] y) {
    return of(x, y).covariance
        / Math.sqrt(Moments.of(x, x).covariance * Moments.of(y, y).covariance);
  }

  boolean within(double standardErrors, double expected) {
    return Math.abs(covariance - expected) <= standardErrors * standardError;
  }
}
