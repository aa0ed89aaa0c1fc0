package propcap.evidence.germination;

import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;

/**
 * The usual indices of one tray, as seed laboratories report them. A seedling counts at the
 * inspection that found it; times are in days. What too few seedlings leave open is null.
 *
 * @param percent final germination, percent of the seeds
 * @param meanDays mean germination time
 * @param variance of the germination time, days squared
 * @param deviation coefficient of variation of the germination time, a share
 * @param halfByCoolbear time to half of the seedlings, after Coolbear and others (1984)
 * @param halfByFarooq the same after Farooq and others (2005)
 * @param meanRate one over the mean time, per day
 * @param velocity Kotowski's coefficient, 100 over the mean time
 * @param speed Maguire's rate index, seedlings per day
 * @param timson sum of the germination percents of all inspections
 * @param khanUngar Timson's index over the test's length
 * @param labouriau Timson's index over the final percent
 * @param uniformity coefficient of uniformity of germination
 * @param synchrony Z, the share of pairs of seedlings found at one inspection
 * @param uncertainty U, bits
 */
public record GerminationIndices(
    double percent,
    @Nullable Double meanDays,
    @Nullable Double variance,
    @Nullable Double deviation,
    @Nullable Double halfByCoolbear,
    @Nullable Double halfByFarooq,
    @Nullable Double meanRate,
    @Nullable Double velocity,
    double speed,
    double timson,
    double khanUngar,
    @Nullable Double labouriau,
    @Nullable Double uniformity,
    @Nullable Double synchrony,
    @Nullable Double uncertainty) {

  /** The indices of a tray. */
  static GerminationIndices of(CountedTray tray) {
    List<Inspection> looks = tray.inspections();
    int n = tray.emerged();
    double percent = 100.0 * n / tray.seeds();
    double timson = looks.stream().mapToDouble(look -> 100.0 * look.emerged() / tray.seeds()).sum();
    double khanUngar = timson / tray.lastDays();
    if (n == 0) {
      return new GerminationIndices(
          percent, null, null, null, null, null, null, null, 0, timson, khanUngar, null, null, null,
          null);
    }
    double speed = 0;
    double sum = 0;
    double pairs = 0;
    double bits = 0;
    List<FoundSeedlings> found = FoundSeedlings.of(tray);
    for (FoundSeedlings look : found) {
      double fresh = look.seedlings();
      if (fresh > 0) {
        speed += fresh / look.toDays();
        sum += fresh * look.toDays();
        pairs += fresh * (fresh - 1);
        bits -= fresh / n * Math.log(fresh / n) / Math.log(2);
      }
    }
    double mean = sum / n;
    double squares = 0;
    for (FoundSeedlings look : found) {
      squares += look.seedlings() * (look.toDays() - mean) * (look.toDays() - mean);
    }
    Double variance = n > 1 ? squares / (n - 1) : null;
    return new GerminationIndices(
        percent,
        mean,
        variance,
        variance == null ? null : Math.sqrt(variance) / mean,
        timeTo((n + 1) / 2.0, looks),
        timeTo(n / 2.0, looks),
        1 / mean,
        100 / mean,
        speed,
        timson,
        khanUngar,
        timson / percent,
        squares > 0 ? n / squares : null,
        n > 1 ? pairs / ((double) n * (n - 1)) : null,
        Math.max(0, bits));
  }

  /**
   * The straight line between the inspections before and after a count, from no seedlings at the
   * sowing on. A count that was just reached at an inspection was reached then.
   */
  private static Double timeTo(double count, List<Inspection> looks) {
    double days = 0;
    double shown = 0;
    for (Inspection look : looks) {
      if (look.emerged() >= count) {
        return days + (count - shown) * (look.days() - days) / (look.emerged() - shown);
      }
      days = look.days();
      shown = look.emerged();
    }
    return days;
  }
}
