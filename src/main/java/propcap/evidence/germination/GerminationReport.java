package propcap.evidence.germination;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.toList;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.farm.CountedTray;

/** A germination test as a seed laboratory reports it: indices of each tray, replicates judged. */
public record GerminationReport(List<Group> groups) {
  public GerminationReport {
    groups = List.copyOf(groups);
  }

  /** A tray and its indices. */
  public record Tray(CountedTray counts, GerminationIndices indices) {}

  /** The trays of one lot at one temperature. */
  public record Group(
      String crop, String lot, double tempC, List<Tray> trays, ReplicateTolerance tolerance) {
    public Group {
      trays = List.copyOf(trays);
    }

    public int seeds() {
      return trays.stream().mapToInt(t -> t.counts().seeds()).sum();
    }

    public int emerged() {
      return trays.stream().mapToInt(t -> t.counts().emerged()).sum();
    }

    /** Of all seeds together: where trays differ in size, not the mean of theirs. */
    public double pooledPercent() {
      return 100.0 * emerged() / seeds();
    }

    /** The mean of the trays' percents, each tray counting as one. */
    public double meanPercent() {
      return trays.stream().mapToDouble(t -> t.indices().percent()).average().orElseThrow();
    }
  }

  /** Reports counts, in their order. */
  public static GerminationReport of(List<CountedTray> trays) {
    Map<List<Object>, List<CountedTray>> byGroup =
        trays.stream()
            .collect(
                groupingBy(
                    t -> List.of(t.crop(), t.lot(), t.tempC()), LinkedHashMap::new, toList()));
    return new GerminationReport(byGroup.values().stream().map(GerminationReport::group).toList());
  }

  private static Group group(List<CountedTray> trays) {
    CountedTray first = trays.get(0);
    return new Group(
        first.crop(),
        first.lot(),
        first.tempC(),
        trays.stream().map(t -> new Tray(t, GerminationIndices.of(t))).toList(),
        ReplicateTolerance.of(trays));
  }
}
