package propcap.report.bottleneck;

import java.util.List;
import java.util.Optional;
import propcap.report.kit.Money;
import propcap.report.kit.Words;
import propcap.study.bottleneck.Bottlenecks;
import propcap.study.bottleneck.Bottlenecks.Step;
import propcap.study.bottleneck.Bottlenecks.Trial;
import propcap.study.money.Investment;
import propcap.study.money.Investment.Pays;
import propcap.study.statistics.Difference;

/** What more of a place brings in money, in words. */
record MoneyWords(Money money) {
  static MoneyWords of(Bottlenecks answer) {
    return new MoneyWords(Money.of(answer.scenario()).orElse(new Money("")));
  }

  /** Such as {@code +30 ± 23 EUR of margin a season}. */
  String margin(Difference margin) {
    return money.difference(margin) + " of margin a season";
  }

  /** What it is worth, bought or only taken on. */
  String worth(Trial trial) {
    Investment.Worth worth = trial.worth();
    if (worth != null) {
      return "net present value "
          + money.difference(worth.netPresentValue(), worth.netPresentValueHalfWidth());
    }
    return Optional.ofNullable(trial.margin()).map(this::margin).orElse("");
  }

  /** Why it does not pay. */
  String against(Trial trial) {
    Difference margin = trial.margin();
    return margin != null && margin.isLess()
        ? "even before buying the margin falls (" + money.difference(margin) + " a season)"
        : "%s more than that is worth (%s)"
            .formatted(trial.spaces() == 1 ? "costs" : "cost", worth(trial));
  }

  /** What the steps bring before they are paid for; nothing where one of them may bring none. */
  String beforeBuying(List<Step> steps) {
    if (steps.stream().anyMatch(s -> s.trial().pays() != Pays.NOT_KNOWN)) {
      return "";
    }
    List<String> margins =
        steps.stream()
            .map(s -> s.trial().margin())
            .flatMap(m -> Optional.ofNullable(m).map(Money::bare).stream())
            .toList();
    return margins.isEmpty()
        ? ""
        : " Before buying %s%s %s of margin a season."
            .formatted(
                steps.size() == 1 ? "it brings " : "they bring ",
                Words.list(margins),
                money.currency());
  }
}
