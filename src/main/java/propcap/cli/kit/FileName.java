package propcap.cli.kit;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.TypeConversionException;

/** The name of a file or folder. */
public final class FileName implements ITypeConverter<Path> {
  @Override
  public Path convert(String text) {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new TypeConversionException("'" + text + "' is not the name of a file");
    }
  }
}
