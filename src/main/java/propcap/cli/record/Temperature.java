package propcap.cli.record;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import propcap.files.weather.Degrees;

/** A temperature of an option, such as 0C or 28 F, in degrees C. */
final class Temperature implements ITypeConverter<Double> {
  @Override
  public Double convert(String text) {
    try {
      return Degrees.typedC(text);
    } catch (IllegalArgumentException e) {
      throw new TypeConversionException(e.getMessage());
    }
  }
}
