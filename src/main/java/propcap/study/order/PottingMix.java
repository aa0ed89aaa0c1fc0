package propcap.study.order;

import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;

/**
 * Mix for a tray or a pot.
 *
 * @param isDefault whether the crop list does not say it, so that a default stands for it
 */
record PottingMix(double litres, String unit, boolean isDefault) {
  /**
   * A tray holds less mix the more walls it has. Planning defaults, not measured: fill ten trays
   * and count the bags.
   */
  private static double trayLitres(int cells) {
    if (cells <= 60) {
      return 4.0;
    }
    if (cells <= 100) {
      return 3.2;
    }
    if (cells <= 150) {
      return 2.8;
    }
    return cells <= 250 ? 2.2 : 1.7;
  }

  /**
   * Pots that fill a standard 1020 flat of 28 x 54 cm, 8 cm deep, of which the pots' taper and what
   * is between them leave 65 %. Planning default, not measured.
   */
  private static final double FLAT_OF_POTS_LITRES = 2.8 * 5.4 * 0.8 * 0.65;

  static PottingMix ofTray(Crop crop) {
    return given(crop.materials().mixLitresPerTray(), trayLitres(crop.cells()), "tray");
  }

  static PottingMix ofPot(Crop crop) {
    double litres = FLAT_OF_POTS_LITRES / crop.pottingOn().potsPerTray();
    return given(crop.materials().mixLitresPerPot(), Math.round(100 * litres) / 100.0, "pot");
  }

  private static PottingMix given(@Nullable Double litres, double otherwise, String unit) {
    return litres == null
        ? new PottingMix(otherwise, unit, true)
        : new PottingMix(litres, unit, false);
  }

  /** Such as {@code 3.2 l a tray (planning default)}. */
  String words() {
    return SupplyList.plain(litres) + " l a " + unit + (isDefault ? " (planning default)" : "");
  }
}
