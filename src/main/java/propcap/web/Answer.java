package propcap.web;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;

/**
 * An answer to a question, in the report's words and charts.
 *
 * @param ending of the results' folder, as the command names it, such as {@code -compare}
 * @param html the parts of the answer's page
 */
record Answer(List<String> headlines, String html, String ending, Saving saving) {

  /** Writes the answer's files into a folder, as the command does. */
  @FunctionalInterface
  interface Saving {
    List<Path> into(Path folder, String version) throws IOException;
  }
}
