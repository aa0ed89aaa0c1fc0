package propcap.files.log;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import propcap.farm.LoggedEvent;

/** What a row of a log counts in its trays, tray by tray. */
final class DealtPlants {
  /** More than any tray holds; as many trays as a row can have still add up to an int. */
  private static final int NO_END = Integer.MAX_VALUE / 200_000;

  /**
   * A row's plants dealt to its trays: whole ones, of which none has more than before, and their
   * sum that of the row.
   */
  static List<@Nullable Integer> of(LogRow row, List<LogTray> trays) {
    List<@Nullable Integer> dealt = new ArrayList<>();
    Double mean = row.plants();
    if (mean == null || row.event().isEmpty()) {
      trays.forEach(t -> dealt.add(null));
      return dealt;
    }
    LoggedEvent event = row.event().get();
    long most = trays.stream().mapToLong(t -> t.most(NO_END)).sum();
    long least = trays.stream().mapToLong(t -> t.least(event)).sum();
    long sum = Math.round(mean * trays.size());
    if (sum > most || sum < least) {
      row.fields()
          .fault(
              "plants",
              "%s plants of %s, but %s before that"
                  .formatted(
                      row.fields().known().word("plants"),
                      LogTray.names(trays),
                      perTray(sum > most ? most : least, trays.size())),
              sum < least
                  ? "no fewer than showed before"
                  : "no more than before; on the row of off-heat, those that stood when the last"
                      + " were up");
      trays.forEach(t -> dealt.add(null));
      return dealt;
    }
    int[] each = new int[trays.size()];
    long left = sum;
    for (int i = 0; i < each.length; i++) {
      LogTray tray = trays.get(i);
      int share = (int) (Math.round((i + 1) * mean) - Math.round(i * mean));
      each[i] = Math.max(tray.least(event), Math.min(tray.most(NO_END), share));
      left -= each[i];
    }
    for (int i = 0; left != 0; i++) {
      LogTray tray = trays.get(i);
      long by =
          left > 0
              ? Math.min(left, tray.most(NO_END) - each[i])
              : Math.max(left, tray.least(event) - each[i]);
      each[i] += (int) by;
      left -= by;
    }
    for (int plants : each) {
      dealt.add(plants);
    }
    return dealt;
  }

  private static String perTray(long sum, int trays) {
    return trays == 1 || sum % trays == 0
        ? "" + sum / trays
        : String.format(Locale.ROOT, "%.1f", (double) sum / trays);
  }

  private DealtPlants() {}
}
