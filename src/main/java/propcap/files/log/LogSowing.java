package propcap.files.log;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.regex.Pattern;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;

/** The trays of one sowing of a log, as they come up in its rows. */
final class LogSowing {
  private static final Pattern NUMBER = Pattern.compile("[1-9][0-9]{0,5}");

  private final String id;
  private final Map<String, LogTray> byName = new LinkedHashMap<>();
  private final TreeMap<Integer, LogTray> byRank = new TreeMap<>();

  /** Numbers that some row names: no tray of another name takes them. */
  private final Set<Integer> named = new HashSet<>();

  private int lowestUnnamed = 1;
  private int lowestFree = 1;

  /** Whether a row of it could not be understood: then it isn't known where its trays are. */
  private boolean isOpen;

  LogSowing(String id) {
    this.id = id;
  }

  /** Takes note of the names of a row before any row is read. */
  void expect(LogRow row) {
    row.trays()
        .ifPresent(
            trays ->
                trays.names().stream()
                    .filter(name -> NUMBER.matcher(name).matches())
                    .forEach(name -> named.add(Integer.parseInt(name))));
  }

  boolean isOpen() {
    return isOpen;
  }

  /**
   * The trays of a row; none where it speaks of more than there are, which is reported.
   *
   * @param planned how many trays the plan has; empty where it has no such sowing
   * @param potting when its crop is potted on
   */
  List<LogTray> taken(LogRow row, Optional<Integer> planned, Crop.PottingOn.When potting) {
    if (row.trays().isEmpty() || row.event().isEmpty()) {
      isOpen = true;
      return List.of();
    }
    LogRow.Trays trays = row.trays().get();
    LoggedEvent event = row.event().get();
    if (!trays.names().isEmpty()) {
      return trays.names().stream().map(this::tray).toList();
    }
    return event == LoggedEvent.SOWN
        ? sown(row, trays.count(), planned)
        : standing(row, trays.count(), event, potting);
  }

  private List<LogTray> sown(LogRow row, Optional<Integer> count, Optional<Integer> planned) {
    int left = planned.map(n -> n - byRank.headMap(n, true).size()).orElse(0);
    if (count.isEmpty() && left <= 0) {
      tell(
          row,
          planned.orElse(0) == 0
              ? "sown: all trays of " + id + ", of which the plan has none"
              : "sown: all trays of "
                  + id
                  + ", but the log has all "
                  + planned.orElse(0)
                  + " already",
          "how many in a column trays");
      return List.of();
    }
    List<LogTray> trays = new ArrayList<>();
    for (int n = count.orElse(left); n > 0; n--) {
      while (byRank.containsKey(lowestFree) || byName.containsKey("" + lowestFree)) {
        lowestFree++;
      }
      trays.add(made("" + lowestFree, lowestFree));
    }
    return trays;
  }

  private List<LogTray> standing(
      LogRow row, Optional<Integer> count, LoggedEvent event, Crop.PottingOn.When potting) {
    List<LogTray> there = byRank.values().stream().filter(t -> t.isFor(event, potting)).toList();
    if (count.isPresent() ? there.size() < count.get() : there.isEmpty()) {
      String asked =
          count.map(n -> n + (n == 1 ? " tray" : " trays")).orElse("all trays") + " of " + id;
      tell(
          row,
          "%s of %s, but the log has %s%s"
              .formatted(
                  event.word(),
                  asked,
                  there.isEmpty() ? "none" : "only " + there.size(),
                  where(event, potting)),
          there.isEmpty() ? "the rows of what came before" : "at most " + there.size());
      isOpen = true;
      return List.of();
    }
    return there.subList(0, count.orElse(there.size()));
  }

  private static String where(LoggedEvent event, Crop.PottingOn.When potting) {
    return switch (event.after(potting)) {
      case OFF_HEAT -> " on the tables for it";
      case POTTED_ON -> " in pots for it";
      case MOVED_OUT -> " hardening off";
      default -> event == LoggedEvent.THROWN_OUT ? " that is still there" : " in the heat";
    };
  }

  private void tell(LogRow row, String found, String right) {
    if (!isOpen) {
      row.fields().fault("event", found, right);
    }
  }

  private LogTray tray(String name) {
    LogTray known = byName.get(name);
    if (known != null) {
      return known;
    }
    if (NUMBER.matcher(name).matches() && !byRank.containsKey(Integer.parseInt(name))) {
      return made(name, Integer.parseInt(name));
    }
    while (byRank.containsKey(lowestUnnamed) || named.contains(lowestUnnamed)) {
      lowestUnnamed++;
    }
    return made(name, lowestUnnamed);
  }

  private LogTray made(String name, int rank) {
    LogTray tray = new LogTray(id, name, rank);
    byName.put(name, tray);
    byRank.put(rank, tray);
    return tray;
  }
}
