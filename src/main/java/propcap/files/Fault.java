package propcap.files;

import java.nio.file.Path;

/**
 * Something wrong in a grower's file, or so unlikely that it is worth another look, at its place.
 *
 * @param line counted from 1; 0 where the fault is of the whole file
 * @param column counted from 1; 0 where it does not apply, as in CSV
 * @param found what was found
 * @param right what would be right, or is more likely meant
 */
public record Fault(Path file, int line, int column, String found, String right) {

  /** One line, as it is shown to the grower: {@code crops.yaml:4:12: found; right}. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder().append(file).append(':');
    if (line > 0) {
      text.append(line).append(':');
      if (column > 0) {
        text.append(column).append(':');
      }
    }
    return text.append(' ').append(found).append("; ").append(right).toString();
  }
}
