package propcap.farm;

import java.io.Serializable;

/** How warm a place is on a day, given the outdoor daily mean. Temperatures in degrees C. */
public sealed interface Climate extends Serializable {

  /** The place's temperature on a day, degrees C, held for the whole day. */
  double meanC(double outdoorMeanC);

  /** A place held at one temperature: a germination chamber, a heat mat with a thermostat. */
  record Constant(double tempC) implements Climate {
    public Constant {
      Checks.finite("a constant temperature", tempC);
    }

    @Override
    public double meanC(double outdoorMeanC) {
      return tempC;
    }
  }

  /**
   * A house heated to at least {@code heatToC}, that the sun lifts {@code liftC} above the outdoor
   * mean, and whose vents open at {@code ventAtC}.
   */
  record Heated(double heatToC, double liftC, double ventAtC) implements Climate {
    /** Planning default, not measured. */
    public static final double DEFAULT_VENT_AT_C = 35;

    public Heated {
      Checks.finite("heat-to", heatToC);
      Checks.finite("lift", liftC);
      Checks.finite("vent-at", ventAtC);
      Checks.require(
          ventAtC >= heatToC,
          "vent-at must be at least heat-to (" + heatToC + " C), was " + ventAtC);
    }

    @Override
    public double meanC(double outdoorMeanC) {
      return Math.min(ventAtC, Math.max(heatToC, outdoorMeanC + liftC));
    }
  }

  /** Outdoors, or under cover that adds no warmth. */
  record Outdoor() implements Climate {
    @Override
    public double meanC(double outdoorMeanC) {
      return outdoorMeanC;
    }
  }
}
