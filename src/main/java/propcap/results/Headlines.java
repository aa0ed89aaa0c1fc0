package propcap.results;

import java.util.List;
import java.util.stream.Stream;

/**
 * An answer in a few lines of plain text, none wider than 100 columns.
 *
 * @param told the verdict first
 * @param basis what they rest on: of what was asked, and how many springs were tried
 */
public record Headlines(List<String> told, String basis) {
  public Headlines {
    told = List.copyOf(told);
  }

  /** All of them, what they rest on last. */
  public List<String> lines() {
    return Stream.concat(told.stream(), Stream.of(basis)).toList();
  }
}
