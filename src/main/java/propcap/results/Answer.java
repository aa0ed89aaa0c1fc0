package propcap.results;

import java.util.Map;

/**
 * The answer to a question, as it is told: in a few lines on a terminal, as files in a folder of
 * results, and as parts of a page.
 */
public interface Answer {
  /** Which answer it is: which folder it goes into, and which files are its own. */
  AnswerKind kind();

  /** At most ten lines, but for what is told of an order. */
  Headlines headlines();

  /**
   * The texts of all files by their names, the page first.
   *
   * @param version of this program, shown in them
   * @throws IllegalArgumentException where a number is not finite
   */
  Map<String, String> files(String version);

  /** The parts of its page as HTML, for a page that shows them beside other things. */
  String html();
}
