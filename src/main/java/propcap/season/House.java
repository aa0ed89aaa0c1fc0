package propcap.season;

import java.util.BitSet;
import java.util.EnumMap;
import java.util.Map;
import propcap.chance.SeasonLuck;
import propcap.farm.Loss;
import propcap.farm.Milestone;
import propcap.farm.PlaceKind;
import propcap.farm.Step;
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
  private final Notebook notes;
  private final Simulator sim = new Simulator(new Henriksen());
  private final Room[] rooms;

  /** Trays by rank: whose bed comes first goes first. */
  private final Tray[] trays;

  /** For each step, the ranks of the trays that are due for it. */
  private final Map<Due, BitSet> due = new EnumMap<>(Due.class);

  private int today;
  private double now;
  private int nextToSow;
  private int nextToThrowOut;
  private int noted;

  private House(SeasonPlan plan, SeasonLuck luck) {
    this.plan = plan;
    this.luck = luck;
    clocks = plan.clocks(luck.weatherYear());
    notes = new Notebook(plan, luck.weatherYear());
    rooms = new Room[plan.places()];
    for (int p = 0; p < rooms.length; p++) {
      rooms[p] = new Room(plan.place(p).name(), plan.place(p).spaces());
    }
    trays = new Tray[plan.ranks()];
    for (Due step : Due.values()) {
      due.put(step, new BitSet(trays.length));
    }
  }

  /** Runs one season. Any thread may. */
  public static SeasonOutcome season(SeasonPlan plan, SeasonLuck luck) {
    return new House(plan, luck).run();
  }

  private SeasonOutcome run() {
    sim.init();
    new End(sim).schedule(endsAt());
    new Round(sim).toNextWorkingDay();
    sim.start();
    return new SeasonOutcome(notes);
  }

  private final class Round extends Event {
    private int day = -1;

    Round(Simulator sim) {
      super(sim);
      setPriority(Moment.ROUND.priority());
    }

    void toNextWorkingDay() {
      do {
        day++;
      } while (day < plan.days() && !plan.isWorkingDay(day));
      if (day < plan.days()) {
        schedule(plan.roundAt(day) - sim.time());
      }
    }

    @Override
    public void actions() {
      today = day;
      now = plan.roundAt(day);
      round();
      toNextWorkingDay();
    }
  }

  private final class End extends Event {
    End(Simulator sim) {
      super(sim);
      setPriority(Moment.END.priority());
    }

    @Override
    public void actions() {
      noteUse(plan.days());
      for (Tray tray : trays) {
        if (tray != null && tray.isInside()) {
          tray.loseAll(Loss.UNPLANTED, plan.days());
        }
      }
      notes.checkAllCounted();
      sim.stop();
    }
  }

  /** From the exit back to the entrance, so that room freed downstream is used this morning. */
  private void round() {
    noteUse(today);
    throwOut();
    plantOut();
    moveOut();
    takeOffHeat();
    potOn();
    sow();
    noteJams();
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
        due(Due.SOWING).clear(rank);
      }
    }
  }

  private void throwOut(Tray tray, Loss cause) {
    tray.loseAll(cause, today);
    leave(tray);
  }

  private void leave(Tray tray) {
    rooms[tray.place()].leave(tray.spaces());
    tray.leave();
    for (BitSet list : due.values()) {
      list.clear(tray.rank());
    }
  }

  private void plantOut() {
    BitSet list = due(Due.PLANTING_OUT);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      Tray tray = trays[rank];
      tray.countHardened(today, now);
      if (tray.plants() > 0) {
        notes.plantedOut(tray, today);
      }
      leave(tray);
    }
  }

  private void moveOut() {
    BitSet list = due(Due.MOVING_OUT);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      Tray tray = trays[rank];
      int area = tray.plants() == 0 ? -1 : firstWithRoom(plan.hardeningAreas(), tray.spaces());
      if (area < 0 && tray.plants() > 0) {
        waits(Step.HARDEN, tray, tray.spaces());
        continue;
      }
      tray.countGrownOn();
      if (tray.plants() == 0) {
        leave(tray);
        continue;
      }
      rooms[tray.place()].leave(tray.spaces());
      rooms[area].take(tray.spaces());
      list.clear(rank);
      due(Due.POTTING_ON).clear(rank);
      tray.moveOut(area, today);
      notes.moved(tray, Milestone.MOVED_OUT, today);
    }
  }

  private void takeOffHeat() {
    BitSet list = due(Due.LEAVING_HEAT);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      Tray tray = trays[rank];
      if (tray.hasFailed(now)) {
        throwOut(tray, Loss.FAILED_TRAY);
        sowAgain(tray);
        continue;
      }
      boolean onTable = plan.place(tray.place()).kind() == PlaceKind.TABLE;
      int table = onTable ? tray.place() : firstWithRoom(plan.tables(), 1);
      if (table < 0) {
        waits(Step.LEAVE, tray, 1);
        continue;
      }
      rooms[tray.place()].leave(1);
      rooms[table].take(1);
      list.clear(rank);
      tray.leaveHeat(table, now);
      notes.moved(tray, Milestone.OFF_HEAT, today);
    }
  }

  private void sowAgain(Tray failed) {
    if (today <= failed.line.resowUntil) {
      setOut(failed.line, failed.number, failed.attempt + 1);
    }
  }

  private void potOn() {
    BitSet list = due(Due.POTTING_ON);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      Tray tray = trays[rank];
      tray.countGrownOn();
      int spaces = tray.spacesInPots(now);
      if (spaces == 0) {
        throwOut(tray, Loss.OVERHELD);
        continue;
      }
      // Its own table first, where it frees its one space.
      boolean ownTable = rooms[tray.place()].free() + 1 >= spaces;
      int table = ownTable ? tray.place() : firstWithRoom(plan.tables(), spaces);
      if (table < 0) {
        waits(Step.POT, tray, 1);
        continue;
      }
      rooms[tray.place()].leave(1);
      rooms[table].take(spaces);
      list.clear(rank);
      due(Due.MOVING_OUT).clear(rank);
      tray.potOn(table, now);
      notes.potted(tray, today);
    }
  }

  private void sow() {
    for (; nextToSow < plan.sowings(); nextToSow++) {
      SeasonPlan.Line line = plan.line(plan.bySowDay()[nextToSow]);
      if (line.sowDay > today) {
        break;
      }
      for (int i = 0; i < line.trays && line.bedUntil >= today; i++) {
        setOut(line, i, 0);
      }
    }
    BitSet list = due(Due.SOWING);
    for (int rank = list.nextSetBit(0); rank >= 0; rank = list.nextSetBit(rank + 1)) {
      Tray tray = trays[rank];
      int place = firstWithRoom(tray.line.germinateIn, 1);
      if (place < 0) {
        waits(Step.SOW, tray, 1);
        continue;
      }
      rooms[place].take(1);
      list.clear(rank);
      tray.sow(place, now);
      notes.moved(tray, Milestone.SOWN, today);
    }
  }

  /** Puts a tray on the list of what is due to be sown. */
  private void setOut(SeasonPlan.Line line, int number, int attempt) {
    Tray tray = new Tray(sim, this, line, number, attempt, luck.tray(line.sowing, number, attempt));
    trays[tray.rank()] = tray;
    due(Due.SOWING).set(tray.rank());
  }

  /** The first of some places with so many spaces free; -1 if there is none. */
  private int firstWithRoom(int[] places, int spaces) {
    for (int place : places) {
      if (rooms[place].free() >= spaces) {
        return place;
      }
    }
    return -1;
  }

  private void waits(Step step, Tray tray, int spaces) {
    notes.waited(step, tray.line.sowing, plan.month(today), spaces);
  }

  /** Notes the use of each place, which has not changed since the last round, up to a day. */
  private void noteUse(int before) {
    for (int p = 0; p < rooms.length; p++) {
      notes.used(p, noted, before, rooms[p].used());
    }
    noted = before;
  }

  /** Counts what waits because what stands before it waits too. */
  private void noteJams() {
    BitSet overdue = due(Due.LEAVING_HEAT);
    BitSet unsown = due(Due.SOWING);
    if (!unsown.isEmpty() && !overdue.isEmpty()) {
      int[] overdueIn = new int[rooms.length];
      overdue.stream().forEach(rank -> overdueIn[trays[rank].place()]++);
      unsown.stream().forEach(rank -> noteBehind(trays[rank].line.germinateIn, overdueIn));
    }
    int forTables = overdue.cardinality() + due(Due.POTTING_ON).cardinality();
    int ready = due(Due.MOVING_OUT).stream().map(rank -> trays[rank].spaces()).sum();
    notes.tablesBehindReady += Math.min(forTables, ready);
  }

  private void noteBehind(int[] places, int[] overdueIn) {
    for (int place : places) {
      if (overdueIn[place] > 0) {
        overdueIn[place]--;
        notes.sowBehindOverdue++;
        return;
      }
    }
  }

  /** Called by a tray when it falls due, at any time of the day. */
  void fallsDue(Tray tray, Due step) {
    due(step).set(tray.rank());
  }

  private BitSet due(Due step) {
    BitSet list = due.get(step);
    if (list == null) {
      throw new IllegalStateException("no list for " + step);
    }
    return list;
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
