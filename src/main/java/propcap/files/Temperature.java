package propcap.files;

/** A temperature as a grower writes it, apart from any file: {@code 65F}, {@code 18 C}. */
public final class Temperature {
  private Temperature() {}

  /**
   * Degrees C.
   *
   * @throws IllegalArgumentException where it is no temperature, with what would be right
   */
  public static double inC(String text) {
    Quantity.Reading reading = Quantity.TEMPERATURE.read(text);
    if (reading.right() != null) {
      throw new IllegalArgumentException(Words.shown(text) + "; " + reading.right());
    }
    return reading.value();
  }
}
