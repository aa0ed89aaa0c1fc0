package propcap.files.text;

import org.jspecify.annotations.Nullable;

/**
 * What would be right in place of what was found.
 *
 * @param words as a grower reads them
 * @param slip the known word that is meant; null where none is like what was written
 */
public record Right(String words, @Nullable Slip slip) {
  /** A word that was written, and the known one that it is like. */
  public record Slip(String written, String known) {}

  static Right of(String words) {
    return new Right(words, null);
  }

  /** The same after other words. */
  public Right after(String before) {
    return new Right(before + words, slip);
  }
}
