package propcap.web;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import propcap.report.KnownResults;
import propcap.report.ResultsFolder;

/**
 * An answer to a question, in the report's words and charts.
 *
 * @param known which answer it is
 * @param html the parts of the answer's page
 */
record Answer(List<String> headlines, String html, KnownResults known, Saving saving) {

  /** Writes the answer's files into a folder, as the command does. */
  @FunctionalInterface
  interface Saving {
    List<Path> into(ResultsFolder folder, String version) throws IOException;
  }
}
