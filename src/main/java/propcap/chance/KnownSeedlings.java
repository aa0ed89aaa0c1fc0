package propcap.chance;

import propcap.chance.ShowingLaw.Turn;

/**
 * When the seedlings of a tray show of which something is known. Between two known counts, and
 * after the last, the cells that show are spread evenly over the share of all cells.
 */
final class KnownSeedlings {
  private final EmergenceCurve curve;
  private final double rate;
  private final int cells;
  private final double readyAt;

  /** The last that is known, and after it, if it is still to come, when enough show. */
  private final Turn first;

  private final Turn second;
  private final double earlier;
  private final double later;

  private KnownSeedlings(
      EmergenceCurve curve,
      double rate,
      int cells,
      double readyAt,
      Turn first,
      Turn second,
      double earlier,
      double later) {
    this.curve = curve;
    this.rate = rate;
    this.cells = cells;
    this.readyAt = readyAt;
    this.first = first;
    this.second = second;
    this.earlier = earlier;
    this.later = later;
  }

  /** Where enough show only after the last count. */
  static KnownSeedlings after(
      EmergenceCurve curve,
      double rate,
      int cells,
      Turn counted,
      Turn enough,
      double earlier,
      double later) {
    double readyAt = curve.timeShown(enough.share(), rate);
    return new KnownSeedlings(curve, rate, cells, readyAt, counted, enough, earlier, later);
  }

  /** Where it is known when enough showed, or that they have not. */
  static KnownSeedlings at(
      EmergenceCurve curve, double rate, int cells, double readyAt, Turn counted, double later) {
    return new KnownSeedlings(curve, rate, cells, readyAt, counted, counted, later, later);
  }

  double readyAt() {
    return readyAt;
  }

  int fills() {
    return byShare(curve.fills(rate));
  }

  int showingBy(double degreeDays) {
    return byShare(curve.shows(curve.seed(degreeDays), rate));
  }

  private int byShare(double share) {
    if (share <= first.share()) {
      // What was counted; before that nobody asks.
      return first.shown();
    }
    if (share < second.share()) {
      double inside = (share - first.share()) / (second.share() - first.share());
      return first.shown() + Binomial.quantile(second.shown() - 1 - first.shown(), inside, earlier);
    }
    double inside = (share - second.share()) / (1 - second.share());
    return second.shown() + Binomial.quantile(cells - second.shown(), inside, later);
  }
}
