package propcap.report.kit;

import propcap.study.money.Investment.Worth;

/** What a purchase is worth, in files. */
public final class WorthTable {
  public static final Table<Worth> WORTH =
      new Table<Worth>()
          .json("buy", Worth::buy)
          .json("yearly", Worth::yearly)
          .json("years", Worth::years)
          .file("net-present-value", Worth::netPresentValue)
          .file("net-present-value-half-width", Worth::netPresentValueHalfWidth)
          .file("pays", Worth::pays)
          .csv("payback-years", w -> w.paybackYears() == null ? "never" : w.paybackYears())
          .json("paybackYears", Worth::paybackYears)
          .file("chance-pays", Worth::chancePays);

  private WorthTable() {}
}
