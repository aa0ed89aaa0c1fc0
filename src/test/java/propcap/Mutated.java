package propcap;

import java.util.List;
import java.util.SplittableRandom;

/** A text after slips of the pen, of a tool, of the disk: the same ones for the same luck. */
public final class Mutated {
  /** The pieces most likely to make sense in the wrong place. */
  private static final List<String> PIECES =
      List.of(
          "{",
          "}",
          "[",
          "]",
          ":",
          ": ",
          ",",
          "\"",
          "'",
          "\n",
          "\t",
          "- ",
          "#",
          "&a ",
          "*a",
          "!!int ",
          "---\n",
          "? ",
          "|",
          ">",
          "%",
          " C",
          " F",
          "days",
          ".nan",
          "-.inf",
          "1e999",
          "NaN",
          "-",
          "0",
          "99999999999999999999",
          "2027-02-30",
          "\u0000",
          "\uFEFF",
          "\r",
          "\\",
          "<<: ",
          "~");

  private Mutated() {}

  /**
   * Changes a text.
   *
   * @param slips how many
   */
  public static String of(String text, int slips, SplittableRandom random) {
    StringBuilder mutated = new StringBuilder(text);
    List<String> lines = text.lines().toList();
    for (int slip = 0; slip < slips && !mutated.isEmpty(); slip++) {
      int at = random.nextInt(mutated.length());
      int end = Math.min(mutated.length(), at + 1 + random.nextInt(6));
      String line = lines.get(random.nextInt(lines.size())) + "\n";
      switch (random.nextInt(8)) {
        case 0 -> mutated.delete(at, end);
        case 1 -> mutated.insert(at, PIECES.get(random.nextInt(PIECES.size())));
        case 2 -> mutated.replace(at, end, PIECES.get(random.nextInt(PIECES.size())));
        case 3 -> mutated.setCharAt(at, (char) random.nextInt(256));
        case 4, 5 -> replaceDigit(mutated, at, (char) ('0' + random.nextInt(10)));
        case 6 -> mutated.insert(mutated.indexOf("\n") + 1, line);
        default -> mutated.setLength(at);
      }
    }
    return mutated.toString();
  }

  /** Other numbers in the right places are what may well be read. */
  private static void replaceDigit(StringBuilder text, int from, char digit) {
    for (int i = from; i < text.length(); i++) {
      if (Character.isDigit(text.charAt(i))) {
        text.setCharAt(i, digit);
        return;
      }
    }
  }
}
