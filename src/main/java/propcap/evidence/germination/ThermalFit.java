package propcap.evidence.germination;

import java.util.List;
import propcap.evidence.Estimate;

/**
 * One curve through all temperatures up to the fastest, in thermal time (docs/model.md, section 4):
 * a seedling shows after {@code theta / (T - base)} days, lognormal with one spread.
 *
 * @param temperaturesC those that it is drawn through, rising
 * @param base temperature in degrees C at and below which nothing develops
 * @param theta median thermal time, degree days above the base
 * @param spread of the logarithm of time: sigma
 * @param test against a curve of its own at each temperature
 */
public record ThermalFit(
    List<Double> temperaturesC,
    Estimate base,
    Estimate theta,
    Estimate spread,
    GoodnessOfFit test) {
  public ThermalFit {
    temperaturesC = List.copyOf(temperaturesC);
  }

  /** Days until half of the seedlings that ever show have shown, above the base. */
  double halfByDays(double tempC) {
    return theta.value() / (tempC - base.value());
  }

  /** Days until nine in ten have, above the base. */
  double mostByDays(double tempC) {
    return halfByDays(tempC) * Math.exp(spread.value() * CurveFamily.LOGNORMAL.quantile(0.9));
  }
}
