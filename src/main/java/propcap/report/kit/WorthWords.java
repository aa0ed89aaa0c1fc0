package propcap.report.kit;

import propcap.study.Comparison.Worth;

/** What a purchase is worth, for other programs. */
public final class WorthWords {
  private WorthWords() {}

  public static Json worth(Worth worth) {
    return new Json()
        .put("buy", worth.buy())
        .put("yearly", worth.yearly())
        .put("years", worth.years())
        .put("netPresentValue", worth.netPresentValue())
        .put("netPresentValueHalfWidth", worth.netPresentValueHalfWidth())
        .put("pays", worth.pays().word())
        .put("paybackYears", worth.paybackYears())
        .put("chancePays", worth.chancePays());
  }
}
