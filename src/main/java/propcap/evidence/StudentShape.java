package propcap.evidence;

import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apache.commons.math3.linear.RealMatrix;
import umontreal.ssj.hups.PointSetIterator;
import umontreal.ssj.hups.SobolSequence;
import umontreal.ssj.probdist.ChiSquareDist;
import umontreal.ssj.probdist.NormalDist;

/** A Student distribution of several figures: where points are drawn from. */
final class StudentShape {
  /** Fat tails, so that no point that is drawn from it weighs beyond measure. */
  private static final int DEGREES_OF_FREEDOM = 7;

  private static final double LEAST_VARIANCE = 1e-9;

  private final double[] mean;
  private final double[][] root;
  private final double lnScale;

  /**
   * About a mean.
   *
   * @param covariance symmetric; its lower half is read
   */
  private StudentShape(double[] mean, RealMatrix covariance) {
    this.mean = mean.clone();
    root = new CholeskyDecomposition(covariance, 1e-6, 0).getL().getData();
    double sum = 0;
    for (int f = 0; f < mean.length; f++) {
      sum += Math.log(root[f][f]);
    }
    lnScale = sum;
  }

  /** Of figures that have nothing to do with each other. */
  static StudentShape of(double[] mean, double[] sd) {
    RealMatrix covariance = new Array2DRowRealMatrix(sd.length, sd.length);
    for (int f = 0; f < sd.length; f++) {
      covariance.setEntry(f, f, sd[f] * sd[f]);
    }
    return new StudentShape(mean, covariance);
  }

  /** Of weighted points; about their own mean unless another is given. */
  static StudentShape of(double[][] points, double[] weights) {
    double[] mean = new double[points[0].length];
    double sum = sum(weights);
    for (int i = 0; i < points.length; i++) {
      for (int f = 0; f < mean.length; f++) {
        mean[f] += weights[i] / sum * points[i][f];
      }
    }
    return about(mean, points, weights);
  }

  static StudentShape about(double[] middle, double[][] points, double[] weights) {
    int figures = middle.length;
    double sum = sum(weights);
    double[][] covariance = new double[figures][figures];
    for (int i = 0; i < points.length; i++) {
      for (int f = 0; f < figures; f++) {
        double off = weights[i] / sum * (points[i][f] - middle[f]);
        for (int g = 0; g <= f; g++) {
          covariance[f][g] += off * (points[i][g] - middle[g]);
          covariance[g][f] = covariance[f][g];
        }
      }
    }
    for (int f = 0; f < figures; f++) {
      covariance[f][f] += LEAST_VARIANCE;
    }
    return new StudentShape(middle, new Array2DRowRealMatrix(covariance, false));
  }

  private static double sum(double[] weights) {
    double sum = 0;
    for (double weight : weights) {
      sum += weight;
    }
    return sum;
  }

  /**
   * Draws points, evenly spread: Sobol's, so that no luck is in them.
   *
   * @param size a power of 2
   */
  double[][] draw(int size) {
    int figures = mean.length;
    double[][] points = new double[size][figures];
    PointSetIterator sobol =
        new SobolSequence(Integer.numberOfTrailingZeros(size), 31, figures + 1).iterator();
    // They lie on the lower edges of equal boxes, the first in the corner.
    double toMiddle = 0.5 / size;
    double[] u = new double[figures + 1];
    double[] z = new double[figures];
    for (double[] point : points) {
      sobol.nextPoint(u, figures + 1);
      double chi = ChiSquareDist.inverseF(DEGREES_OF_FREEDOM, u[figures] + toMiddle);
      for (int f = 0; f < figures; f++) {
        z[f] = NormalDist.inverseF01(u[f] + toMiddle) * Math.sqrt(DEGREES_OF_FREEDOM / chi);
      }
      for (int f = 0; f < figures; f++) {
        point[f] = mean[f];
        for (int g = 0; g <= f; g++) {
          point[f] += root[f][g] * z[g];
        }
      }
    }
    return points;
  }

  /** Logarithm of the density, up to a constant that all shapes of as many figures share. */
  double logDensity(double[] point) {
    return -lnScale
        - (DEGREES_OF_FREEDOM + mean.length)
            / 2.0
            * Math.log1p(squaredDistance(point) / DEGREES_OF_FREEDOM);
  }

  /** From the middle, measured in standard deviations. */
  double squaredDistance(double[] point) {
    double[] z = new double[mean.length];
    double sum = 0;
    for (int f = 0; f < z.length; f++) {
      double off = point[f] - mean[f];
      for (int g = 0; g < f; g++) {
        off -= root[f][g] * z[g];
      }
      z[f] = off / root[f][f];
      sum += z[f] * z[f];
    }
    return sum;
  }

  /** The same spread about another middle. */
  StudentShape movedTo(double[] middle) {
    return new StudentShape(middle, root, lnScale);
  }

  private StudentShape(double[] mean, double[][] root, double lnScale) {
    this.mean = mean.clone();
    this.root = root;
    this.lnScale = lnScale;
  }
}
