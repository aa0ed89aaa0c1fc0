package propcap.files.text;

import java.nio.file.Path;

/**
 * A place in a grower's file.
 *
 * @param line counted from 1; 0 for the whole file
 * @param column counted from 1; 0 for a whole line
 */
public record FilePosition(Path file, int line, int column) {

  public static FilePosition whole(Path file) {
    return new FilePosition(file, 0, 0);
  }

  public Fault fault(String found, String right) {
    return fault(found, right, Fault.About.NO_VALUE);
  }

  Fault fault(String found, String right, Fault.About about) {
    return new Fault(this, found, right, about);
  }
}
