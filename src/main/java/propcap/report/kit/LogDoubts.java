package propcap.report.kit;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.farm.UnlikelyTray;

/** What in a log makes one ask whether a row is missing or wrong, in words. */
public final class LogDoubts {
  private static final int FEW = 5;

  private record Key(String sowing, UnlikelyTray.Kind kind) {}

  private LogDoubts() {}

  /** A sentence for each sowing and kind, the first few of them. */
  public static List<String> told(List<UnlikelyTray> unlikely) {
    Map<Key, List<UnlikelyTray>> alike = new LinkedHashMap<>();
    unlikely.forEach(
        u -> alike.computeIfAbsent(new Key(u.sowing(), u.kind()), k -> new ArrayList<>()).add(u));
    List<String> told = new ArrayList<>();
    alike.entrySet().stream()
        .limit(FEW)
        .forEach(e -> told.add(e.getKey().sowing() + ": " + told(e.getKey().kind(), e.getValue())));
    int more = alike.size() - told.size();
    if (more > 0) {
      told.add(
          more == 1
              ? "There is one more such line in the log."
              : "There are " + more + " more such lines in the log.");
    }
    return told;
  }

  private static String told(UnlikelyTray.Kind kind, List<UnlikelyTray> trays) {
    String count = Words.plural(trays.size(), "tray");
    boolean isOne = trays.size() == 1;
    String has = isOne ? " has" : " have";
    String days = days(trays);
    String usual = Words.plural(trays.get(0).usual(), "day");
    return switch (kind) {
      case STILL_IN_HEAT ->
          "by the log "
              + count
              + has
              + " been in the heat for "
              + days
              + ", though there was room to leave; usual is "
              + usual
              + ". Is a row off-heat missing? As it stands, the seed is taken as poor.";
      case LATE_OFF_HEAT ->
          "by the log "
              + count
              + " left the heat after "
              + days
              + ", though there was room before; usual is "
              + usual
              + ". Check both dates: as they stand, the seed is taken as poor.";
      case EARLY_OFF_HEAT ->
          "by the log "
              + count
              + " left the heat after "
              + days
              + "; usual is "
              + usual
              + ", and so soon too few can show. Check both dates: as they stand, the seed is taken as"
              + " quick.";
      case STILL_ON_TABLE ->
          "by the log "
              + count
              + has
              + " grown on for "
              + days
              + ", though there was room to move on; usual is "
              + usual
              + ". Is a row missing? As it stands, the plants are taken as slow.";
      case LATE_FROM_TABLE ->
          "by the log "
              + count
              + " grew on for "
              + days
              + ", though there was room to move on before; usual is "
              + usual
              + ". Check both dates: as they stand, the plants are taken as slow.";
      case EARLY_FROM_TABLE ->
          "by the log "
              + count
              + " moved on after growing on for "
              + days
              + "; usual is "
              + usual
              + ". Check both dates: as they stand, the plants are taken as quick.";
    };
  }

  private static String days(List<UnlikelyTray> trays) {
    int least = trays.stream().mapToInt(UnlikelyTray::days).min().orElseThrow();
    int most = trays.stream().mapToInt(UnlikelyTray::days).max().orElseThrow();
    return least == most ? Words.plural(most, "day") : least + " to " + most + " days";
  }
}
