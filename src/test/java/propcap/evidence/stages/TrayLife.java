package propcap.evidence.stages;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Dice;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.LoggedTray;
import propcap.farm.Place;

/**
 * A tray from the heat to the bed by the rules of docs/model.md, and what its grower writes down.
 * Times are in days of the season, with the hour as a fraction.
 */
final class TrayLife {
  private final MadeLog.Truth truth;
  private final MadeFarm farm;
  private final Crop crop;
  private final Dice dice;
  private final String name;
  private final List<LoggedTray.Entry> entries = new ArrayList<>();
  private int plants;
  private double readyAt;
  private double keeps;

  /** Days of holding already taken off. */
  private double takenOff;

  private boolean foundReady;
  private int movedOutOn = -1;
  private int spaces = 1;
  private boolean potted;
  private boolean gone;

  TrayLife(MadeLog.Truth truth, MadeFarm farm, Crop crop, Dice dice, String name, int offHeat) {
    this.truth = truth;
    this.farm = farm;
    this.crop = crop;
    this.dice = dice;
    this.name = name;
    plants = crop.cells() - (int) (10 * dice.uniform());
    write(LoggedEvent.OFF_HEAT, offHeat, plants);
    double takes = truth.takesDays() * crop.growingOn().rate(crop.growingOn().atC());
    readyAt = farm.when(crop, offHeat, takes * Math.exp(truth.spread() * dice.normal()));
    keeps = truth.holdsDays();
  }

  private void write(LoggedEvent event, int day, @Nullable Integer count) {
    entries.add(new LoggedTray.Entry(event, farm.date(day), count));
  }

  boolean isInside() {
    return movedOutOn < 0;
  }

  boolean hasPotsInside() {
    return potted && isInside();
  }

  boolean isOutside() {
    return movedOutOn >= 0 && !gone;
  }

  int spaces() {
    return spaces;
  }

  boolean isPotted() {
    return potted;
  }

  boolean isReady(int day) {
    return readyAt <= farm.roundAt(day);
  }

  /** What the grower sees on a round before anything is moved. */
  void look(int day) {
    if (!foundReady && isReady(day)) {
      plants -= dice.lost(plants, truth.loss());
      boolean breaksOut = dice.uniform() < truth.chance();
      double s = truth.severity();
      plants -= breaksOut ? dice.lost(plants, dice.beta(2 * s, 2 * (1 - s))) : 0;
      foundReady = true;
      if (farm.writesReady()) {
        write(LoggedEvent.READY, day, plants);
      }
    }
  }

  private void hold(int day) {
    double beyond = Math.max(0, farm.roundAt(day) - readyAt - keeps) - takenOff;
    plants -= dice.lost(plants, 1 - Math.pow(1 - truth.overheld(), beyond));
    takenOff += beyond;
  }

  int spacesInPots() {
    int pots = crop.pottingOn().potsPerTray();
    return Math.max(1, (plants + pots - 1) / pots);
  }

  void potOn(int day) {
    hold(day);
    spaces = spacesInPots();
    plants -= dice.lost(plants, truth.potting());
    write(LoggedEvent.POTTED_ON, day, plants);
    potted = true;
    readyAt = farm.when(crop, day, crop.pottedDegreeDays());
    keeps = truth.potHoldsDays();
    takenOff = 0;
  }

  void moveOut(int day) {
    hold(day);
    movedOutOn = day;
    write(LoggedEvent.MOVED_OUT, day, plants);
  }

  boolean isHardened(int day) {
    return isOutside() && farm.fitDays(crop, movedOutOn, day) >= crop.hardening().takesDays();
  }

  void plantOut(int day) {
    hold(day);
    plants -= dice.lost(plants, truth.hardening());
    write(LoggedEvent.PLANTED_OUT, day, plants);
    gone = true;
  }

  LoggedTray log(Place table) {
    return new LoggedTray("s", name, crop.name(), table, entries);
  }
}
