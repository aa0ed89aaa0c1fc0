package propcap.past;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.Farms;
import propcap.farm.LoggedEvent;

/** A tray of a log, written row by row for a test; days are those of {@link Farms}' season. */
public final class Logged {
  private final String sowing;
  private final int number;
  private final int attempt;
  private final List<WrittenTray.Entry> entries = new ArrayList<>();

  private Logged(String sowing, int number, int attempt) {
    this.sowing = sowing;
    this.number = number;
    this.attempt = attempt;
  }

  /** A tray of a sowing, by its number from 1, that was sown on a day. */
  public static Logged sown(String sowing, int number, int day) {
    return new Logged(sowing, number - 1, 0).on(LoggedEvent.SOWN, day);
  }

  /** The tray that was sown in place of one that failed. */
  public static Logged sownAgain(String sowing, int number, int day) {
    return new Logged(sowing, number - 1, 1).on(LoggedEvent.SOWN, day);
  }

  public Logged on(LoggedEvent event, int day) {
    return row(event, day, null, null);
  }

  public Logged on(LoggedEvent event, int day, int plants) {
    return row(event, day, plants, null);
  }

  public Logged on(LoggedEvent event, int day, String place) {
    return row(event, day, null, place);
  }

  private Logged row(LoggedEvent event, int day, @Nullable Integer plants, @Nullable String place) {
    LocalDate date = Farms.day(day);
    entries.add(new WrittenTray.Entry(event, date, plants, place, entries.size() + 2));
    return this;
  }

  public WrittenTray make() {
    return new WrittenTray(sowing, String.valueOf(number + 1), number, attempt, entries);
  }

  public static List<WrittenTray> log(Logged... trays) {
    return List.of(trays).stream().map(Logged::make).toList();
  }
}
