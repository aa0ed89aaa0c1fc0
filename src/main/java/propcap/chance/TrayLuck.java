package propcap.chance;

/**
 * All that luck has in store for one tray, whatever is done with it. What depends on the path (how
 * warm it stood, how long it was held) is the same uniform put through a different chance.
 */
public abstract class TrayLuck {
  private final CropLuck crop;
  private final double[] uniforms;

  TrayLuck(CropLuck crop, double[] uniforms) {
    this.crop = crop;
    this.uniforms = uniforms;
  }

  final double of(DrawPurpose draw) {
    return uniforms[draw.ordinal()];
  }

  final CropLuck crop() {
    return crop;
  }

  /** Cells that fill, sooner or later. */
  public abstract int fills();

  /**
   * Thermal time, degree days, at which as many cells show as it takes to leave the heat: infinite
   * where fewer fill.
   */
  public abstract double readyAt();

  /** Cells that show by a thermal time, degree days. Never falls as time goes on. */
  public abstract int showingBy(double degreeDays);

  /** How many times the median thermal time of growing on the tray needs. */
  public double pace() {
    return crop.pace(of(DrawPurpose.PACE));
  }

  /** Chance that each plant is lost to damping-off: 0 in a tray without an outbreak. */
  public double severity() {
    return crop.severity(of(DrawPurpose.OUTBREAK), of(DrawPurpose.SEVERITY));
  }

  /** Of some plants that are each lost with a chance, 0 to 1, the number lost. */
  public final int lost(DrawPurpose cause, int plants, double chance) {
    return Binomial.quantile(plants, chance, of(cause));
  }
}
