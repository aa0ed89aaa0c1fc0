package propcap.season;

import org.jspecify.annotations.Nullable;
import propcap.chance.DrawPurpose;
import propcap.chance.ThermalClock;
import propcap.chance.TrayLuck;
import propcap.farm.Crop;
import propcap.farm.Loss;

/**
 * A tray, or the pots that it became: its biology, which runs by itself, and its losses. Where it
 * goes is for the {@link House} to say.
 */
final class Tray {
  /** Where a tray is in its life. */
  enum Stage {
    TO_SOW,
    GERMINATING,
    /** In the cell, on a table. */
    GROWING_ON,
    /** In the cell, with what growing on cost taken off: it was due for potting on. */
    GROWN_ON,
    POTTED,
    HARDENING,
    GONE
  }

  final SeasonPlan.Line line;
  final int number;
  final int attempt;

  private final House house;
  private final TrayLuck luck;

  private Stage stage = Stage.TO_SOW;
  private int place;
  private int spaces;
  private int plants;

  /** What its place's clock said when it was sown, degree days. */
  private double warmthWhenSown;

  /** Time at which enough cells show; infinite if they never do. */
  private double showsAt;

  private double leaveDueAt;

  /** Time at which the plug, then the pot, is ready, and how many days it keeps. */
  private double readyAt = Double.POSITIVE_INFINITY;

  private double holdsDays;

  /** Up to when what holding cost has been taken off. */
  private double heldCountedTo;

  /** Plants that a log has of it further on; nothing may cost it more. */
  private int atLeast;

  /** Whether damping-off was seen in it, and what it left was counted. */
  private boolean dampedOff;

  private boolean inPots;
  private int movedOutOn;

  /** What it falls due for, on the round of which day. */
  private @Nullable RoundStep due;

  private int dueOn;
  private @Nullable RoundStep dueNext;
  private int dueNextOn;

  Tray(House house, SeasonPlan.Line line, int number, int attempt, TrayLuck luck) {
    this.house = house;
    this.line = line;
    this.number = number;
    this.attempt = attempt;
    this.luck = luck;
  }

  int rank() {
    return line.rank(number, attempt);
  }

  int place() {
    return place;
  }

  int spaces() {
    return spaces;
  }

  int plants() {
    return plants;
  }

  boolean isInside() {
    return stage != Stage.TO_SOW && stage != Stage.GONE;
  }

  // Germination.

  void sow(int in, double now) {
    stage = Stage.GERMINATING;
    place = in;
    spaces = 1;
    plants = line.crop.cells();
    ThermalClock clock = house.clocks().emergence(line.cropNumber, in);
    warmthWhenSown = clock.at(now);
    showsAt = clock.when(warmthWhenSown + luck.readyAt());
    leaveDueAt = Math.min(showsAt, now + line.crop.pullAfterDays());
    fallsDue(RoundStep.LEAVING_HEAT, leaveDueAt, null, 0);
  }

  /** Whether, pulled before enough of it showed, it is too thin to keep. */
  boolean hasFailed(double now) {
    return showsAt > now + SeasonPlan.ROUNDING
        && luck.showingBy(warmthSinceSown(now)) < line.crop.cellsNotToFail();
  }

  private double warmthSinceSown(double now) {
    return house.clocks().emergence(line.cropNumber, place).at(now) - warmthWhenSown;
  }

  /** Leaves the heat for a table, which may be the one that it germinated on. */
  void leaveHeat(int table, double now) {
    double overdue = now - leaveDueAt;
    double leggy = lossOver(overdue - 1, house.stretchLoss(place));
    ThermalClock onTable = house.clocks().emergence(line.cropNumber, table);
    double warmth =
        warmthSinceSown(now) + onTable.at(now + line.crop.standWindowDays()) - onTable.at(now);
    int stand = luck.showingBy(warmth);
    lose(Loss.NO_SEEDLING, plants - luck.fills());
    lose(Loss.TOO_LATE, luck.fills() - stand);
    lose(Loss.STRETCHED, luck.lost(DrawPurpose.STRETCHED, stand, leggy));
    stage = Stage.GROWING_ON;
    place = table;
    grow(line.crop.growingOnDegreeDays() * luck.pace(), line.crop.growingOn().holdsDays(), now);
    double releasedAt = Math.max(readyAt, line.releaseDay);
    switch (line.crop.pottingOn().when()) {
      case NEVER -> fallsDue(RoundStep.MOVING_OUT, releasedAt, null, 0);
      case ALWAYS -> fallsDue(RoundStep.POTTING_ON, readyAt, null, 0);
      case IF_HELD -> fallsDueForEither(releasedAt, readyAt + holdsDays);
    }
  }

  private void fallsDueForEither(double movingOutAt, double pottingOnAt) {
    if (movingOutAt <= pottingOnAt) {
      fallsDue(RoundStep.MOVING_OUT, movingOutAt, RoundStep.POTTING_ON, pottingOnAt);
    } else {
      fallsDue(RoundStep.POTTING_ON, pottingOnAt, RoundStep.MOVING_OUT, movingOutAt);
    }
  }

  // Growing on, in cells and in pots.

  private void grow(double degreeDays, double holds, double now) {
    ThermalClock clock = house.clocks().growingOn(line.cropNumber, place);
    readyAt = clock.when(clock.at(now) + degreeDays);
    holdsDays = holds;
  }

