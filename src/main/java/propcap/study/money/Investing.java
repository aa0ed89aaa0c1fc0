package propcap.study.money;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;
import org.jspecify.annotations.Nullable;
import propcap.study.money.Investment.Change;
import propcap.study.money.Investment.Price;
import propcap.study.statistics.Difference;

/**
 * Whether what changed places bring pays for them: buying and upkeep against the margins of the
 * same seasons.
 *
 * @param discount rate a year
 * @param seed of the lives that are drawn
 */
public record Investing(double discount, long seed) {
  /** Lives of an investment that are drawn from the simulated springs. */
  private static final int LIVES = 10_000;

  /**
   * What changes are worth; null where nothing is paid or saved, or nobody said what.
   *
   * @param first margins of the seasons without them, by season
   * @param second with them
   * @param gain how the margins differ
   */
  public Investment.@Nullable Worth worth(
      List<Change> changes, double[] first, double[] second, Difference gain) {
    BigDecimal buy = BigDecimal.ZERO;
    double keep = 0;
    double yearly = 0;
    double longest = 0;
    double shortest = Double.POSITIVE_INFINITY;
    for (Change change : changes) {
      Price price = change.price();
      if (price == null) {
        return null;
      }
      if (change.how() == Investment.How.LESS && price.isNothing()) {
        continue;
      }
      buy = buy.add(price.buy());
      keep += price.keepPerYear().doubleValue();
      yearly +=
          InvestmentFormulas.yearly(
              price.buy().doubleValue(),
              price.lastsYears(),
              price.keepPerYear().doubleValue(),
              discount);
      longest = Math.max(longest, price.lastsYears());
      shortest = Math.min(shortest, price.buy().signum() > 0 ? price.lastsYears() : shortest);
    }
    if (longest == 0) {
      return null;
    }
    double factor = InvestmentFormulas.annuityFactor(discount, longest);
    Double payback = InvestmentFormulas.payback(buy.doubleValue(), gain.mean() - keep, discount);
    return new Investment.Worth(
        buy,
        BigDecimal.valueOf(yearly).setScale(2, RoundingMode.HALF_UP),
        longest,
        factor * (gain.mean() - yearly),
        factor * gain.halfWidth(),
        gain.isTold(),
        payback != null && payback <= shortest ? payback : null,
        chancePays(first, second, yearly, longest));
  }

  /** The share of lives, each year's spring drawn from those simulated, that are worth it. */
  private double chancePays(double[] first, double[] second, double yearly, double years) {
    RandomGenerator random = new Well19937c(seed);
    int whole = (int) Math.ceil(years);
    double[] today = new double[whole];
    for (int year = 0; year < whole; year++) {
      today[year] =
          InvestmentFormulas.annuityFactor(discount, Math.min(year + 1, years))
              - InvestmentFormulas.annuityFactor(discount, year);
    }
    double wanted = yearly * InvestmentFormulas.annuityFactor(discount, years);
    int pays = 0;
    for (int life = 0; life < LIVES; life++) {
      double worth = 0;
      for (int year = 0; year < whole; year++) {
        int spring = random.nextInt(first.length);
        worth += today[year] * (second[spring] - first[spring]);
      }
      pays += worth > wanted ? 1 : 0;
    }
    return pays / (double) LIVES;
  }
}
