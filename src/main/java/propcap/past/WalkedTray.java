package propcap.past;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
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
  private final int[] germinateIn;

  /** From when on its crop may go out; later than any day where it never may. */
  private final int releaseDay;

  private final boolean isReadyWritten;
  private final List<TrayPast.Move> moves = new ArrayList<>();
  private Stage stage = Stage.TO_SOW;
  private int next;
  private int place = Spaces.NOWHERE;
  private int fills;

  /** As the plants that took are counted, and not those that were potted, it may fill more. */
  private int fillsAtMost;

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
    List<String> ids = scenario.sowings().stream().map(Sowing::id).toList();
    sowing = ids.indexOf(written.sowing());
    plan = scenario.sowings().get(sowing);
    crop = scenario.cropOf(plan);
    isSurelyThinned = crop.seedsPerCell() == 1;
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
    return place == where;
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
            case MOVED_OUT -> hours.minutes().move() * Math.max(1, fillsAtMost);
            case PLANTED_OUT -> hours.minutes().plantOut() * plantedAtMost(entry(at));
            case READY, COUNTED, OUTBREAK, THROWN_OUT -> 0;
          };
    }
    return minutes;
  }

  private int plantedAtMost(Entry planted) {
    Integer counted = planted.plants();
    return counted == null ? mostPlants : counted;
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
        plants = crop.cells() * expectedStand();
        mostPlants = crop.cells();
        stand(where(entry, germinateIn, 1), 1, 1);
      }
      case OFF_HEAT -> {
        int table =
            spaces.isTable(place) && entry.place() == null
                ? place
                : whereAfter(entry, spaces.tables(), 1);
        stage = Stage.GROWING_ON;
        stand(table, 1, 1);
      }
      case READY -> {
        readyAfter = lastRound;
        readyBy = day;
      }
      case POTTED_ON -> {
        int pots = potTrays(entry.plants());
        wasReadyBy(crop.pottingOn().when() == When.IF_HELD ? day - holds() : day);
        int table = ownTableFirst(entry, pots);
        stage = Stage.POTTED;
        stand(table, pots, Math.max(pots, potTrays(mostPlants)));
      }
      case MOVED_OUT -> {
        if (stage == Stage.GROWING_ON) {
          wasReadyBy(day);
        }
        int needs = fills;
        int atMost = fillsAtMost;
        int area = whereAfter(entry, spaces.hardeningAreas(), needs);
        stage = Stage.HARDENING;
        stand(area, needs, atMost);
      }
      case PLANTED_OUT -> {
        leave();
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
    String in = place == Spaces.NOWHERE ? null : spaces.name(place);
    moves.add(new TrayPast.Move(entry.event(), day, entry.plants(), in, fills));
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

  private double expectedStand() {
    return 1 - Math.pow(1 - crop.germination().rate(), crop.seedsPerCell());
  }

  private double holds() {
    return crop.growingOn().holdsDays();
  }

  /** Trays of pots that it becomes: as many as the plants that took fill, or may be thought to. */
  private int potTrays(@Nullable Integer took) {
    int pots = Math.max(1, crop.pottingOn().potsPerTray());
    return Math.max(1, (int) Math.ceil((took == null ? plants : took) / pots));
  }

  // Where it goes.

  private int where(Entry entry, int[] of, int needs) {
    if (entry.place() != null) {
      return spaces.named(entry.place());
    }
    int found = spaces.firstWithRoom(of, needs);
    return found == Spaces.NOWHERE ? of[0] : found;
  }

  /** Where it goes once it has left where it stands. */
  private int whereAfter(Entry entry, int[] of, int needs) {
    int found = where(entry, of, needs);
    leave();
    return found;
  }

  private int ownTableFirst(Entry entry, int needs) {
    int own = place;
    boolean staysAtHome =
        entry.place() == null
            && (spaces.free(own) + 1 >= needs
                || spaces.firstWithRoom(spaces.tables(), needs) == Spaces.NOWHERE);
    if (staysAtHome) {
      leave();
      return own;
    }
    return whereAfter(entry, spaces.tables(), needs);
  }

  private void stand(int in, int needs, int atMost) {
    leave();
    place = in;
    fills = needs;
    fillsAtMost = atMost;
    spaces.take(in, needs, atMost);
  }

  private void leave() {
    if (place != Spaces.NOWHERE) {
      spaces.leave(place, fills, fillsAtMost);
    }
    standsNowhere();
  }

  private void standsNowhere() {
    place = Spaces.NOWHERE;
    fills = 0;
    fillsAtMost = 0;
  }

  /** What has no bed any more goes before all others have their turn. */
  private void throwOut(LocalDate date) {
    LocalDate until = plan.bedUntil();
    boolean isFirst = until != null && date.isAfter(until);
    if (place != Spaces.NOWHERE && !isFirst) {
      spaces.throwOut(place, fills, fillsAtMost);
      standsNowhere();
    } else {
      leave();
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
          spaces.isTable(place)
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
        && hasRoomInPots()) {
      wasNotReady(potting == When.IF_HELD ? day - holds() : day);
    }
  }

  private boolean hasHandsFor(WorkKind work) {
    return isSurelyThinned && hours.surelyFor(work);
  }

  /** However many of its plants were left by then. */
  private boolean hasRoomInPots() {
    int needs = potTrays(mostPlants);
    return spaces.surelyFree(place) + 1 >= needs || spaces.surelyHasRoom(spaces.tables(), needs);
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
