package propcap.evidence;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/** The top of a function of one variable: uphill until it falls, then Brent's way between. */
public final class UnimodalMaximum {
  private static final int MOST_STEPS = 60;
  private static final double LONGER = 2;

  /** Less of a rise than this is none. */
  private static final double FLAT = 1e-9;

  /** Of a step: the top is that flat. */
  private static final double FINE = 2e-3;

  private UnimodalMaximum() {}

  /**
   * Walks to the top from a start; whoever wants it notes the highest value asked for.
   *
   * @param step first step, about as wide as the hill
   */
  public static void along(DoubleUnaryOperator height, double start, double step) {
    double middle = start;
    double top = height.applyAsDouble(middle);
    double stride = step;
    double ahead = height.applyAsDouble(middle + stride);
    double behind = middle - stride;
    if (!(ahead > top + FLAT)) {
      double back = height.applyAsDouble(behind);
      if (!(back > top + FLAT)) {
        between(height, behind, middle, middle + stride, step);
        return;
      }
      behind = middle + stride;
      stride = -stride;
      ahead = back;
    }
    for (int i = 0; i < MOST_STEPS && ahead > top + FLAT; i++) {
      behind = middle;
      middle += stride;
      top = ahead;
      stride *= LONGER;
      ahead = height.applyAsDouble(middle + stride);
    }
    between(
        height, Math.min(behind, middle + stride), middle, Math.max(behind, middle + stride), step);
  }

  private static void between(
      DoubleUnaryOperator height, double least, double middle, double most, double step) {
    var unused =
        new BrentOptimizer(1e-12, FINE * Math.abs(step))
            .optimize(
                new MaxEval(200),
                new UnivariateObjectiveFunction(height::applyAsDouble),
                GoalType.MAXIMIZE,
                new SearchInterval(least, most, middle));
  }
}
