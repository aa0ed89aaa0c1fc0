package propcap.season;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import propcap.chance.SeasonLuck;
import propcap.chance.ThermalClock;
import propcap.farm.LoggedEvent;
import propcap.farm.TrayTask;
import propcap.past.WrittenTray;
import propcap.past.WrittenTray.Entry;

/** The log that a grower would have kept of a simulated season up to a day. */
public final class PretendedLog {
  /** What a grower counts. */
  public enum Counting {
    NOTHING,
    /** The stand of each tray once its last seedlings are up, and the plants at each move. */
    STANDS,
    /** That, and on one day what shows in each tray that is still in the heat. */
    ALL
  }

  private record Key(int sowing, int tray, int attempt) {}

  private final SeasonPlan plan;
  private final Diary diary;
  private final int today;
  private final boolean isCounted;
  private final Map<Key, List<Entry>> entries = new LinkedHashMap<>();
  private final Map<Key, Integer> attempts = new LinkedHashMap<>();

  private PretendedLog(SeasonPlan plan, Diary diary, int today, boolean isCounted) {
    this.plan = plan;
    this.diary = diary;
    this.today = today;
    this.isCounted = isCounted;
  }

  /**
   * The log of a season.
   *
   * @param today number of the first day that is not in it
   */
  public static List<WrittenTray> of(
      SeasonPlan plan, SeasonLuck luck, int today, Counting counting) {
    Diary diary = House.seasonWithDiary(plan, luck).diary();
    PretendedLog log = new PretendedLog(plan, diary, today, counting != Counting.NOTHING);
    log.note();
    if (counting == Counting.ALL) {
      log.entries.forEach((key, of) -> log.countInHeat(luck, key, of));
    }
    return log.trays();
  }

  /** The log of a season that has been simulated, stands counted. */
  public static List<WrittenTray> of(SeasonPlan plan, Diary diary, int today) {
    PretendedLog log = new PretendedLog(plan, diary, today, true);
    log.note();
    return log.trays();
  }

  private void note() {
    for (int note = 0; note < diary.size() && diary.day(note) < today; note++) {
      note(note);
    }
    for (Diary.ThrownOut out : diary.thrownOut()) {
      if (out.day() < today) {
        entries
            .computeIfAbsent(
                new Key(out.sowing(), out.tray(), out.attempt()), k -> new ArrayList<>())
            .add(new Entry(LoggedEvent.THROWN_OUT, date(out.day()), null, null, 0));
      }
    }
  }

  private List<WrittenTray> trays() {
    Map<Key, String> names = names();
    return entries.entrySet().stream()
        .sorted(
            Map.Entry.comparingByKey(
                Comparator.comparingInt(Key::sowing)
                    .thenComparingInt(Key::attempt)
                    .thenComparingInt(Key::tray)))
        .map(e -> written(e.getKey(), names.getOrDefault(e.getKey(), ""), e.getValue()))
        .toList();
  }

  /** Trays of the plan by their numbers; those sown again have the next ones, as they were sown. */
  private Map<Key, String> names() {
    Map<Key, String> names = new HashMap<>();
    int[] named = new int[plan.sowings()];
    entries.keySet().stream()
        .filter(key -> key.attempt() == 0)
        .forEach(key -> names.put(key, "" + (key.tray() + 1)));
    entries.keySet().stream()
        .filter(key -> key.attempt() > 0)
        .forEach(
            key -> names.put(key, "" + (plan.line(key.sowing()).trays + ++named[key.sowing()])));
    return names;
  }

  private WrittenTray written(Key key, String name, List<Entry> of) {
    String sowing = plan.scenario().sowings().get(key.sowing()).id();
    return new WrittenTray(sowing, name, key.tray(), key.attempt(), of);
  }

  private void note(int note) {
    TrayTask task = diary.job(note);
    Key first = new Key(diary.sowing(note), diary.tray(note), 0);
    if (task == TrayTask.SOW_AGAIN) {
      attempts.merge(first, 1, Integer::sum);
    }
    Key key = new Key(first.sowing(), first.tray(), attempts.getOrDefault(first, 0));
    LoggedEvent event =
        switch (task) {
          case SOW, SOW_AGAIN -> LoggedEvent.SOWN;
          case OFF_HEAT -> LoggedEvent.OFF_HEAT;
          case POT_ON -> LoggedEvent.POTTED_ON;
          case MOVE_OUT -> LoggedEvent.MOVED_OUT;
          case PLANT_OUT -> LoggedEvent.PLANTED_OUT;
          case THIN -> LoggedEvent.COUNTED;
        };
    if (task != TrayTask.THIN) {
      int to = diary.to(note);
      entries
          .computeIfAbsent(key, k -> new ArrayList<>())
          .add(
              new Entry(
                  event,
                  date(diary.day(note)),
                  isCounted(event, key, diary.day(note)) ? diary.left(note) : null,
                  to == Diary.NOWHERE ? null : plan.place(to).name(),
                  0));
    }
  }

  /** The stand is counted when the last seedlings are up; before that nobody knows it. */
  private boolean isCounted(LoggedEvent event, Key key, int day) {
    double window = plan.line(key.sowing()).crop.standWindowDays();
    return isCounted
        && event != LoggedEvent.SOWN
        && (event != LoggedEvent.OFF_HEAT || day + window < today);
  }

  /** On the last round before today. */
  private void countInHeat(SeasonLuck luck, Key key, List<Entry> of) {
    Entry sown = of.get(0);
    int day = today - 1;
    while (day >= 0 && plan.workingDay(day) != day) {
      day--;
    }
    int sownOn = plan.scenario().season().dayOf(sown.date());
    if (of.size() > 1 || sown.place() == null || day <= sownOn) {
      return;
    }
    SeasonPlan.Line line = plan.line(key.sowing());
    ThermalClock clock =
        plan.clocks(luck.weatherYear()).emergence(line.cropNumber, plan.placeNamed(sown.place()));
    double warmth = clock.at(plan.roundAt(day)) - clock.at(plan.roundAt(sownOn));
    int showing = luck.tray(key.sowing(), key.tray(), key.attempt()).showingBy(warmth);
    of.add(new Entry(LoggedEvent.COUNTED, date(day), showing, sown.place(), 0));
  }

  private LocalDate date(int day) {
    return plan.scenario().season().date(day);
  }
}
