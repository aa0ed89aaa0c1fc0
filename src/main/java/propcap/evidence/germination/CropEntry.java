package propcap.evidence.germination;

import java.util.Comparator;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
import propcap.evidence.germination.GerminationFit.AtTemperature;
import propcap.evidence.germination.GerminationFit.Lot;

/**
 * What a lot's test says for the crop list: how many seeds germinate, and when.
 *
 * @param atC the temperature that it is of, degrees C
 * @param tested how many come up, as a whole test of trays that are alike would tell it as well
 * @param trayCorrelation null where one tray is all there was
 * @param emergence null where no curve can be told
 */
public record CropEntry(
    String crop,
    String lot,
    double atC,
    EquivalentCount tested,
    @Nullable Double trayCorrelation,
    @Nullable Showing emergence) {

  /**
   * When the seedlings show.
   *
   * @param baseC null where no base can be told
   */
  public record Showing(@Nullable Double baseC, double halfByDays, double mostByDays) {}

  /**
   * The entry, at one of the lot's temperatures: the one nearest to where the crop list has it,
   * else the {@linkplain Lot#best() best}. One curve through all temperatures gives the times where
   * there is one; where the test there ended early, the curve at that temperature alone does, whose
   * times belong to the share that is written.
   *
   * @param atC where the crop list has it; null where that is not known
   */
  public static CropEntry of(Lot lot, @Nullable Double atC) {
    AtTemperature at = temperature(lot, atC);
    Estimate rho = lot.trayCorrelation();
    return new CropEntry(
        lot.crop(),
        lot.lot(),
        at.tempC(),
        at.germinating().tested(),
        rho == null ? null : rho.value(),
        showing(lot, at));
  }

  private static AtTemperature temperature(Lot lot, @Nullable Double atC) {
    return atC == null
        ? lot.best()
        : lot.temperatures().stream()
            .filter(at -> at.lognormal() != null)
            .min(Comparator.comparingDouble(at -> Math.abs(at.tempC() - atC)))
            .orElseGet(lot::best);
  }

  private static @Nullable Showing showing(Lot lot, AtTemperature at) {
    CurveFit curve = at.lognormal();
    if (curve == null) {
      return null;
    }
    ThermalFit thermal = lot.thermal();
    Double base = thermal == null ? null : thermal.base().value();
    return thermal != null
            && thermal.temperaturesC().contains(at.tempC())
            && !at.germinating().endedEarly()
        ? new Showing(base, thermal.halfByDays(at.tempC()), thermal.mostByDays(at.tempC()))
        : new Showing(base, curve.halfByDays().value(), curve.mostByDays().value());
  }
}
