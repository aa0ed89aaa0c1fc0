package propcap.report.kit;

import java.util.ArrayList;
import java.util.List;
import propcap.results.Headlines;

/** Sentences as lines of a terminal: a long one goes on, set in, on the next line. */
public final class Lines {
  /** As wide as a terminal of old, and a little more. */
  public static final int COLUMNS = 100;

  public static final int MOST = 10;
  private static final String SET_IN = "  ";

  /** A ± stays with the numbers on both sides of it, a % with its own. */
  private static final String BETWEEN_WORDS = "(?<!±) (?![±%])";

  /** By sentence. */
  private final List<List<String>> all = new ArrayList<>();

  public Lines add(String sentence) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : sentence.split(BETWEEN_WORDS, -1)) {
      if (!line.isEmpty() && line.length() + 1 + word.length() > COLUMNS) {
        lines.add(line.toString());
        line = new StringBuilder(SET_IN + word);
      } else {
        line.append(line.isEmpty() ? "" : " ").append(word);
      }
    }
    lines.add(line.toString());
    all.add(lines);
    return this;
  }

  /**
   * The first sentences, so many as a terminal's headlines have room for, and last of all one more
   * line. Only the first of all is cut where it is too long by itself.
   */
  public Headlines endingWith(String last) {
    List<String> most = new ArrayList<>(all.stream().flatMap(List::stream).toList());
    if (most.size() >= MOST) {
      most.clear();
      for (List<String> sentence : all) {
        if (!most.isEmpty() && most.size() + sentence.size() > MOST - 2) {
          break;
        }
        most.addAll(sentence.subList(0, Math.min(sentence.size(), MOST - 2)));
      }
      most.add("… more is in the report");
    }
    return new Headlines(
        most.stream().map(l -> Words.shortened(l, COLUMNS)).toList(),
        Words.shortened(last, COLUMNS));
  }
}
