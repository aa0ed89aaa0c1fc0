package propcap.study.work;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.TrayTask;
import propcap.season.Diary;
import propcap.study.statistics.Column;
import propcap.study.statistics.Counts;
import propcap.study.work.WorkCalendar.Stint;

/** One job on one sowing, counted as the seasons come in. */
final class TaskTally {
  final int sowing;
  final TrayTask job;
  private final Map<Leg, Sums> legs = new TreeMap<>();

  /** Trays of each season. */
  private final Column trays = new Column();

  /** Days of the first tray and of the last, of the seasons that came to it. */
  private final Counts first = new Counts();

  private final Counts last = new Counts();

  private int traysNow;
  private int firstNow = -1;
  private int lastNow = -1;

  TaskTally(int sowing, TrayTask job) {
    this.sowing = sowing;
    this.job = job;
  }

  /** On which day, and where trays come from and go to, by the places' numbers. */
  private record Leg(int day, int from, int to) implements Comparable<Leg> {
    private static final Comparator<Leg> ORDER =
        Comparator.comparingInt(Leg::day).thenComparingInt(Leg::from).thenComparingInt(Leg::to);

    @Override
    public int compareTo(Leg other) {
      return ORDER.compare(this, other);
    }
  }

  /** Of all seasons. */
  private static final class Sums {
    long trays;
    long plants;
    double hours;
  }

  private Sums on(int day, Diary diary, int note) {
    return legs.computeIfAbsent(new Leg(day, diary.from(note), diary.to(note)), leg -> new Sums());
  }

  /** Adds what a note tells. */
  void add(Diary diary, int note) {
    int day = diary.day(note);
    Sums sums = on(day, diary, note);
    sums.trays += diary.trays(note);
    sums.plants += diary.plants(note);
    traysNow += diary.trays(note);
    firstNow = firstNow < 0 ? day : firstNow;
    lastNow = day;
  }

  /** Adds what it took of a day, its own or one after it. */
  void addHours(Diary diary, int note, int day, double hours) {
    on(day, diary, note).hours += hours;
  }

  void endSeason() {
    trays.add(traysNow);
    if (firstNow >= 0) {
      first.add(firstNow);
      last.add(lastNow);
    }
    traysNow = 0;
    firstNow = -1;
    lastNow = -1;
  }

  /** Whether no season came to it. */
  boolean isNever() {
    return legs.isEmpty();
  }

  /** Share of seasons, 0 to 1, that came to it. */
  double chance() {
    return first.size() / (double) trays.size();
  }

  /** Trays of each season. */
  double[] trays() {
    return trays.numbers();
  }

  /** The day of the first tray, before which it is in one season of ten that come to it. */
  int earliest() {
    return first.reached(0.1);
  }

  /** The day of the last tray, after which it is in one season of ten that come to it. */
  int latest() {
    return last.reached(0.9);
  }

  /** Where and when, with so many whole trays on the likely days. */
  List<Stint> stints(Scenario scenario, int whole) {
    List<Leg> when = List.copyOf(legs.keySet());
    List<Sums> sums = List.copyOf(legs.values());
    int from = 0;
    int to = 0;
    int earliest = earliest();
    int latest = latest();
    for (int i = 0; i < when.size(); i++) {
      from = when.get(i).day() < earliest ? i + 1 : from;
      to = when.get(i).day() <= latest && sums.get(i).trays > 0 ? i : to;
    }
    double n = trays.size();
    int[] trays =
        WholeTrays.along(sums.stream().mapToDouble(s -> s.trays / n).toArray(), whole, from, to);
    List<Stint> stints = new ArrayList<>();
    for (int i = 0; i < when.size(); i++) {
      stints.add(
          new Stint(
              scenario.season().date(when.get(i).day()),
              place(scenario, when.get(i).from()),
              place(scenario, when.get(i).to()),
              trays[i],
              sums.get(i).trays / n,
              sums.get(i).plants / n,
              sums.get(i).hours / n));
    }
    return stints;
  }

  private static @Nullable String place(Scenario scenario, int number) {
    return number == Diary.NOWHERE ? null : scenario.places().get(number).name();
  }
}
