package propcap.report;

import java.util.List;
import java.util.Optional;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.study.Comparison;
import propcap.study.Comparison.Addition;
import propcap.study.Comparison.Investment;
import propcap.study.Comparison.Worth;

/**
 * Whether to buy what an alternative adds, in words.
 *
 * @param name the alternative's
 * @param first the scenario's that it is set against
 * @param isOneOfMany whether there are others that a verdict could be taken for
 */
record InvestmentWords(
    String name,
    String first,
    boolean isOneOfMany,
    Investment investment,
    Money money,
    double discount) {
  private static final String NONE = "–";

  /** An alternative's; empty where no money is asked. */
  static Optional<InvestmentWords> of(Comparison comparison, int alternative) {
    Prices prices = comparison.scenarios().get(0).prices();
    if (prices == null || comparison.investments().size() <= alternative) {
      return Optional.empty();
    }
    return Optional.of(
        new InvestmentWords(
            comparison.scenarios().get(alternative + 1).name(),
            comparison.scenarios().get(0).name(),
            comparison.investments().size() > 1,
            comparison.investments().get(alternative),
            new Money(prices.currency()),
            prices.discount()));
  }

  private Optional<Worth> worth() {
    return Optional.ofNullable(investment.worth());
  }

  /** Such as {@code Chamber 2 and the larger Glasshouse (310 spaces)}. */
  private static String places(List<Addition> additions) {
    return Words.list(additions.stream().map(InvestmentWords::place).toList());
  }

  private static String place(Addition addition) {
    Place place = addition.place();
    return addition.isEnlarged()
        ? "the larger " + place.name() + " (" + Words.plural(place.spaces(), "space") + ")"
        : place.name();
  }

  /** What the alternative does, to stand below its name. */
  String does() {
    if (investment.additions().isEmpty()) {
      return "buys nothing";
    }
    List<Addition> unpriced = investment.unpriced();
    return "buys "
        + places(investment.additions())
        + (unpriced.isEmpty() ? "" : "; no cost of " + names(unpriced));
  }

  private static String names(List<Addition> additions) {
    return Words.list(additions.stream().map(a -> a.place().name()).toList());
  }

  // Cells of a table: a dash where there is nothing to say.

  String buy() {
    return worth().map(w -> Money.level(w.buy().doubleValue(), 0)).orElse(NONE);
  }

  String yearly() {
    return worth().map(w -> Money.level(w.yearly().doubleValue(), 0)).orElse(NONE);
  }

  String value() {
    return worth()
        .map(w -> Money.bare(w.netPresentValue(), w.netPresentValueHalfWidth()))
        .orElse(NONE);
  }

  String payback() {
    return worth().map(InvestmentWords::payback).orElse(NONE);
  }

  private static String payback(Worth worth) {
    return worth.paybackYears() == null ? "never" : Words.amount(worth.paybackYears());
  }

  String chance() {
    return worth().map(w -> Words.chance(w.chancePays())).orElse(NONE);
  }

  /** Whether to buy, in one sentence or two. */
  String verdict() {
    if (investment.additions().isEmpty()) {
      return name + ": nothing is to be bought. Its margin is " + margin() + told();
    }
    return worth().map(this::verdict).orElseGet(this::unpriced);
  }

  private String told() {
    return investment.gain().isClear() ? "." : ": neither a gain nor a loss is told.";
  }

  private String unpriced() {
    List<Addition> unpriced = investment.unpriced();
    boolean one = unpriced.size() == 1;
    return names(unpriced)
        + asIn(",")
        + (one ? " has" : " have")
        + " no cost in the scenario: whether it pays cannot be told. The margin before buying is "
        + margin()
        + told()
        + " Give "
        + (one ? "it" : "each")
        + " cost: {buy: ..., lasts: ... years}.";
  }

  private String verdict(Worth worth) {
    boolean one = investment.additions().size() == 1;
    String why =
        switch (advice(worth)) {
          case BUY ->
              one
                  ? ": over its life it brings more than it costs"
                  : ": over their lives they bring more than they cost";
          case LEAVE ->
              one
                  ? ": over its life it costs more than it brings"
                  : ": over their lives they cost more than they bring";
          case NOT_TOLD -> "";
        };
    return start(worth)
        + why
        + " (net present value "
        + value(worth)
        + ")."
        + (advice(worth) == Advice.NOT_TOLD ? " Only more springs would tell." : "");
  }

  /** The verdict where there is little room. */
  String shortVerdict() {
    return worth()
        .map(w -> start(w) + ": net present value " + value(w) + ".")
        .orElseGet(this::verdict);
  }

  private enum Advice {
    BUY,
    LEAVE,
    NOT_TOLD
  }

  /** Follows the interval of the net present value. */
  private static Advice advice(Worth worth) {
    double halfWidth = worth.netPresentValueHalfWidth();
    return worth.netPresentValue() > halfWidth
        ? Advice.BUY
        : worth.netPresentValue() < -halfWidth ? Advice.LEAVE : Advice.NOT_TOLD;
  }

  private String start(Worth worth) {
    String what = places(investment.additions());
    return switch (advice(worth)) {
      case BUY -> "Buy " + what + asIn("");
      case LEAVE -> "Do not buy " + what + asIn("");
      case NOT_TOLD ->
          "Whether "
              + what
              + asIn(",")
              + (investment.additions().size() == 1 ? " pays" : " pay")
              + " is not told";
    };
  }

  private String value(Worth worth) {
    return money.difference(worth.netPresentValue(), worth.netPresentValueHalfWidth());
  }

  /** Of which alternative the verdict is, with what ends it in its sentence. */
  private String asIn(String end) {
    return isOneOfMany ? ", as in " + name + end : "";
  }

  private String margin() {
    return money.difference(investment.gain()) + " a season against " + first;
  }

  /** What the verdict rests on; empty where there is none. */
  String reasons() {
    return worth().map(this::reasons).orElse("");
  }

  private String reasons(Worth worth) {
    return name
        + ": buying "
        + places(investment.additions())
        + " costs "
        + money.amount(worth.buy())
        + " once, which with upkeep is "
        + money.amount(worth.yearly())
        + " a year at "
        + Words.given(discount)
        + "; the margin, running costs paid, is "
        + margin()
        + ". At the mean gain it is "
        + (worth.paybackYears() == null
            ? "never paid back"
            : "paid back after " + Words.plural(worth.paybackYears(), "year"))
        + ". The chance that it pays is "
        + Words.chance(worth.chancePays())
        + ".";
  }
}
