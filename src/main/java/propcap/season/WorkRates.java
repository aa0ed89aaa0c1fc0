package propcap.season;

import java.util.stream.IntStream;
import propcap.farm.Labour;
import propcap.farm.Scenario;
import propcap.farm.WorkKind;

/**
 * A scenario's labour in thousandths of a minute, so that sums are exact: what each piece of work
 * takes, and what there is of each day. Immutable, shared by all threads.
 */
final class WorkRates {
  static final int WORKS = WorkKind.values().length;

  private static final double PER_MINUTE = 1000;
  private static final double PER_HOUR = 60 * PER_MINUTE;

  /** More than any season's work takes, and far from where a long ends. */
  private static final long ENDLESS = Long.MAX_VALUE / 4;

  private final long[] each = new long[WORKS];
  private final long[] ofDay;
  private final boolean[] isWorkingDay;

  WorkRates(Scenario scenario) {
    Labour labour = scenario.labour();
    for (WorkKind work : WorkKind.values()) {
      each[work.ordinal()] = Math.round(PER_MINUTE * labour.minutes().of(work));
    }
    ofDay =
        IntStream.range(0, scenario.season().days())
            .mapToDouble(day -> labour.hoursOn(scenario.season().date(day)))
            .mapToLong(hours -> Math.min(ENDLESS, Math.round(PER_HOUR * hours)))
            .toArray();
    isWorkingDay = new boolean[ofDay.length];
    for (int day = 0; day < ofDay.length; day++) {
      isWorkingDay[day] = scenario.rounds().isWorkingDay(scenario.season().date(day));
    }
  }

  /** What a tray or a plant takes, as the work is counted. */
  long each(WorkKind work) {
    return each[work.ordinal()];
  }

  /** What there is of a working day. */
  long ofDay(int day) {
    return ofDay[day];
  }

  boolean isWorkingDay(int day) {
    return isWorkingDay[day];
  }

  int days() {
    return ofDay.length;
  }

  static double hours(long thousandthsOfMinutes) {
    return thousandthsOfMinutes / PER_HOUR;
  }
}
