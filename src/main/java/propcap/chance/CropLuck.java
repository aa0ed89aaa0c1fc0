package propcap.chance;

import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;

/** The laws of chance of one crop, tabulated once and shared by all threads. */
public final class CropLuck {
  /** Lot rates are tabulated a quarter of a logit apart, from 6 in a million up. */
  private static final double LEAST_LOGIT = -12;

  private static final double LOGIT_STEP = 0.25;
  private static final int LOGITS = 97;

  private final Crop crop;
  private final EmergenceCurve curve;
  private final int cellsToLeave;

  /** One table: the lot's rate around the tested one. */
  private final QuantileTable.Row lot;

  /** By the lot's rate: the tray's rate around it. */
  private final QuantileTable.Row tray;

  /** By the number of cells that fill: the J-th of so many uniforms, in order. */
  private final QuantileTable.Row ready;

  /** One table: how bad an outbreak of damping-off is. */
  private final QuantileTable.Row severity;

  private static final Made<CropLaw, CropLuck> MADE = new Made<>(500);

  /** The laws of a crop, shared with crops whose luck is the same. */
  public static CropLuck of(Crop crop) {
    return MADE.of(CropLaw.of(crop), law -> new CropLuck(crop));
  }

  private CropLuck(Crop crop) {
    this.crop = crop;
    curve = new EmergenceCurve(crop);
    cellsToLeave = crop.cellsToLeave();
    double rate = crop.germination().rate();
    double tested = crop.germination().testedSeeds();
    lot = new QuantileTable.Row(1, i -> new QuantileTable(rate * tested, (1 - rate) * tested));
    double rho = crop.germination().trayCorrelation();
    double sharpness = (1 - rho) / rho;
    tray =
        new QuantileTable.Row(
            LOGITS,
            i -> {
              double g = QuantileTable.logistic(LEAST_LOGIT + i * LOGIT_STEP);
              return new QuantileTable(g * sharpness, (1 - g) * sharpness);
            });
    ready =
        new QuantileTable.Row(
            crop.cells() + 1, fills -> new QuantileTable(cellsToLeave, fills - cellsToLeave + 1));
    double s = crop.growingOn().dampingOff().severity();
    severity = new QuantileTable.Row(1, i -> new QuantileTable(2 * s, 2 * (1 - s)));
  }

  /** The trays of a lot with a germination rate, 0 to 1, this season. */
  Lot lot(double rate) {
    return new Lot(rate);
  }

  /** The trays of one lot. */
  final class Lot {
    private final double rate;

    /** The trays' rates around the lot's; null: they are its own. */
    private final @Nullable QuantileTable around;

    private Lot(double rate) {
      this.rate = rate;
      around = isSame(rate) ? null : between(rate);
    }

    /**
     * The luck of a tray.
     *
     * @param uniforms one for each {@link DrawPurpose}, in their order; kept, so not to be changed
     */
    TrayLuck tray(double[] uniforms) {
      return new NewTrayLuck(CropLuck.this, this, uniforms);
    }

    /** A tray's germination rate, from its uniform. */
    double trayRate(double u) {
      return around == null ? rate : around.at(StandardNormal.score(u));
    }
  }

  private boolean isSame(double lotRate) {
    return crop.germination().trayCorrelation() == 0 || lotRate == 0 || lotRate == 1;
  }

  /** A lot's germination rate in a season, from its uniform: the test it comes from was finite. */
  double lotRate(double u) {
    double rate = crop.germination().rate();
    if (crop.germination().testedSeeds() == 0 || rate == 0 || rate == 1) {
      return rate;
    }
    return lot.get(0).at(StandardNormal.score(u));
  }

  private @Nullable QuantileTable between(double lotRate) {
    double position = (Math.log(lotRate / (1 - lotRate)) - LEAST_LOGIT) / LOGIT_STEP;
    if (position < 1 || position > LOGITS - 3) {
      return null;
    }
    int i = (int) position;
    return QuantileTable.between(
        tray.get(i - 1), tray.get(i), tray.get(i + 1), tray.get(i + 2), position - i);
  }

  /** The share of the filling cells' time curve at which the J-th of them shows. */
  double readyShare(int fills, double u) {
    return ready.get(fills).at(StandardNormal.score(u));
  }

  double pace(double u) {
    double spread = crop.growingOn().spread();
    return spread == 0 ? 1 : Math.exp(spread * StandardNormal.score(u));
  }

  double severity(double outbreak, double u) {
    double mean = crop.growingOn().dampingOff().severity();
    if (outbreak >= crop.growingOn().dampingOff().chance()) {
      return 0;
    }
    return mean == 0 || mean == 1 ? mean : severity.get(0).at(StandardNormal.score(u));
  }

  Crop.Germination germination() {
    return crop.germination();
  }

  double spread() {
    return crop.growingOn().spread();
  }

  EmergenceCurve curve() {
    return curve;
  }

  int cells() {
    return crop.cells();
  }

  int cellsToLeave() {
    return cellsToLeave;
  }
}
