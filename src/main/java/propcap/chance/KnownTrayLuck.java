package propcap.chance;

import umontreal.ssj.probdist.NormalDist;

/** The luck of a tray that has been sown, given what is known of it. */
final class KnownTrayLuck extends TrayLuck {
  private final KnownTray known;
  private final KnownSeedlings seedlings;

  /**
   * A tray's luck.
   *
   * @param rate its own germination rate, drawn given what is known
   * @param uniforms one for each {@link DrawPurpose}, in their order; kept, so not to be changed
   */
  KnownTrayLuck(CropLuck crop, KnownTray known, ShowingLaw law, double rate, double[] uniforms) {
    super(crop, uniforms);
    this.known = known;
    seedlings =
        law.draw(rate, of(DrawPurpose.READY), of(DrawPurpose.EARLIER), of(DrawPurpose.LATER));
  }

  @Override
  public int fills() {
    return seedlings.fills();
  }

  @Override
  public double readyAt() {
    return seedlings.readyAt();
  }

  @Override
  public int showingBy(double degreeDays) {
    return seedlings.showingBy(degreeDays);
  }

  @Override
  public double pace() {
    double spread = crop().spread();
    if (spread == 0) {
      return Math.max(known.paceAfter(), Math.min(known.paceBy(), 1));
    }
    double after = Math.log(Math.max(0, known.paceAfter())) / spread;
    double by = Math.log(known.paceBy()) / spread;
    return Math.exp(spread * normalWithin(after, by, of(DrawPurpose.PACE)));
  }

  @Override
  public double severity() {
    return known.hadOutbreak() ? crop().severity(0, of(DrawPurpose.SEVERITY)) : super.severity();
  }

  /**
   * A standard normal between two limits; where it is next to never between them, at the nearer.
   */
  static double normalWithin(double after, double by, double u) {
    if (after > 0) {
      return -normalWithin(-by, -after, 1 - u);
    }
    double below = NormalDist.cdf01(after);
    double chance = NormalDist.cdf01(by) - below;
    if (chance <= 0) {
      return by < 0 ? by : after;
    }
    return Math.max(after, Math.min(by, NormalDist.inverseF01(below + u * chance)));
  }
}
