package propcap.report;

import java.util.List;
import java.util.Optional;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.study.Comparison;
import propcap.study.Comparison.Investment;

/** Whether to buy what an alternative adds, in words. */
record InvestmentWords(String name, Investment investment, Money money, double discount) {

  /** An alternative's; empty where no money is asked. */
  static Optional<InvestmentWords> of(Comparison comparison, int alternative) {
    Prices prices = comparison.scenarios().get(0).prices();
    if (prices == null || comparison.investments().size() <= alternative) {
      return Optional.empty();
    }
    return Optional.of(
        new InvestmentWords(
            comparison.scenarios().get(alternative + 1).name(),
            comparison.investments().get(alternative),
            new Money(prices.currency()),
            prices.discount()));
  }

  boolean isBought() {
    return !investment.places().isEmpty();
  }

  String places() {
    List<String> names = investment.places().stream().map(Place::name).toList();
    return names.isEmpty() ? "nothing" : Words.list(names);
  }

  String netPresentValue() {
    return money.difference(investment.netPresentValue(), investment.netPresentValueHalfWidth());
  }

  String buy() {
    return Money.level(investment.buy().doubleValue(), 0);
  }

  String yearly() {
    return Money.level(investment.yearly().doubleValue(), 0);
  }

  String bareValue() {
    return Money.bare(investment.netPresentValue(), investment.netPresentValueHalfWidth());
  }

  private double low() {
    return investment.netPresentValue() - investment.netPresentValueHalfWidth();
  }

  private double high() {
    return investment.netPresentValue() + investment.netPresentValueHalfWidth();
  }

  /** Whether to buy, in one sentence. */
  String verdict() {
    if (!isBought()) {
      return name
          + ": nothing is to be bought. Its margin is "
          + margin()
          + (investment.gain().isClear() ? "." : ": neither a gain nor a loss is told.");
    }
    String value = " (net present value " + netPresentValue() + ").";
    if (low() > 0) {
      return "Buy " + places() + ": over its life it brings more than it costs" + value;
    }
    if (high() < 0) {
      return "Do not buy " + places() + ": over its life it costs more than it brings" + value;
    }
    return "Whether " + places() + " pays is not told" + value + " Only more springs would tell.";
  }

  private String margin() {
    return money.difference(investment.gain()) + " a season against the first";
  }

  /** What the verdict rests on. */
  String reasons() {
    if (!isBought()) {
      return "";
    }
    return name
        + ": buying "
        + places()
        + " costs "
        + money.amount(investment.buy())
        + " once, which with upkeep is "
        + money.amount(investment.yearly())
        + " a year at "
        + Words.given(discount)
        + "; the margin, running costs paid, is "
        + margin()
        + ". At the mean gain it is "
        + paidBack()
        + ". The chance that it pays is "
        + Words.chance(investment.chancePays())
        + ".";
  }

  private String paidBack() {
    return investment.paybackYears() == null
        ? "never paid back"
        : "paid back after " + Words.plural(investment.paybackYears(), "year");
  }

  String payback() {
    return investment.paybackYears() == null ? "never" : Words.amount(investment.paybackYears());
  }
}
