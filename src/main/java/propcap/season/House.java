package propcap.season;

import java.util.BitSet;
import propcap.chance.SeasonLuck;
import propcap.farm.Loss;
import propcap.farm.PlaceKind;
import propcap.farm.RoomWait;
import propcap.farm.WorkKind;
import umontreal.ssj.simevents.Event;
import umontreal.ssj.simevents.Simulator;
import umontreal.ssj.simevents.eventlist.Henriksen;

/**
 * The farm's places while a season runs through them: the people's rounds and what each step of a
 * round does. It draws nothing: the same plan and luck give the same outcome.
 */
public final class House {
  private final SeasonPlan plan;
  private final SeasonLuck luck;
  private final Clocks clocks;
  final Notebook notes;
  private final Simulator sim = new Simulator(new Henriksen());
  final Rooms rooms;
  final Hands hands;

  /** Trays by rank: whose bed comes first goes first. */
  final Tray[] trays;

  final DueLists due;
  private final DueDays dueDays;
  private final Blocking jams;

  private int today;
  private double now;
  private int nextToSow;
  private int nextToThrowOut;

  private House(SeasonPlan plan, SeasonLuck luck, boolean withDiary) {
    this.plan = plan;
    this.luck = luck;
    clocks = plan.clocks(luck.weatherYear());
    notes = new Notebook(plan, luck.weatherYear(), withDiary);
    rooms = new Rooms(plan);
    hands = new Hands(plan.workRates(), notes.timesheet());
    trays = new Tray[plan.ranks()];
    due = new DueLists(trays.length);
    dueDays = new DueDays(plan.days());
    jams = new Blocking(due, trays, plan.places());
  }

  /** Runs one season. Any thread may. */
  public static SeasonOutcome season(SeasonPlan plan, SeasonLuck luck) {
    return new House(plan, luck, false).run();
  }

  /** Runs one season, with a diary of every move in its outcome. */
  public static SeasonOutcome seasonWithDiary(SeasonPlan plan, SeasonLuck luck) {
    return new House(plan, luck, true).run();
  }

  private SeasonOutcome run() {
    new Replay(plan, this).run();
    sim.init();
    new End(sim).schedule(endsAt());
    new Round(sim).toNextWorkingDay();
    sim.start();
    return new SeasonOutcome(notes, hands.spent());
  }

  private final class Round extends Event {
    private int day = plan.firstDay() - 1;

    Round(Simulator sim) {
      super(sim);
      setPriority(EventPriority.ROUND.priority());
    }

    void toNextWorkingDay() {
      day = plan.workingDay(day + 1);
      if (day < plan.days()) {
        schedule(plan.roundAt(day) - sim.time());
      }
    }

    @Override
    public void actions() {
      beginDay(day);
      round();
      toNextWorkingDay();
    }
  }

  private final class End extends Event {
    End(Simulator sim) {
      super(sim);
      setPriority(EventPriority.END.priority());
    }

    @Override
    public void actions() {
      rooms.noteUse(notes, plan.days());
      for (Tray tray : trays) {
        if (tray != null && tray.isInside()) {
          tray.loseAll(Loss.UNPLANTED, plan.days(), endsAt());
        }
      }
      notes.checkAllCounted();
      sim.stop();
    }
  }

  /** The morning of a day. */
  void beginDay(int day) {
    today = day;
    now = plan.roundAt(day);
    rooms.noteUse(notes, day);
  }

  /** Puts on the lists what fell due on days that were not simulated. */
  void fallDueBefore(int day) {
    for (int before = 0; before < day; before++) {
      dueDays.fallDue(before, trays, due);
    }
  }

  /** From the exit back to the entrance, so that room freed downstream is used this morning. */
  private void round() {
    hands.begin(today);
    due.beginRound();
    dueDays.fallDue(today, trays, due);
    throwOut();
    plantOut();
    moveOut();
    takeOffHeat();
    thin();
    potOn();
    sow();
    jams.note(notes);
  }