  /** Takes off what growing on cost, once. */
  void countGrownOn() {
    if (stage == Stage.GROWING_ON) {
      lose(Loss.GROWING_ON, luck.lost(DrawPurpose.LOSS, plants, line.crop.growingOn().loss()));
      if (!dampedOff) {
        lose(Loss.GROWING_ON, luck.lost(DrawPurpose.DAMPED_OFF, plants, luck.severity()));
      }
      stage = Stage.GROWN_ON;
    }
  }

  /** Plants that being held too long has cost by now, not yet taken off. */
  private int overheld(double now) {
    double tooLong = now - Math.max(readyAt + holdsDays, heldCountedTo);
    if (tooLong <= 0) {
      return 0;
    }
    double chance = lossOver(tooLong, line.crop.growingOn().overheldLossPerDay());
    DrawPurpose onTable = inPots ? DrawPurpose.OVERHELD_POT : DrawPurpose.OVERHELD_PLUG;
    return luck.lost(
        stage == Stage.HARDENING ? DrawPurpose.OVERHELD_OUTSIDE : onTable, plants, chance);
  }

  /** Takes off what being held too long has cost by now. */
  void countOverheld(double now) {
    lose(Loss.OVERHELD, overheld(now));
    heldCountedTo = now;
  }

  /** Spaces that the tray would fill if it were potted on now; 0 if it has no plants left. */
  int spacesInPots(double now) {
    int pots = line.crop.pottingOn().potsPerTray();
    return (plantsToPot(now) + pots - 1) / pots;
  }

  /** Plants that there would be to pot on now. */
  int plantsToPot(double now) {
    return plants - overheld(now);
  }

  /** Is potted on, into so many trays of pots. */
  void potOn(int table, int potTrays, double now) {
    spaces = potTrays;
    countOverheld(now);
    Crop.PottingOn potting = line.crop.pottingOn();
    lose(Loss.POTTING, luck.lost(DrawPurpose.POTTING, plants, potting.loss()));
    stage = Stage.POTTED;
    inPots = true;
    place = table;
    grow(line.crop.pottedDegreeDays(), potting.holdsDays(), now);
    fallsDue(RoundStep.MOVING_OUT, Math.max(readyAt, line.releaseDay), null, 0);
  }

  // Hardening off and planting out.

  void moveOut(int area, int today) {
    stage = Stage.HARDENING;
    place = area;
    movedOutOn = today;
    int hardenedOn = house.nights(line).hardenedOn(today);
    fallsDue(RoundStep.PLANTING_OUT, Math.max(hardenedOn, line.bedFrom), null, 0);
  }

  /** Takes off what the nights outside have cost by a day's round. */
  private void countFrost(int today) {
    if (stage == Stage.HARDENING) {
      Crop.Hardening hardening = line.crop.hardening();
      int nights = house.nights(line).killing(movedOutOn, today);
      double chance = lossOver(nights, hardening.frostLoss());
      lose(Loss.FROST, luck.lost(DrawPurpose.FROST, plants, chance));
    }
  }

  /** Takes off what hardening cost; what is left can go into the bed. */
  void countHardened(int today, double now) {
    countFrost(today);
    countOverheld(now);
    lose(Loss.HARDENING, luck.lost(DrawPurpose.HARDENING, plants, line.crop.hardening().loss()));
  }

  /** Loses all that lives to one cause, on a day's round or, after the last day, at the end. */
  void loseAll(Loss cause, int today, double now) {
    countFrost(today);
    countOverheld(now);
    lose(cause, plants);
  }

  /** Chance to be lost over some days, or nights, on each of which it is the same. */
  private static double lossOver(double days, double chance) {
    return days <= 0 ? 0 : 1 - Math.pow(1 - chance, days);
  }

  private void lose(Loss cause, int lost) {
    int most = Math.min(lost, plants - atLeast);
    plants -= most;
    house.notes().lost(this, cause, most);
  }

  // What a log has of it.

  /** From here on it has at least so many plants, for a log says so; 0: nothing is known. */
  void hasAtLeast(int known) {
    atLeast = known;
  }

  /** So many plants were counted, and what is missing was lost to a cause. */
  void counted(Loss cause, int count) {
    lose(cause, plants - count);
  }

  /** So many were counted of a tray whose plugs were ready: what growing on costs is in it. */
  void countedReady(int count) {
    counted(Loss.GROWING_ON, count);
    stage = stage == Stage.GROWING_ON ? Stage.GROWN_ON : stage;
  }

  /** Damping-off was seen and what it left was counted; holding up to now is in that, too. */
  void countedDampedOff(int count, double now) {
    counted(Loss.GROWING_ON, count);
    dampedOff = true;
    heldCountedTo = now;
  }

  /** Trays of pots that so many plants fill. */
  int potTraysOf(int potted) {
    int pots = line.crop.pottingOn().potsPerTray();
    return Math.max(1, (potted + pots - 1) / pots);
  }

  boolean isGerminating() {
    return stage == Stage.GERMINATING;
  }

  boolean isGrowingOn() {
    return stage == Stage.GROWING_ON;
  }

  // Falling due.

  /** Sets what it falls due for and when, and perhaps for what after that; forgets all before. */
  private void fallsDue(RoundStep first, double at, @Nullable RoundStep second, double secondAt) {
    due = first;
    dueOn = house.fallsDue(this, first, at);
    dueNext = second;
    dueNextOn = second == null ? SeasonPlan.NEVER : house.fallsDue(this, second, secondAt);
  }

  /** Whether it falls due for a step on the round of a day. */
  boolean fallsDue(RoundStep step, int day) {
    return (step == due && day == dueOn) || (step == dueNext && day == dueNextOn);
  }

  void leave() {
    due = null;
    dueNext = null;
    stage = Stage.GONE;
  }
}
