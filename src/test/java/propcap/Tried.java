package propcap;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * The table of a long trial: what the profiles {@code guarantees} and {@code attack} tried, how
 * often, and what came of it. Each tagged test writes its rows to {@code target/NAME.md}, from
 * where they are copied into docs with the day.
 */
public final class Tried {
  private Tried() {}

  /**
   * Adds a row.
   *
   * @param table {@code guarantees} or {@code attack}
   * @param what the sentence that is told, or what was done
   * @param cases how often, on what
   * @param held what came of it, with its error
   */
  public static synchronized void row(String table, String what, String cases, String held) {
    Path file = Path.of("target", table + ".md");
    try {
      if (!Files.exists(file)) {
        Files.createDirectories(file.getParent());
        Files.writeString(file, "| what is told | tried on | what came of it |\n|---|---|---|\n");
      }
      Files.writeString(
          file,
          "| " + what + " | " + cases + " | " + held + " |\n",
          StandardCharsets.UTF_8,
          StandardOpenOption.APPEND);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
