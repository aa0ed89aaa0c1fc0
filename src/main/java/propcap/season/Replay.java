package propcap.season;

import propcap.farm.LoggedEvent;
import propcap.farm.Loss;
import propcap.farm.TrayPast;
import propcap.farm.WorkKind;

/**
 * Does again, in a house, what a log says was done before today. Where trays went and what was
 * counted is known; all else is as luck has it, given what is known.
 */
final class Replay {
  private final SeasonPlan plan;
  private final House house;
  private int today;
  private double now;

  Replay(SeasonPlan plan, House house) {
    this.plan = plan;
    this.house = house;
  }

  void run() {
    today = -1;
    for (Past.Done done : plan.past().done()) {
      if (done.day() > today) {
        today = done.day();
        now = plan.roundAt(today);
        house.beginDay(today);
      }
      replay(done);
    }
    house.hands.owePast(plan.firstDay());
    house.fallDueBefore(plan.firstDay());
    for (Tray tray : house.trays) {
      if (tray != null) {
        tray.hasAtLeast(0);
      }
    }
  }

  /** Does again what was done to a tray. */
  private void replay(Past.Done done) {
    Tray tray =
        done.event() == LoggedEvent.SOWN ? trayOf(done.known()) : house.trays[done.known().rank()];
    tray.hasAtLeast(done.atLeast());
    switch (done.event()) {
      case SOWN -> sowAsLogged(tray, done);
      case OFF_HEAT -> offHeatAsLogged(tray, done);
      case OUTBREAK -> {
        if (done.isCounted()) {
          tray.countedDampedOff(done.counted(), now);
        }
      }
      case READY -> {
        if (done.isCounted()) {
          tray.countedReady(done.counted());
        }
      }
      case POTTED_ON -> potOnAsLogged(tray, done);
      case MOVED_OUT -> moveOutAsLogged(tray, done);
      case PLANTED_OUT -> plantOutAsLogged(tray, done);
      case THROWN_OUT -> throwOutAsLogged(tray);
      case COUNTED -> {}
    }
  }

  private Tray trayOf(Past.Known known) {
    TrayPast past = known.tray();
    house.due.of(RoundStep.SOWING).clear(known.rank());
    house.setOut(known.line(), past.number(), past.attempt());
    house.due.of(RoundStep.SOWING).clear(known.rank());
    return house.trays[known.rank()];
  }

  private void sowAsLogged(Tray tray, Past.Done done) {
    house.hands.worked(today, WorkKind.SOW, 1);
    house.rooms.of(done.place()).squeezeIn(1);
    tray.sow(done.place(), now);
    house.notes.sown(tray, today);
  }

  private void offHeatAsLogged(Tray tray, Past.Done done) {
    boolean stays = tray.place() == done.place();
    house.hands.worked(today, WorkKind.MOVE, stays ? 0 : 1);
    house.rooms.of(tray.place()).leave(1);
    house.rooms.of(done.place()).squeezeIn(1);
    tray.leaveHeat(done.place(), now);
    if (done.isCounted()) {
      tray.counted(Loss.TOO_LATE, done.counted());
    }
    house.notes.offHeat(tray, today);
    if (tray.line.crop.seedsPerCell() > 1) {
      house.hands.worked(today, WorkKind.THIN, 1);
      house.notes.thinned(tray, today);
    }
  }

  private void potOnAsLogged(Tray tray, Past.Done done) {
    tray.countGrownOn();
    int plants = tray.plantsToPot(now);
    int spaces = done.isCounted() ? tray.potTraysOf(done.counted()) : tray.spacesInPots(now);
    house.hands.worked(today, WorkKind.POT_ON, plants);
    house.rooms.of(tray.place()).leave(tray.spaces());
    house.rooms.of(done.place()).squeezeIn(spaces);
    tray.potOn(done.place(), spaces, now);
    if (done.isCounted()) {
      tray.counted(Loss.POTTING, done.counted());
    }
    house.notes.potted(tray, plants, today);
  }

  private void moveOutAsLogged(Tray tray, Past.Done done) {
    boolean inCells = tray.isGrowingOn();
    tray.countGrownOn();
    tray.countOverheld(now);
    if (done.isCounted()) {
      tray.counted(inCells ? Loss.GROWING_ON : Loss.OVERHELD, done.counted());
    }
    house.rooms.of(tray.place()).leave(tray.spaces());
    house.rooms.of(done.place()).squeezeIn(tray.spaces());
    house.hands.worked(today, WorkKind.MOVE, tray.spaces());
    tray.moveOut(done.place(), today);
    house.notes.movedOut(tray, today);
  }

  private void plantOutAsLogged(Tray tray, Past.Done done) {
    tray.countHardened(today, now);
    if (done.isCounted()) {
      tray.counted(Loss.HARDENING, done.counted());
    }
    house.hands.worked(today, WorkKind.PLANT_OUT, tray.plants());
    house.notes.plantedOut(tray, today);
    house.leave(tray);
  }

  private void throwOutAsLogged(Tray tray) {
    boolean germinating = tray.isGerminating();
    house.throwOut(tray, germinating ? Loss.FAILED_TRAY : Loss.DUMPED);
    if (germinating) {
      house.sowAgain(tray);
    }
  }
}
