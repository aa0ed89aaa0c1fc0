package propcap.farm;

import java.io.Serializable;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;

/**
 * The days that are simulated, both ends included. Day 0 is {@code start}; time is counted in days
 * from 00:00 of day 0.
 */
public record Season(LocalDate start, LocalDate end) implements Serializable {
  public Season {
    Checks.require(
        !end.isBefore(start), "the season must end on or after " + start + ", was " + end);
  }

  /** The number of days, at least 1. */
  public int days() {
    return (int) ChronoUnit.DAYS.between(start, end) + 1;
  }

  /** The day's number; negative before the season, {@code days()} or more after it. */
  public int dayOf(LocalDate date) {
    return (int) ChronoUnit.DAYS.between(start, date);
  }

  public LocalDate date(int day) {
    return start.plusDays(day);
  }

  public boolean contains(LocalDate date) {
    return !date.isBefore(start) && !date.isAfter(end);
  }
}
