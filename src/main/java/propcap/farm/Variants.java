package propcap.farm;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Scenarios that are tried beside each other.
 *
 * @param columns what a table of changes changes, such as {@code spaces of Chamber}; none where the
 *     scenarios were written by themselves
 * @param all the first is the one that the others are held against
 */
public record Variants(List<String> columns, List<Variant> all) {
  public Variants {
    columns = List.copyOf(columns);
    all = List.copyOf(all);
  }

  /**
   * One of them.
   *
   * @param name by which it is told apart
   * @param settings one for each column
   */
  public record Variant(String name, Scenario scenario, List<Setting> settings) {
    public Variant {
      settings = List.copyOf(settings);
    }
  }

  /**
   * What a scenario has in a column.
   *
   * @param written such as {@code 60} or {@code 7 days}
   * @param number without its unit; null where it is no one number, as of sowings that differ
   */
  public record Setting(String written, @Nullable Double number) {}

  /** The scenarios alone. */
  public List<Scenario> scenarios() {
    return all.stream().map(Variant::scenario).toList();
  }
}
