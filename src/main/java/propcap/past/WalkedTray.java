package propcap.past;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.Crop.PottingOn.When;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;
import propcap.farm.WorkKind;
import propcap.past.WrittenTray.Entry;

/** A tray of a log while the log is walked through. */
final class WalkedTray {
  private enum Stage {
    TO_SOW,
    GERMINATING,
    GROWING_ON,
    POTTED,
    HARDENING,
    GONE
  }

  private final WrittenTray written;
  private final Scenario scenario;
  private final Spaces spaces;
  private final HoursLeft hours;
  private final int sowing;
  private final Sowing plan;
  private final Crop crop;
  private final Standing standing;
  private final int[] germinateIn;

  /** From when on its crop may go out; later than any day where it never may. */
  private final int releaseDay;

  private final boolean isReadyWritten;
  private final List<TrayPast.Move> moves = new ArrayList<>();
  private Stage stage = Stage.TO_SOW;
  private int next;

  private double plants;

  /** More plants than these it cannot have. */
  private int mostPlants;

  /** Whether nothing of its thinning, of which a log does not tell, is still to be done. */
  private boolean isSurelyThinned;

  private int lineOfLastMove;
  private int lastRound = -1;
  private int notDueInHeat = -1;
  private double readyAfter = Double.NEGATIVE_INFINITY;
  private double readyBy = Double.POSITIVE_INFINITY;

  WalkedTray(Scenario scenario, Spaces spaces, HoursLeft hours, WrittenTray written) {
    this.written = written;
    this.scenario = scenario;
    this.spaces = spaces;
    this.hours = hours;
    sowing = scenario.sowings().stream().map(Sowing::id).toList().indexOf(written.sowing());
    plan = scenario.sowings().get(sowing);
    crop = scenario.cropOf(plan);
    isSurelyThinned = crop.seedsPerCell() == 1;
    standing = new Standing(spaces);
    germinateIn = spaces.germinateIn(plan, crop);
    releaseDay = scenario.releaseDate(crop).map(scenario.season()::dayOf).orElse(Integer.MAX_VALUE);
    isReadyWritten = written.entries().stream().anyMatch(e -> e.event() == LoggedEvent.READY);
  }

  LocalDate bedBy() {
    return plan.bedBy();
  }

  int sowing() {
    return sowing;
  }

  boolean isSownAgain() {
    return written.attempt() > 0;
  }

  int number() {
    return written.number();
  }

  boolean isGone() {
    return stage == Stage.GONE;
  }

  boolean standsIn(int where) {
    return standing.isIn(where);
  }

  int lineOfLastMove() {
    return lineOfLastMove;
  }

  @Override
  public String toString() {
    return written.sowing() + " " + written.name();
  }

  /** Makes the move that the log has for it in a step of a day's round, if it has one. */
  boolean moves(LoggedEvent step, int day) {
    int at = next;
    while (isOn(at, day) && !entry(at).event().isMove()) {
      at++;
    }
    if (!isOn(at, day) || entry(at).event() != step) {
      return false;
    }
    while (next <= at) {
      take(day);
    }
    return true;
  }

  /** Takes what else the log has for a day: counts, and moves out of the round's order. */
  void finish(int day) {
    while (isOn(next, day)) {
      take(day);
    }
    if (scenario.rounds().isWorkingDay(scenario.season().date(day))) {
      lastRound = day;
      isSurelyThinned |= stage == Stage.GROWING_ON && hours.surelyFor(WorkKind.THIN);
    }
  }

  /** Minutes of work that the log has for a day, at most, and what is not in a log: thinning. */
  double minutesAtMost(int day) {
    double minutes = mayBeThinned(stage == Stage.GROWING_ON);
    for (int at = next; isOn(at, day); at++) {
      minutes +=
          switch (entry(at).event()) {
            case SOWN -> hours.minutes().sow();
            case OFF_HEAT -> hours.minutes().move() + mayBeThinned(true);
            case POTTED_ON -> hours.minutes().potOn() * mostPlants;
            case MOVED_OUT -> hours.minutes().move() * Math.max(1, standing.fillsAtMost());
            case PLANTED_OUT ->
                hours.minutes().plantOut()
                    * Objects.requireNonNullElse(entry(at).plants(), mostPlants);
            case READY, COUNTED, OUTBREAK, THROWN_OUT -> 0;
          };
    }
    return minutes;
  }

  private double mayBeThinned(boolean isOffHeat) {
    return isOffHeat && !isSurelyThinned ? hours.minutes().thin() : 0;
  }

  private boolean isOn(int at, int day) {
    return at < written.entries().size() && scenario.season().dayOf(entry(at).date()) == day;
  }

  private Entry entry(int at) {
    return written.entries().get(at);
  }

