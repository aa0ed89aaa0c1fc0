package propcap.farm;

import java.io.Serializable;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.Set;

/** When people act: one round a working day at {@code at}, none on the {@code rest} days. */
public record Rounds(LocalTime at, Set<DayOfWeek> rest) implements Serializable {
  /** Common practice: the first walk through the house before the day's other work. */
  public static final LocalTime DEFAULT_AT = LocalTime.of(8, 0);

  public Rounds {
    rest = Set.copyOf(rest);
    Checks.require(rest.size() < 7, "at least one day of the week must be a working day");
  }

  public static Rounds everyDay() {
    return new Rounds(DEFAULT_AT, Set.of());
  }

  public boolean isWorkingDay(LocalDate date) {
    return !rest.contains(date.getDayOfWeek());
  }

  /** The hour of the round as a share of the day, 0 up to 1. */
  public double shareOfDay() {
    return at.toSecondOfDay() / 86_400.0;
  }
}
