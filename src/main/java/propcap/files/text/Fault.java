package propcap.files.text;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Something wrong in a grower's file, or so unlikely that it is worth another look, at its place.
 *
 * @param spot the whole file, a line, or a column of it where that applies, as it does not in CSV
 * @param found what was found
 * @param right what would be right, or is more likely meant
 * @param about the value that it is about
 */
public record Fault(FilePosition spot, String found, String right, About about) {

  /**
   * Which value a fault is about, for whoever shows it beside the value.
   *
   * @param owner whose value, such as {@code tomato-1}; empty for a scenario's own, or where that
   *     is not known
   * @param path keys under which the map of the value stands, parted by points, such as {@code
   *     money.plants.tomato}; empty where it stands by itself
   * @param key such as {@code bed-by}; empty where the fault is of no single value
   * @param isMissing whether the key is not written at all
   * @param isToFind whether it is left empty, and some questions find it; each reader says how they
   *     are asked where it is read
   * @param slip the word in it that a known one is like; null where none is
   */
  public record About(
      String owner,
      String path,
      String key,
      boolean isMissing,
      boolean isToFind,
      Right.@Nullable Slip slip) {
    public static final About NO_VALUE = new About("", "");

    public About(String owner, String key) {
      this(owner, "", key, false, false, null);
    }

    About with(Right.@Nullable Slip meant) {
      return new About(owner, path, key, isMissing, isToFind, meant);
    }
  }

  public Path file() {
    return spot.file();
  }

  /** Counted from 1; 0 where the fault is of the whole file. */
  public int line() {
    return spot.line();
  }

  /** One line, as a terminal shows it: {@code crops.yaml:4:12: found; right}. */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder().append(file()).append(':');
    if (spot.line() > 0) {
      text.append(spot.line()).append(':');
      if (spot.column() > 0) {
        text.append(spot.column()).append(':');
      }
    }
    text.append(' ').append(found).append("; ").append(right);
    if (about.isToFind()) {
      text.append("; propcap plan and propcap latest find it where it is empty");
    }
    return text.toString();
  }
}
