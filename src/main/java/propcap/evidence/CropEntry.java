package propcap.evidence;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.evidence.GerminationFit.AtTemperature;
import propcap.evidence.GerminationFit.Lot;

/**
 * What a lot's test says for the crop list: how many seeds germinate, and when.
 *
 * @param rate share of the seeds that germinate
 * @param testedSeeds as many seeds as a test without tray-to-tray differences would need to tell
 *     the rate as well
 * @param trayCorrelation null where one tray is all there was
 * @param emergence null where no curve can be told
 */
public record CropEntry(
    String crop,
    String lot,
    double rate,
    int testedSeeds,
    @Nullable Double trayCorrelation,
    @Nullable Showing emergence) {

  /**
   * When the seedlings show.
   *
   * @param baseC null where no base can be told
   */
  public record Showing(@Nullable Double baseC, double atC, double halfByDays, double mostByDays) {}

  /**
   * The entry, at one of the lot's temperatures: the one nearest to where the crop list has it,
   * else the fastest, else that at which most seeds came up. One curve through all temperatures
   * gives the times, unless it is told to be too simple; then the curve at that temperature alone
   * does.
   *
   * @param atC where the crop list has it; null where that is not known
   */
  public static CropEntry of(Lot lot, @Nullable Double atC) {
    AtTemperature at = temperature(lot, atC);
    Estimate rho = lot.trayCorrelation();
    double correlation = rho == null ? 0 : rho.value();
    double seedsATray = (double) at.seeds() / at.trays().size();
    double inflation = 1 + (seedsATray - 1) * correlation;
    return new CropEntry(
        lot.crop(),
        lot.lot(),
        at.germinating().value(),
        (int) Math.max(1, Math.round(at.seeds() / inflation)),
        rho == null ? null : rho.value(),
        showing(lot, at));
  }

  private static AtTemperature temperature(Lot lot, @Nullable Double atC) {
    Optional<AtTemperature> nearest =
        atC == null
            ? Optional.empty()
            : lot.temperatures().stream()
                .filter(at -> at.lognormal() != null)
                .min(
                    (a, b) -> Double.compare(Math.abs(a.tempC() - atC), Math.abs(b.tempC() - atC)));
    return nearest
        .or(lot::fastest)
        .or(
            () ->
                lot.temperatures().stream()
                    .max(
                        (a, b) -> Double.compare(a.germinating().value(), b.germinating().value())))
        .orElseThrow();
  }

  private static @Nullable Showing showing(Lot lot, AtTemperature at) {
    CurveFit curve = at.lognormal();
    if (curve == null) {
      return null;
    }
    ThermalFit thermal = lot.thermal();
    if (thermal == null) {
      return new Showing(null, at.tempC(), curve.halfByDays().value(), curve.mostByDays().value());
    }
    boolean together = !thermal.isPoor() && thermal.temperaturesC().contains(at.tempC());
    return new Showing(
        thermal.base().value(),
        at.tempC(),
        together ? thermal.halfByDays(at.tempC()) : curve.halfByDays().value(),
        together ? thermal.mostByDays(at.tempC()) : curve.mostByDays().value());
  }
}
