package propcap.files.text;

import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** How faults speak of what a grower wrote, and which known word was meant. */
public final class FaultWords {
  /** More than this of a value tells a reader nothing. */
  private static final int MOST_SHOWN = 60;

  private static final int MOST_LISTED = 20;

  private FaultWords() {}

  /** The text in quotes, on one line and no longer than a line can hold. */
  public static String shown(String text) {
    return text.isEmpty() ? "empty" : quoted(text, MOST_SHOWN);
  }

  /** A file's name in quotes, whole as far as a system allows names. */
  public static String shownPath(Path file) {
    return quoted(file.toString(), 4096);
  }

  private static String quoted(String text, int most) {
    StringBuilder shown = new StringBuilder("'");
    int end = Math.min(text.length(), most);
    for (int i = 0; i < end; i++) {
      char c = text.charAt(i);
      shown.append(Character.isISOControl(c) || Character.isSurrogate(c) ? '?' : c);
    }
    return shown.append(text.length() > end ? "...'" : "'").toString();
  }

  /** Whether a name is one line of visible text. */
  public static boolean isName(String text) {
    return !text.isBlank()
        && text.length() <= MOST_SHOWN
        && text.chars().noneMatch(Character::isISOControl);
  }

  /** A near word among the known ones, else all of them, as what would be right. */
  public static Right oneOf(String word, Collection<String> known) {
    return nearOr(word, known, "one of " + some(known, MOST_LISTED));
  }

  /** A near word among the known ones, as what would be right; else what is given. */
  public static Right nearOr(String word, Collection<String> known, String otherwise) {
    return nearest(word, known)
        .map(near -> new Right("did you mean " + near + "?", new Right.Slip(word, near)))
        .orElseGet(() -> Right.of(otherwise));
  }

  /** The first of some names, and how many more there are. */
  public static String some(Collection<String> names, int most) {
    int more = names.size() - most;
    return names.stream().limit(most).collect(Collectors.joining(", "))
        + (more > 0 ? " and " + more + " more" : "");
  }

  /** All of some names, of which there is at least one. */
  public static String listed(List<String> names) {
    int last = names.size() - 1;
    return last == 0
        ? names.get(0)
        : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
  }

  /** The known word that differs least, if by no more than a slip of the pen. */
  public static Optional<String> nearest(String word, Collection<String> known) {
    if (word.length() > MOST_SHOWN) {
      return Optional.empty();
    }
    String sought = word.toLowerCase(Locale.ROOT);
    int least = Math.max(1, Math.min(3, word.length() / 3)) + 1;
    String nearest = null;
    for (String candidate : known) {
      if (Math.abs(candidate.length() - word.length()) >= least) {
        continue;
      }
      int slips = slips(sought, candidate.toLowerCase(Locale.ROOT));
      if (slips < least) {
        least = slips;
        nearest = candidate;
      }
    }
    return Optional.ofNullable(nearest);
  }

  /** Letters to insert, drop, replace or swap with their neighbour to make one word the other. */
  static int slips(String a, String b) {
    int[][] slips = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      for (int j = 0; j <= b.length(); j++) {
        if (i == 0 || j == 0) {
          slips[i][j] = i + j;
          continue;
        }
        int same = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        slips[i][j] =
            Math.min(slips[i - 1][j - 1] + same, 1 + Math.min(slips[i - 1][j], slips[i][j - 1]));
        if (i > 1
            && j > 1
            && a.charAt(i - 1) == b.charAt(j - 2)
            && a.charAt(i - 2) == b.charAt(j - 1)) {
          slips[i][j] = Math.min(slips[i][j], slips[i - 2][j - 2] + 1);
        }
      }
    }
    return slips[a.length()][b.length()];
  }
}
