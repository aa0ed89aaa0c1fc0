package propcap.evidence.germination;

import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;

/**
 * A curve through the counts of one lot at one temperature.
 *
 * @param germinating share of the seeds that ever show; the curve goes with it
 * @param halfByDays half of those have shown
 * @param mostByDays nine in ten of those have
 * @param spread of the logarithm of time: sigma where the curve is lognormal
 * @param akaike Akaike's criterion: of several curves the one with the least is best
 * @param test of the times at which they showed; null where there are too few inspections
 */
public record CurveFit(
    CurveFamily family,
    GerminatingShare germinating,
    Estimate halfByDays,
    Estimate mostByDays,
    Estimate spread,
    double akaike,
    @Nullable GoodnessOfFit test,
    CurveBand band) {

  /** Share of all seeds that have shown by a time. */
  public double shown(double days) {
    return band.shown(days);
  }
}
