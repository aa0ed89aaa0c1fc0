package propcap.report.kit;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import propcap.farm.Prices;
import propcap.study.compare.Comparison;
import propcap.study.money.Investment;
import propcap.study.money.Investment.Change;
import propcap.study.money.Investment.Pays;
import propcap.study.money.Investment.Worth;

/**
 * Whether to change the places as an alternative does, in words.
 *
 * @param name the alternative's
 * @param first the scenario's that it is set against
 * @param isOneOfMany whether there are others that a verdict could be taken for
 */
public record InvestmentWords(
    String name,
    String first,
    boolean isOneOfMany,
    Investment investment,
    Money money,
    double discount) {
  private static final String NONE = "–";

  /** An alternative's; empty where no money is asked. */
  public static Optional<InvestmentWords> of(Comparison comparison, int alternative) {
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

  /** Those of all alternatives; none where no money is asked. */
  public static List<InvestmentWords> of(Comparison comparison) {
    return IntStream.range(0, comparison.scenarios().size() - 1)
        .mapToObj(a -> of(comparison, a))
        .flatMap(Optional::stream)
        .toList();
  }

  /** With another name of the alternative. */
  public InvestmentWords named(String newName) {
    return new InvestmentWords(newName, first, isOneOfMany, investment, money, discount);
  }

  private Optional<Worth> worth() {
    return Optional.ofNullable(investment.worth());
  }

  /** What the alternative does, to stand below its name. */
  public String does() {
    List<String> does = new ArrayList<>();
    if (!investment.bought().isEmpty()) {
      does.add("buys " + ChangeWords.bought(investment.bought()));
    }
    investment.givenUp().forEach(c -> does.add(ChangeWords.gives(c)));
    if (!investment.unpriced().isEmpty()) {
      does.add("no cost of " + ChangeWords.names(investment.unpriced()));
    }
    return does.isEmpty() ? "buys nothing" : String.join("; ", does);
  }

  // Cells of a table: a dash where there is nothing to say.

  public String amount(Function<Worth, BigDecimal> of) {
    return worth().map(w -> Money.level(of.apply(w).doubleValue(), 0)).orElse(NONE);
  }

  public String value() {
    return worth()
        .filter(Worth::isTold)
        .map(w -> Money.bare(w.netPresentValue(), w.netPresentValueHalfWidth()))
        .orElse(NONE);
  }

  public String payback() {
    return worth().filter(w -> w.buy().signum() > 0).map(InvestmentWords::payback).orElse(NONE);
  }

  private static String payback(Worth worth) {
    return worth.paybackYears() == null ? "never" : Words.amount(worth.paybackYears());
  }

  public String chance() {
    return worth().map(w -> Words.chance(w.chancePays())).orElse(NONE);
  }

  /** Whether to do it, in one sentence or two. */
  public String verdict() {
    if (worth().isPresent()) {
      return verdict(worth().get());
    }
    return investment.unpriced().isEmpty() ? nothingToBuy() : unpriced();
  }

  private String nothingToBuy() {
    List<Change> givenUp = investment.givenUp();
    return name
        + ": nothing is to be bought. Its margin is "
        + margin()
        + told()
        + (givenUp.isEmpty()
            ? ""
            : " No upkeep of " + ChangeWords.names(givenUp) + " is written that would be saved.");
  }

  private String told() {
    return investment.gain().isClear() ? "." : ": neither a gain nor a loss is told.";
  }

  private String unpriced() {
    List<Change> unpriced = investment.unpriced();
    boolean one = unpriced.size() == 1;
    if (unpriced.stream().anyMatch(c -> c.place().cost() != null)) {
      return ChangeWords.names(unpriced)
          + (one ? " has" : " have")
          + " a cost in one of "
          + first
          + " and "
          + name
          + " only, though nothing else of it is another: whether it pays cannot be told. Give it"
          + " the same cost in both.";
    }
    if (investment.gain().isLess() && !isUpkeepSaved()) {
      return "Do not buy %s%s: even before it is paid for, the margin is %s."
          .formatted(what(), asIn(""), margin());
    }
    return ChangeWords.names(unpriced)
        + asIn(",")
        + (one ? " has" : " have")
        + " no cost in the scenario: whether it pays cannot be told. The margin before buying is "
        + margin()
        + told()
        + " Give "
        + (one ? "it" : "each")
        + " a cost: what it takes to buy, and how many years it lasts.";
  }

  private boolean isUpkeepSaved() {
    return investment.changes().stream()
        .anyMatch(c -> c.price() != null && c.price().keepPerYear().signum() < 0);
  }

  private String verdict(Worth worth) {
    return "%s%s (net present value %s).%s"
        .formatted(start(worth), why(worth), value(worth), whatWouldTell(worth));
  }

  private String why(Worth worth) {
    if (worth.pays() == Pays.NOT_TOLD) {
      return "";
    }
    boolean pays = worth.pays() == Pays.YES;
    if (investment.bought().isEmpty()) {
      return pays ? ": that saves more than it loses" : ": that loses more than it saves";
    }
    boolean one = investment.bought().size() == 1;
    return (one ? ": over its life it " : ": over their lives they ")
        + (pays
            ? (one ? "brings" : "bring") + " more than " + (one ? "it costs" : "they cost")
            : (one ? "costs" : "cost") + " more than " + (one ? "it brings" : "they bring"));
  }

  private String whatWouldTell(Worth worth) {
    if (worth.pays() != Pays.NOT_TOLD) {
      return "";
    }
    if (!worth.isTold()) {
      return " The margins differ in "
          + Words.plural(investment.gain().differing(), "spring")
          + ": too few to tell.";
    }
    return worth.netPresentValueHalfWidth() == 0
        ? " It brings what it costs."
        : " Only more springs would tell.";
  }

  /** The verdict where there is little room. */
  public String shortVerdict() {
    return worth()
        .map(w -> start(w) + ": net present value " + value(w) + ".")
        .orElseGet(this::verdict);
  }

  private String start(Worth worth) {
    boolean buys = !investment.bought().isEmpty();
    String what = buys ? "buy " + what() : what();
    return switch (worth.pays()) {
      case YES -> Words.capital(what) + asIn("");
      case NO -> "Do not " + what + asIn("");
      case NOT_TOLD, NOT_KNOWN -> "Whether it pays to " + what + asIn(",") + " is not told";
    };
  }

  /**
   * All of it, without its verb where something is bought: what is given up for it stands after.
   */
  private String what() {
    List<Change> givenUp = investment.givenUp();
    if (investment.bought().isEmpty()) {
      return Words.list(givenUp.stream().map(ChangeWords::give).toList());
    }
    return ChangeWords.bought(investment.bought())
        + (givenUp.isEmpty()
            ? ""
            : " with " + Words.list(givenUp.stream().map(ChangeWords::given).toList()));
  }

  private String value(Worth worth) {
    return worth.isTold()
        ? money.difference(worth.netPresentValue(), worth.netPresentValueHalfWidth())
        : "about " + money.amount(worth.netPresentValue());
  }

  /** Of which alternative the verdict is, with what ends it in its sentence. */
  private String asIn(String end) {
    return isOneOfMany ? ", as in " + name + end : "";
  }

  private String margin() {
    return money.difference(investment.gain()) + " a season against " + first;
  }

  /** What the verdict rests on; empty where there is none. */
  public String reasons() {
    return worth().map(this::reasons).orElse("");
  }

  private String reasons(Worth worth) {
    List<String> reasons = new ArrayList<>();
    investment.changes().forEach(c -> ChangeWords.costs(c, money).ifPresent(reasons::add));
    boolean costs = worth.yearly().signum() >= 0;
    return name
        + ": "
        + String.join("; ", reasons)
        + ". In all that "
        + (costs ? "costs " : "saves ")
        + money.amount(worth.yearly().abs())
        + " a year at "
        + Words.given(discount)
        + "; the margin, running costs paid, is "
        + margin()
        + "."
        + paidBack(worth)
        + " The chance that it pays is "
        + Words.chance(worth.chancePays())
        + ".";
  }

  private static String paidBack(Worth worth) {
    if (worth.buy().signum() == 0) {
      return "";
    }
    return worth.paybackYears() == null
        ? " At the mean gain it is never paid back: not before it must be bought again."
        : " At the mean gain it is paid back after "
            + Words.plural(worth.paybackYears(), "year")
            + ".";
  }
}
