package propcap.evidence.weather;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.jspecify.annotations.Nullable;
import propcap.farm.FrostRecord;

/**
 * The days from which frosts of a threshold become unlikely.
 *
 * @param record the count itself
 * @param dates by chance, the smallest first: the latest date first
 */
public record FrostDates(
    FrostRecord record, @Nullable LastFrostFit fitOrNull, List<FrostDate> dates) {

  /**
   * The first day with no more than a chance of a frost on or after it.
   *
   * @param counted from the share of the years, as the model's release dates are; its limits are
   *     days of the record by rank, which hold whatever the distribution
   * @param fittedOrNull by the normal of last frosts; null where there is no such day
   */
  public record FrostDate(double chance, DayEstimate counted, @Nullable DayEstimate fittedOrNull) {}

  static FrostDates of(FrostRecord record, List<Double> chances) {
    Optional<LastFrostFit> fit = LastFrostFit.of(record);
    Optional<NormalLimits> limits = fit.map(LastFrostFit::limits);
    return new FrostDates(
        record,
        fit.orElse(null),
        chances.stream()
            .map(
                chance ->
                    new FrostDate(
                        chance,
                        counted(record, chance),
                        fit.flatMap(f -> limits.flatMap(l -> f.firstDayWithin(chance, l)))
                            .orElse(null)))
            .toList());
  }

  /** None where fewer than two years had a frost. */
  public Optional<LastFrostFit> fit() {
    return Optional.ofNullable(fitOrNull);
  }

  /** The fitted chance of a frost on or after a day; none where there is no fit. */
  public Optional<Double> fittedChanceFrom(int day) {
    return fit().map(f -> f.chanceFrom(day));
  }

  /** The counted share of years with a frost on or after a day. */
  public double countedChanceFrom(int day) {
    return record.yearsWithFrostFrom(day) / (double) record.years();
  }

  /** How many years had a frost on the last day of the season: what came after is not known. */
  public int yearsToTheEnd() {
    return record.yearsWithFrostFrom(record.season().days() - 1);
  }

  /**
   * The counted day and its limits. So many of the years' frosts have ended by the true day as a
   * binomial tells; the limits are the years by rank that it leaves out with 2.5 % at each end
   * (David and Nagaraja 2003, Order Statistics, section 7.1).
   */
  static DayEstimate counted(FrostRecord record, double chance) {
    int n = record.years();
    int[] ended = record.frostFreeFrom();
    BinomialDistribution byTheDay = new BinomialDistribution(null, n, 1 - chance);
    int lowRank =
        (int)
            IntStream.rangeClosed(1, n)
                .filter(r -> byTheDay.cumulativeProbability(r - 1) <= 0.025)
                .count();
    int highRank =
        IntStream.rangeClosed(1, n)
            .filter(s -> byTheDay.cumulativeProbability(s - 1) >= 0.975)
            .findFirst()
            .orElse(n + 1);
    return new DayEstimate(
        known(record, record.firstDayWithin(chance)),
        lowRank == 0 ? null : ended[lowRank - 1],
        highRank > n ? null : known(record, ended[highRank - 1]));
  }

  private static @Nullable Integer known(FrostRecord record, int day) {
    return day == record.season().days() ? null : day;
  }
}
