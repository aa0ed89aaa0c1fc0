package propcap.cli.kit;

import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;
import propcap.files.text.Fields;

/** A day of an option, written as 2027-03-22. */
public final class Day implements ITypeConverter<LocalDate> {
  @Override
  public LocalDate convert(String text) {
    try {
      LocalDate day = LocalDate.parse(text.strip());
      if (Fields.isOfOurTimes(day)) {
        return day;
      }
    } catch (DateTimeParseException e) {
      // Told below, as for any other text that is no day.
    }
    throw new TypeConversionException("'" + text + "' is not a day such as 2027-03-22");
  }
}
