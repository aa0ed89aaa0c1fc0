package propcap.chance;

/** The luck of a tray of which nothing is known yet. */
final class NewTrayLuck extends TrayLuck {
  private final double rate;
  private final int fills;
  private final double readyShare;
  private final double readyAt;

  /**
   * A tray's luck.
   *
   * @param lot the lot that it is of, with its germination rate this season
   * @param uniforms one for each {@link DrawPurpose}, in their order; kept, so not to be changed
   */
  NewTrayLuck(CropLuck crop, CropLuck.Lot lot, double[] uniforms) {
    super(crop, uniforms);
    rate = lot.trayRate(of(DrawPurpose.RATE));
    fills = Binomial.quantile(crop.cells(), crop.curve().fills(rate), of(DrawPurpose.FILLS));
    boolean reaches = fills >= crop.cellsToLeave();
    readyShare = reaches ? crop.readyShare(fills, of(DrawPurpose.READY)) : 1;
    readyAt = reaches ? crop.curve().degreeDaysAt(readyShare, rate) : Double.POSITIVE_INFINITY;
  }

  @Override
  public int fills() {
    return fills;
  }

  @Override
  public double readyAt() {
    return readyAt;
  }

  @Override
  public int showingBy(double degreeDays) {
    if (fills == 0) {
      return 0;
    }
    double share = crop().curve().cell(degreeDays, rate);
    int toLeave = crop().cellsToLeave();
    if (fills < toLeave) {
      return Binomial.quantile(fills, share, of(DrawPurpose.EARLIER));
    }
    if (degreeDays < readyAt) {
      return Binomial.quantile(toLeave - 1, share / readyShare, of(DrawPurpose.EARLIER));
    }
    double later = readyShare < 1 ? (share - readyShare) / (1 - readyShare) : 1;
    return toLeave + Binomial.quantile(fills - toLeave, later, of(DrawPurpose.LATER));
  }
}
