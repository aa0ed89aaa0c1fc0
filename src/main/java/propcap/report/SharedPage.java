package propcap.report;

import java.util.List;
import propcap.report.kit.Templates;

/** What a phone in the same network is shown: the forecast and the answers, to read. */
public record SharedPage(String scenario, List<Entry> entries) {
  public SharedPage {
    entries = List.copyOf(entries);
  }

  /**
   * An answer.
   *
   * @param at the path of its files, from this page
   */
  public record Entry(String title, List<String> lines, String at, List<String> files) {
    public Entry {
      lines = lines.stream().map(String::strip).toList();
      files = files.stream().filter(f -> f.endsWith(".html") || f.endsWith(".ics")).toList();
    }
  }

  public String html() {
    return Templates.fill("shared.jte", this);
  }
}