  private void take(int day) {
    Entry entry = entry(next);
    next++;
    switch (entry.event()) {
      case SOWN -> {
        stage = Stage.GERMINATING;
        plants = crop.cells() * (1 - Math.pow(1 - crop.germination().rate(), crop.seedsPerCell()));
        mostPlants = crop.cells();
        standing.moveTo(entry, germinateIn, 1, 1);
      }
      case OFF_HEAT -> {
        stage = Stage.GROWING_ON;
        standing.moveToATable(entry);
      }
      case READY -> {
        readyAfter = lastRound;
        readyBy = day;
      }
      case POTTED_ON -> {
        int pots = potTrays(entry.plants());
        wasReadyBy(readyIfPottedOn(day));
        stage = Stage.POTTED;
        standing.moveAsPots(entry, pots, Math.max(pots, potTrays(mostPlants)));
      }
      case MOVED_OUT -> {
        if (stage == Stage.GROWING_ON) {
          wasReadyBy(day);
        }
        stage = Stage.HARDENING;
        standing.moveTo(entry, spaces.hardeningAreas(), standing.fills(), standing.fillsAtMost());
      }
      case PLANTED_OUT -> {
        standing.leave();
        stage = Stage.GONE;
      }
      case THROWN_OUT -> {
        throwOut(entry.date());
        stage = Stage.GONE;
      }
      case COUNTED, OUTBREAK -> {}
    }
    count(entry);
    lineOfLastMove = entry.event().isMove() ? entry.line() : lineOfLastMove;
    moves.add(
        new TrayPast.Move(entry.event(), day, entry.plants(), standing.name(), standing.fills()));
  }

  private void count(Entry entry) {
    Integer counted = entry.event() == LoggedEvent.COUNTED ? null : entry.plants();
    if (counted != null) {
      plants = counted;
      mostPlants = counted;
    }
    if (entry.event() == LoggedEvent.OFF_HEAT) {
      // What growing on costs on the mean, up to the day of potting on.
      Crop.GrowingOn growing = crop.growingOn();
      plants *=
          (1 - growing.loss())
              * (1 - growing.dampingOff().chance() * growing.dampingOff().severity());
    }
  }

  /** What is potted once it has been held too long had been ready for as long as it keeps. */
  private double readyIfPottedOn(int day) {
    return crop.pottingOn().when() == When.IF_HELD ? day - crop.growingOn().holdsDays() : day;
  }

  /** Trays of pots that it becomes: as many as the plants that took fill, or may be thought to. */
  private int potTrays(@Nullable Integer took) {
    int pots = Math.max(1, crop.pottingOn().potsPerTray());
    return Math.max(1, (int) Math.ceil((took == null ? plants : took) / pots));
  }

  /** What has no bed any more goes before all others have their turn. */
  private void throwOut(LocalDate date) {
    LocalDate until = plan.bedUntil();
    if (until != null && date.isAfter(until)) {
      standing.leave();
    } else {
      standing.throwOut();
    }
  }

  // What follows from it.

  private void wasReadyBy(double day) {
    readyBy = isReadyWritten ? readyBy : Math.min(readyBy, day);
  }

  private void wasNotReady(double day) {
    readyAfter = isReadyWritten ? readyAfter : Math.max(readyAfter, day);
  }

  /**
   * It stays where it is in a step of a day's round: where there were room and hands, it was not
   * due.
   */
  void stays(LoggedEvent step, int day) {
    When potting = crop.pottingOn().when();
    if (step == LoggedEvent.OFF_HEAT && stage == Stage.GERMINATING) {
      boolean room =
          standing.isOnATable()
              || (hours.surelyFor(WorkKind.MOVE) && spaces.surelyHasRoom(spaces.tables(), 1));
      notDueInHeat = room ? day : notDueInHeat;
    } else if (stage == Stage.GROWING_ON
        && step == LoggedEvent.MOVED_OUT
        && potting != When.ALWAYS
        && day >= releaseDay
        && hasHandsFor(WorkKind.MOVE)
        && spaces.surelyHasRoom(spaces.hardeningAreas(), 1)) {
      wasNotReady(day);
    } else if (stage == Stage.GROWING_ON
        && step == LoggedEvent.POTTED_ON
        && potting != When.NEVER
        && hasHandsFor(WorkKind.POT_ON)
        && standing.surelyHasRoomAsPots(potTrays(mostPlants))) {
      wasNotReady(readyIfPottedOn(day));
    }
  }

  private boolean hasHandsFor(WorkKind work) {
    return isSurelyThinned && hours.surelyFor(work);
  }

  TrayPast past() {
    return new TrayPast(
        written.sowing(),
        written.name(),
        written.number(),
        written.attempt(),
        moves,
        notDueInHeat,
        readyAfter,
        readyBy);
  }
}
