package propcap.files;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;
import propcap.files.text.Fields;

/** The rows of one tray of a germination test, each held against the one before it. */
final class CountRows {
  static final int MOST_SEEDS = 10_000;

  private final String lot;
  private final String crop;
  private final double tempC;
  private final String tray;
  private final List<Inspection> inspections = new ArrayList<>();
  private boolean sound = true;
  private int seeds;
  private double days = -1;
  private int emerged;
  private int line;
  private @Nullable Fields last;

  CountRows(String lot, String crop, double tempC, String tray) {
    this.lot = lot;
    this.crop = crop;
    this.tempC = tempC;
    this.tray = tray;
  }

  /**
   * Adds an inspection.
   *
   * @param counted the column of the count: {@code emerged} by then, or {@code new}
   */
  void add(Fields fields, int rowSeeds, double rowDays, String counted, int count) {
    if (!fields.sound()) {
      sound = false;
      return;
    }
    String before = " (line " + line + ")";
    int now = counted.equals("new") ? emerged + count : count;
    if (line > 0 && rowSeeds != seeds) {
      fields.wrong("seeds", "but was " + seeds + before, "the same seeds in every row of a tray");
    }
    if (rowDays <= days) {
      fields.wrong(
          fields.has("time") ? "time" : "time-hours",
          "not after the inspection before it" + before,
          "times that rise from row to row of a tray");
    }
    if (now < emerged) {
      fields.wrong(
          counted,
          "fewer than the " + emerged + " before it" + before,
          "all seedlings so far; a column new may hold those of each interval");
    } else if (now > rowSeeds) {
      fields.wrong(
          counted,
          "which makes " + now + " seedlings of " + rowSeeds + " seeds",
          "no more seedlings than seeds");
    } else if (rowDays == 0 && now > 0) {
      fields.wrong(counted, "at time 0", "no seedling at the sowing");
    }
    seeds = rowSeeds;
    days = Math.max(days, rowDays);
    emerged = Math.max(emerged, Math.min(now, rowSeeds));
    line = fields.at().line();
    last = fields;
    if (fields.sound()) {
      inspections.add(new Inspection(rowDays, now));
    } else {
      sound = false;
    }
  }

  /** Empty where anything is wrong with it, which is reported. */
  Optional<CountedTray> tray() {
    if (sound && last != null && days <= 0) {
      last.fault(last.at(), "a tray that was looked at when it was sown alone", "a later look");
      sound = false;
    }
    return sound && !inspections.isEmpty()
        ? Optional.of(new CountedTray(lot, crop, tempC, tray, seeds, inspections))
        : Optional.empty();
  }
}
