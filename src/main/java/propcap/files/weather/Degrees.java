package propcap.files.weather;

import org.jspecify.annotations.Nullable;
import propcap.files.text.FaultWords;
import propcap.files.text.Quantity;

/** What a file's temperatures are in, and temperatures as a grower types them. */
public enum Degrees {
  C,
  F,
  /** Tenths of a degree C, as the GHCN-Daily writes them. */
  TENTHS;

  /** How these were read, and what to ask for if they are in another unit. */
  String readAs() {
    return switch (this) {
      case C -> "read as degrees C; --unit F if they are in F";
      case F -> "read as degrees F; --unit C if they are in C";
      case TENTHS -> "read as tenths of a degree C; --unit C or --unit F if they are not";
    };
  }

  /** The temperature in degrees C. */
  public double toC(double given) {
    return switch (this) {
      case C -> given;
      case F -> (given - 32) * 5 / 9;
      case TENTHS -> given / 10;
    };
  }

  /** A difference of temperatures in degrees C. */
  double differenceToC(double given) {
    return switch (this) {
      case C -> given;
      case F -> given * 5 / 9;
      case TENTHS -> given / 10;
    };
  }

  /**
   * A temperature such as {@code 0C} or {@code 28 F}, in degrees C.
   *
   * @throws IllegalArgumentException saying what would be right
   */
  public static double typedC(String text) {
    Quantity.Reading reading = Quantity.TEMPERATURE.read(text);
    @Nullable String right = reading.right();
    if (right != null) {
      throw new IllegalArgumentException(FaultWords.shown(text) + " is not right; " + right);
    }
    return reading.value();
  }
}
