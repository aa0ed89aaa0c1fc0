package propcap.report.germination;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import propcap.evidence.germination.CropEntry;
import propcap.evidence.germination.CropEntry.Showing;
import propcap.farm.Crop;
import propcap.report.kit.ListNumbers;

/** What a lot's test says, in the keys and units of the crop list. */
public final class CropEntryText {
  private static final int MOST_DIGITS = 9;

  private final CropEntry entry;

  public CropEntryText(CropEntry entry) {
    this.entry = entry;
  }

  /** The values that the test tells, by key of the crop, then by key within it. */
  public Map<String, Map<String, String>> values() {
    Map<String, Map<String, String>> values = new LinkedHashMap<>();
    Map<String, String> germination = new LinkedHashMap<>();
    germination.put("rate", ListNumbers.percent(entry.tested().rate()));
    germination.put("tested-seeds", Integer.toString(entry.tested().seeds()));
    Double correlation = entry.trayCorrelation();
    if (correlation != null) {
      germination.put(
          "tray-correlation",
          ListNumbers.number(Math.round(1000 * correlation) / 1000.0, ListNumbers.DIGITS));
    }
    values.put("germination", germination);
    Showing showing = entry.emergence();
    if (showing != null) {
      values.put("emergence", emergence(showing));
    }
    return values;
  }

  private Map<String, String> emergence(Showing showing) {
    Map<String, String> emergence = new LinkedHashMap<>();
    if (showing.baseC() != null) {
      emergence.put("base", ListNumbers.temperature(Math.round(10 * showing.baseC()) / 10.0));
    }
    emergence.put("at", ListNumbers.temperature(entry.atC()));
    int digits = ListNumbers.DIGITS;
    // Seedlings that come up all at once still need two days that differ.
    while (digits < MOST_DIGITS
        && ListNumbers.number(showing.halfByDays(), digits)
            .equals(ListNumbers.number(showing.mostByDays(), digits))) {
      digits++;
    }
    emergence.put("half-by", ListNumbers.number(showing.halfByDays(), digits) + " days");
    emergence.put("most-by", ListNumbers.number(showing.mostByDays(), digits) + " days");
    return emergence;
  }

  /**
   * The lines to paste into a crop list.
   *
   * @param known the crop as the list has it; null where there is no list
   */
  public List<String> block(@Nullable Crop known) {
    List<String> lines = new ArrayList<>();
    lines.add(entry.crop() + ":   # by the test of lot " + entry.lot());
    values()
        .forEach(
            (key, within) -> {
              if (key.equals("emergence")) {
                lines.addAll(hints(within, known));
              }
              lines.add("  " + key + ": " + map(key, within, known));
            });
    if (entry.emergence() == null) {
      lines.add("  # emergence: these counts do not tell when seedlings show; keep what you have");
    }
    return lines;
  }

  private static List<String> hints(Map<String, String> emergence, @Nullable Crop known) {
    if (known != null) {
      return List.of();
    }
    String lacking = emergence.containsKey("base") ? "" : "base, ";
    return List.of(
        "  # add " + lacking + "optimum and ceiling from your crop list, or give it with --crops");
  }

  private static String map(String key, Map<String, String> within, @Nullable Crop known) {
    Map<String, String> all = new LinkedHashMap<>();
    if (key.equals("emergence") && known != null) {
      Crop.Emergence emergence = known.emergence();
      all.put("base", ListNumbers.temperature(emergence.baseC()));
      all.putAll(within.containsKey("base") ? Map.of("base", within.get("base")) : Map.of());
      all.put("optimum", ListNumbers.temperature(emergence.optimumC()));
      all.put("ceiling", ListNumbers.temperature(emergence.ceilingC()));
    }
    all.putAll(within);
    return all.entrySet().stream()
        .map(e -> e.getKey() + ": " + e.getValue())
        .collect(Collectors.joining(", ", "{", "}"));
  }
}
