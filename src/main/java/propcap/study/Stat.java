package propcap.study;

/**
 * A number that differs from season to season.
 *
 * @param mean over the seasons
 * @param se standard error of that mean; 0 for a single season, whose error is not known
 * @param p10 a tenth of the seasons lie below
 * @param p50 the median season
 * @param p90 a tenth of the seasons lie above
 */
public record Stat(double mean, double se, double p10, double p50, double p90) {}
