package propcap.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.study.Supplies;
import propcap.study.Supplies.Kind;

/** The order list as a page, a table and a file for other programs. */
public final class OrderResults {
  private OrderResults() {}

  /**
   * Writes all of it into a folder of results, or nothing.
   *
   * @return the files written, the page first
   * @throws IllegalArgumentException where a number is not finite
   */
  public static List<Path> write(Supplies supplies, String version, ResultsFolder folder)
      throws IOException {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("order.html", OrderPage.of(supplies, version).html());
    files.put("order.csv", OrderFiles.csv(supplies));
    files.put(KnownResults.ORDER.file(), OrderFiles.json(supplies, version));
    return folder.write(files);
  }

  /** At most ten lines of plain text, none wider than 100 columns. */
  public static List<String> headlines(Supplies supplies) {
    Lines lines = new Lines().add(OrderWords.verdict(supplies));
    OrderWords.beyond(supplies).ifPresent(lines::add);
    lines.add(OrderWords.changes(supplies));
    lines.add(
        "Order: "
            + OrderWords.total(supplies, Kind.SEED)
            + " of "
            + Words.plural(supplies.lots().size(), "lot")
            + ", "
            + OrderWords.total(supplies, Kind.TRAYS)
            + ", "
            + OrderWords.total(supplies, Kind.POTS)
            + ", "
            + OrderWords.total(supplies, Kind.MIX)
            + ", "
            + OrderWords.total(supplies, Kind.LABELS));
    return lines.endingWith(
        supplies.scenario().name()
            + ": "
            + Words.plural(supplies.seasons(), "spring")
            + ", seed "
            + supplies.settings().seed());
  }
}
