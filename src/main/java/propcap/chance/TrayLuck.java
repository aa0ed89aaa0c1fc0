package propcap.chance;

/**
 * All that luck has in store for one tray, whatever is done with it. What depends on the path (how
 * warm it stood, how long it was held) is the same uniform put through a different chance.
 */
public final class TrayLuck {
  private final CropLuck crop;
  private final double[] uniforms;
  private final double rate;
  private final int fills;
  private final double readyShare;
  private final double readyAt;

  TrayLuck(CropLuck crop, double lotRate, double[] uniforms) {
    this.crop = crop;
    this.uniforms = uniforms;
    rate = crop.trayRate(lotRate, of(DrawPurpose.RATE));
    fills = Binomial.quantile(crop.cells(), crop.curve().fills(rate), of(DrawPurpose.FILLS));
    boolean reaches = fills >= crop.cellsToLeave();
    readyShare = reaches ? crop.readyShare(fills, of(DrawPurpose.READY)) : 1;
    readyAt = reaches ? crop.curve().degreeDaysAt(readyShare, rate) : Double.POSITIVE_INFINITY;
  }

  private double of(DrawPurpose draw) {
    return uniforms[draw.ordinal()];
  }

  /** Cells that fill, sooner or later. */
  public int fills() {
    return fills;
  }

  /**
   * Thermal time, degree days, at which as many cells show as it takes to leave the heat: infinite
   * where fewer fill.
   */
  public double readyAt() {
    return readyAt;
  }

  /** Cells that show by a thermal time, degree days. Never falls as time goes on. */
  public int showingBy(double degreeDays) {
    if (fills == 0) {
      return 0;
    }
    double share = crop.curve().cell(degreeDays, rate);
    int toLeave = crop.cellsToLeave();
    if (fills < toLeave) {
      return Binomial.quantile(fills, share, of(DrawPurpose.EARLIER));
    }
    if (degreeDays < readyAt) {
      return Binomial.quantile(toLeave - 1, share / readyShare, of(DrawPurpose.EARLIER));
    }
    double later = readyShare < 1 ? (share - readyShare) / (1 - readyShare) : 1;
    return toLeave + Binomial.quantile(fills - toLeave, later, of(DrawPurpose.LATER));
  }

  /** How many times the median thermal time of growing on the tray needs. */
  public double pace() {
    return crop.pace(of(DrawPurpose.PACE));
  }

  /** Chance that each plant is lost to damping-off: 0 in a tray without an outbreak. */
  public double severity() {
    return crop.severity(of(DrawPurpose.OUTBREAK), of(DrawPurpose.SEVERITY));
  }

  /** Of some plants that are each lost with a chance, 0 to 1, the number lost. */
  public int lost(DrawPurpose cause, int plants, double chance) {
    return Binomial.quantile(plants, chance, of(cause));
  }
}
