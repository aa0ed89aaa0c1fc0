package propcap.report.kit;

import java.util.ArrayList;
import java.util.List;
import propcap.farm.PlaceKind;
import propcap.farm.RoomWait;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.Occupancy;
import propcap.study.forecast.HandsForecast;

/**
 * Which places hold up the others. A tray-day of waiting is put down to the places that were short
 * of room, and passed on to the next ones downstream for as much of it as stood behind trays that
 * could not leave.
 *
 * @param toBeSown tray-days, mean of a spring, waiting for the heat; likewise below
 * @param forTables waiting to leave the heat or to be potted on
 * @param toHarden waiting for the hardening area
 * @param sowBehindOverdue part of {@code toBeSown} that stood behind trays with no table to go to
 * @param tablesBehindReady part of {@code forTables} that stood behind plants ready to harden off
 */
public record WaitingCauses(
    double toBeSown,
    double forTables,
    double toHarden,
    double sowBehindOverdue,
    double tablesBehindReady) {

  /** Waiting of less than this, tray-days a spring, is not worth a word. */
  public static final double NOTHING = 0.5;

  /** From this share on, what stood in the way is the cause. */
  private static final double MOSTLY = 0.5;

  public static WaitingCauses of(Forecast forecast) {
    return new WaitingCauses(
        mean(forecast, RoomWait.SOW),
        mean(forecast, RoomWait.LEAVE) + mean(forecast, RoomWait.POT),
        mean(forecast, RoomWait.HARDEN),
        forecast.sowBehindOverdue(),
        forecast.tablesBehindReady());
  }

  private static double mean(Forecast forecast, RoomWait step) {
    return ForecastLookup.present(forecast.waiting(), step).mean();
  }

  public double total() {
    return toBeSown + forTables + toHarden;
  }

  public boolean nothingWaits() {
    return total() < NOTHING;
  }

  public boolean tablesHoldUpHeat() {
    return toBeSown > 0 && sowBehindOverdue >= MOSTLY * toBeSown;
  }

  public boolean readyPlantsHoldUpTables() {
    return forTables > 0 && tablesBehindReady >= MOSTLY * forTables;
  }

  /** Whether plants that are ready find the hardening area full, and not only not yet released. */
  public boolean hardeningIsShort() {
    return toHarden >= NOTHING;
  }

  /** Share of the waiting for tables that is passed on downstream. */
  private double passedOn() {
    return forTables > 0 ? Math.min(1, tablesBehindReady / forTables) : 0;
  }

  /** Tray-days of waiting that go back to too little heat. */
  public double dueToHeat() {
    return Math.max(0, toBeSown - sowBehindOverdue);
  }

  /** Tray-days that go back to too few tables. */
  public double dueToTables() {
    return (forTables + sowBehindOverdue) * (1 - passedOn());
  }

  /** Tray-days that go back to the way out: the hardening area, or the date of release. */
  public double dueToHardening() {
    return toHarden + (forTables + sowBehindOverdue) * passedOn();
  }

  /** The answer in one sentence. */
  public String verdict(Forecast forecast) {
    double forHands = forecast.hands().waitingInAll();
    if (forHands >= NOTHING && forHands > total()) {
      return "The bottleneck is hands: "
          + Words.count(forHands)
          + " tray-days had room and waited for them, "
          + Words.count(total())
          + " waited for room.";
    }
    if (nothingWaits()) {
      return "Nothing waits: no place holds up another.";
    }
    double most = Math.max(dueToHeat(), Math.max(dueToTables(), dueToHardening()));
    String culprit;
    if (most == dueToTables()) {
      culprit = placesOf(forecast, PlaceKind.TABLE);
    } else if (most == dueToHeat()) {
      culprit = placesOf(forecast, PlaceKind.CHAMBER, PlaceKind.HEAT_BENCH);
    } else if (hardeningIsShort()) {
      culprit = placesOf(forecast, PlaceKind.HARDENING);
    } else {
      return "No place but the date holds up the others: plants that are ready wait for their"
          + " release from frost, and "
          + shareOfAll(most)
          + " go back to that.";
    }
    return "The bottleneck is " + culprit + ": " + shareOfAll(most) + " go back to it.";
  }

  private String shareOfAll(double part) {
    return Words.count(part) + " of " + Words.count(total()) + " tray-days of waiting";
  }

  /** Such as {@code the tables (House 1 and House 2)}, or the name of the only one. */
  private static String placesOf(Forecast forecast, PlaceKind... kinds) {
    List<String> names = new ArrayList<>();
    for (Occupancy place : ForecastLookup.openPlaces(forecast)) {
      if (List.of(kinds).contains(place.kind())) {
        names.add(place.name());
      }
    }
    if (names.size() == 1) {
      return names.get(0);
    }
    String together =
        switch (kinds[0]) {
          case TABLE -> "table room";
          case HARDENING -> "the room to harden off";
          case CHAMBER, HEAT_BENCH -> "the heat";
        };
    return names.isEmpty() ? together : together + " (" + Words.list(names) + ")";
  }

  /** Such as {@code 12 of 150 working days}. */
  public static String daysShort(HandsForecast hands) {
    return hands.daysShort().mean() == 0
        ? "no day"
        : Words.amount(hands.daysShort().mean())
            + " of "
            + Words.plural(hands.workingDays(), "working day")
            + " ("
            + Words.usual(hands.daysShort())
            + ")";
  }
}
