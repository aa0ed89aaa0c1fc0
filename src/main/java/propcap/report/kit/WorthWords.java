package propcap.report.kit;

import java.util.Locale;
import propcap.study.Comparison.Pays;
import propcap.study.Comparison.Worth;

/** What a purchase is worth, for other programs. */
public final class WorthWords {
  private WorthWords() {}

  public static PutJson worth(Worth worth) {
    return new PutJson()
        .put("buy", worth.buy())
        .put("yearly", worth.yearly())
        .put("years", worth.years())
        .put("netPresentValue", worth.netPresentValue())
        .put("netPresentValueHalfWidth", worth.netPresentValueHalfWidth())
        .put("pays", word(worth.pays()))
        .put("paybackYears", worth.paybackYears())
        .put("chancePays", worth.chancePays());
  }

  /** Such as {@code not-told}. */
  public static String word(Pays pays) {
    return pays.name().toLowerCase(Locale.ENGLISH).replace('_', '-');
  }
}
