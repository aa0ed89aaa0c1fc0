package propcap.evidence.stages;

import java.util.Arrays;

/**
 * Logarithms of {@code x (x + 1) ... (x + n - 1)}, the quotient of the gamma functions of x + n and
 * x, of one x and many n: each is worked out once.
 */
final class RisingFactorials {
  private final double x;
  private double[] logs = new double[64];
  private int known;

  RisingFactorials(double x) {
    this.x = x;
  }

  double ln(int n) {
    if (n >= logs.length) {
      logs = Arrays.copyOf(logs, 2 * n);
    }
    while (known < n) {
      logs[known + 1] = logs[known] + Math.log(x + known);
      known++;
    }
    return logs[n];
  }
}
