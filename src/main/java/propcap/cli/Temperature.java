package propcap.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import propcap.files.Degrees;

/** A temperature of an option, such as 0C or 28F: degrees C, to a tenth as records hold them. */
final class Temperature implements ITypeConverter<Double> {
  @Override
  public Double convert(String text) {
    try {
      return Math.round(10 * Degrees.typedC(text)) / 10.0;
    } catch (IllegalArgumentException e) {
      throw new TypeConversionException(e.getMessage());
    }
  }
}