  private void throwOut() {
    for (; nextToThrowOut < plan.sowings(); nextToThrowOut++) {
      SeasonPlan.Line line = plan.line(plan.byBedUntil()[nextToThrowOut]);
      if (line.bedUntil >= today) {
        return;
      }
      for (int rank = line.rank(0, 0); rank < line.rank(line.trays, 1); rank++) {
        Tray tray = trays[rank];
        if (tray != null && tray.isInside()) {
          throwOut(tray, Loss.DUMPED);
        }
        due.of(RoundStep.SOWING).clear(rank);
      }
    }
  }

  void throwOut(Tray tray, Loss cause) {
    tray.loseAll(cause, today, now);
    throwOut(tray);
  }

  /** A tray in which nothing is left. */
  private void throwOut(Tray tray) {
    notes.thrownOut(tray, today);
    leave(tray);
  }

  void leave(Tray tray) {
    rooms.of(tray.place()).leave(tray.spaces());
    tray.leave();
    due.forget(tray.rank());
  }

  private void plantOut() {
    BitSet list = due.of(RoundStep.PLANTING_OUT);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      Tray tray = trays[rank];
      if (tray.plants() > 0 && waitsForHands(WorkKind.PLANT_OUT, tray)) {
        continue;
      }
      tray.countHardened(today, now);
      if (tray.plants() > 0) {
        hands.spend(WorkKind.PLANT_OUT, tray.plants());
        notes.plantedOut(tray, today);
        leave(tray);
      } else {
        throwOut(tray);
      }
    }
  }

  private void moveOut() {
    BitSet list = due.of(RoundStep.MOVING_OUT);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      Tray tray = trays[rank];
      int area =
          tray.plants() == 0 ? -1 : rooms.firstWithRoom(plan.hardeningAreas(), tray.spaces());
      if (area < 0 && tray.plants() > 0) {
        waits(RoomWait.HARDEN, tray, tray.spaces());
        continue;
      }
      if (tray.plants() > 0 && (waitsForThinning(tray) || waitsForHands(WorkKind.MOVE, tray))) {
        continue;
      }
      tray.countGrownOn();
      tray.countOverheld(now);
      if (tray.plants() == 0) {
        throwOut(tray);
        continue;
      }
      rooms.of(tray.place()).leave(tray.spaces());
      rooms.of(area).take(tray.spaces());
      hands.spend(WorkKind.MOVE, tray.spaces());
      list.clear(rank);
      due.of(RoundStep.POTTING_ON).clear(rank);
      tray.moveOut(area, today);
      notes.movedOut(tray, today);
    }
  }

  private void takeOffHeat() {
    BitSet list = due.of(RoundStep.LEAVING_HEAT);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      Tray tray = trays[rank];
      if (tray.hasFailed(now)) {
        throwOut(tray, Loss.FAILED_TRAY);
        sowAgain(tray);
        continue;
      }
      boolean onTable = plan.place(tray.place()).kind() == PlaceKind.TABLE;
      int table = onTable ? tray.place() : rooms.firstWithRoom(plan.tables(), 1);
      if (table < 0) {
        waits(RoomWait.LEAVE, tray, 1);
        continue;
      }
      if (!onTable && waitsForHands(WorkKind.MOVE, tray)) {
        continue;
      }
      hands.spend(WorkKind.MOVE, onTable ? 0 : 1);
      if (!onTable) {
        rooms.of(tray.place()).leave(1);
        rooms.of(table).take(1);
      }
      list.clear(rank);
      tray.leaveHeat(table, now);
      notes.offHeat(tray, today);
      if (tray.line.crop.seedsPerCell() > 1 && tray.plants() > 0) {
        due.of(RoundStep.THINNING).set(rank);
      }
    }
  }

  private void thin() {
    BitSet list = due.of(RoundStep.THINNING);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      if (!waitsForHands(WorkKind.THIN, trays[rank])) {
        hands.spend(WorkKind.THIN, 1);
        notes.thinned(trays[rank], today);
        list.clear(rank);
      }
    }
  }

  void sowAgain(Tray failed) {
    if (today <= failed.line.resowUntil) {
      setOut(failed.line, failed.number, failed.attempt + 1);
    }
  }

  private void potOn() {
    BitSet list = due.of(RoundStep.POTTING_ON);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      Tray tray = trays[rank];
      if (waitsForThinning(tray)) {
        continue;
      }
      tray.countGrownOn();
      int spaces = tray.spacesInPots(now);
      if (spaces == 0) {
        throwOut(tray, Loss.OVERHELD);
        continue;
      }
      // Its own table first, where it frees its one space.
      boolean ownTable = rooms.of(tray.place()).free() + 1 >= spaces;
      int table = ownTable ? tray.place() : rooms.firstWithRoom(plan.tables(), spaces);
      if (table < 0) {
        waits(RoomWait.POT, tray, 1);
        continue;
      }
      if (waitsForHands(WorkKind.POT_ON, tray)) {
        continue;
      }
      int plants = tray.plantsToPot(now);
      hands.spend(WorkKind.POT_ON, plants);
      rooms.of(tray.place()).leave(1);
      rooms.of(table).take(spaces);
      list.clear(rank);
      due.of(RoundStep.MOVING_OUT).clear(rank);
      tray.potOn(table, spaces, now);
      notes.potted(tray, plants, today);
    }
  }

  private void sow() {
    for (; nextToSow < plan.sowings(); nextToSow++) {
      SeasonPlan.Line line = plan.line(plan.bySowDay()[nextToSow]);
      if (line.sowDay > today) {
        break;
      }
      for (int i = 0; i < line.trays && line.bedUntil >= today; i++) {
        if (trays[line.rank(i, 0)] == null) {
          setOut(line, i, 0);
        }
      }
    }
    BitSet list = due.of(RoundStep.SOWING);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      Tray tray = trays[rank];
      int place = rooms.firstWithRoom(tray.line.germinateIn, 1);
      if (place < 0) {
        waits(RoomWait.SOW, tray, 1);
        continue;
      }
      if (waitsForHands(WorkKind.SOW, tray)) {
        continue;
      }
      hands.spend(WorkKind.SOW, 1);
      rooms.of(place).take(1);
      list.clear(rank);
      tray.sow(place, now);
      notes.sown(tray, today);
    }
  }

  /** Puts a tray on the list of what is due to be sown. */
  void setOut(SeasonPlan.Line line, int number, int attempt) {
    Tray tray = new Tray(this, line, number, attempt, luck.tray(line.sowing, number, attempt));
    trays[tray.rank()] = tray;
    due.of(RoundStep.SOWING).set(tray.rank());
  }

  private void waits(RoomWait step, Tray tray, int spaces) {
    notes.waited(step, tray, today, spaces);
  }

  /** Whether a tray, which has room, waits for hands; counted once a round. */
  private boolean waitsForHands(WorkKind work, Tray tray) {
    return !hands.canBegin(work) && noteWaiting(work, tray);
  }

  /** Whether a tray has yet to be thinned before anything else is done with it. */
  private boolean waitsForThinning(Tray tray) {
    return due.of(RoundStep.THINNING).get(tray.rank()) && noteWaiting(WorkKind.THIN, tray);
  }

  private boolean noteWaiting(WorkKind work, Tray tray) {
    if (due.waitsForHands(tray.rank())) {
      notes.waitedForHands(work, tray, today, Math.max(1, tray.spaces()));
    }
    return true;
  }

  /** Called by a tray that falls due at a time to come: the day on whose round it is found so. */
  int fallsDue(Tray tray, RoundStep step, double at) {
    int day = plan.roundBy(at, today);
    if (day < plan.days()) {
      dueDays.put(day, tray.rank(), step);
    }
    return day;
  }

  double endsAt() {
    return plan.days();
  }

  Clocks clocks() {
    return clocks;
  }

  Nights nights(SeasonPlan.Line line) {
    return plan.nights(luck.weatherYear(), line);
  }

  Notebook notes() {
    return notes;
  }

  double stretchLoss(int place) {
    return plan.place(place).stretchLossPerDay();
  }
}
