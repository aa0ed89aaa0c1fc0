package propcap.study.order;

/**
 * How much is enough where what comes of it is uncertain, both too little and too much cost money,
 * and it must be decided before: the newsvendor's question (Arrow, Harris and Marschak 1951,
 * Econometrica 19).
 *
 * @param lacking cost of each one that is lacking
 * @param surplus cost of each one too many; less than 0 where even these gain
 */
public record Newsvendor(double lacking, double surplus) {
  public Newsvendor {
    if (!Double.isFinite(lacking) || !Double.isFinite(surplus)) {
      throw new IllegalArgumentException("costs must be finite");
    }
  }

  /**
   * The critical ratio: it pays to have more until the chance to have enough is this, 0 to 1. It is
   * 1 where a surplus costs nothing, and 0 where lacking one costs nothing.
   */
  public double criticalRatio() {
    if (lacking <= 0) {
      return 0;
    }
    return surplus <= 0 ? 1 : lacking / (lacking + surplus);
  }
}
