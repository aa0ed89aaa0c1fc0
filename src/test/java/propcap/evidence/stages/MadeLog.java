package propcap.evidence.stages;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import propcap.evidence.Dice;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Labour;
import propcap.farm.LoggedTray;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.WeatherYear;

/** A log of trays that was made by the rules of docs/model.md from figures that are known. */
record MadeLog(Scenario scenario, Truth truth, List<LoggedTray> trays) {
  static final double LIST_WEIGHS = 10;
  private static final int BATCHES = 3;
  private static final Season SEASON =
      new Season(LocalDate.of(2025, 3, 1), LocalDate.of(2025, 8, 31));

  /** What made the log. */
  record Truth(
      double takesDays,
      double spread,
      double loss,
      double chance,
      double severity,
      double holdsDays,
      double overheld,
      double potting,
      double hardening,
      double potHoldsDays) {
    /** As the crop list has it. */
    static Truth listed(Crop crop) {
      Crop.GrowingOn growing = crop.growingOn();
      return new Truth(
          growing.takesDays(),
          growing.spread(),
          growing.loss(),
          growing.dampingOff().chance(),
          growing.dampingOff().severity(),
          growing.holdsDays(),
          growing.overheldLossPerDay(),
          crop.pottingOn().loss(),
          crop.hardening().loss(),
          crop.pottingOn().holdsDays());
    }

    /** Drawn from what the list is taken to say, as if ten trays had shown it. */
    static Truth drawn(Crop crop, Dice dice) {
      Truth listed = listed(crop);
      double spread = listed.spread() * Math.sqrt(LIST_WEIGHS / dice.chiSquared((int) LIST_WEIGHS));
      double plants = LIST_WEIGHS * crop.cells();
      double sd = 1 / Math.sqrt(LIST_WEIGHS);
      return new Truth(
          listed.takesDays() * Math.exp(spread * sd * dice.normal()),
          spread,
          beta(dice, listed.loss(), plants),
          beta(dice, listed.chance(), LIST_WEIGHS),
          beta(dice, listed.severity(), Stages.LISTED_OUTBREAKS * Stages.OUTBREAK_WEIGHS),
          listed.holdsDays() * Math.exp(sd * dice.normal()),
          beta(dice, listed.overheld(), plants),
          beta(dice, listed.potting(), plants),
          beta(dice, listed.hardening(), plants),
          listed.potHoldsDays() * Math.exp(sd * dice.normal()));
    }

    private static double beta(Dice dice, double chance, double weight) {
      BetaBelief belief = BetaBelief.of(chance, weight);
      return dice.beta(belief.lost(), belief.kept());
    }
  }

  /**
   * How the trays were kept.
   *
   * @param writesReady whether the day on which plugs were ready is written down
   * @param constant whether the table is held at one temperature; else it is as the days are
   * @param trays of all three batches, ten days apart
   * @param released the day of the season from which trays may go out
   * @param yard spaces for hardening off
   * @param pots spaces for pots on the table
   * @param lastDay of the season on which the log was read
   */
  record Habits(
      boolean writesReady,
      boolean constant,
      int trays,
      int released,
      int yard,
      int pots,
      int lastDay) {
    static final Habits PLENTY = new Habits(true, false, 30, 0, 1000, 1000, 183);

    Habits withoutReady() {
      return new Habits(false, constant, trays, released, yard, pots, lastDay);
    }

    Habits of(int someTrays) {
      return new Habits(writesReady, constant, someTrays, released, yard, pots, lastDay);
    }

    Habits releasedOn(int day) {
      return new Habits(writesReady, constant, trays, day, yard, pots, lastDay);
    }

    Habits withRoomFor(int outside, int inPots) {
      return new Habits(writesReady, constant, trays, released, outside, inPots, lastDay);
    }

    Habits readOn(int day) {
      return new Habits(writesReady, constant, trays, released, yard, pots, day);
    }

    Habits warmedEvenly() {
      return new Habits(writesReady, true, trays, released, yard, pots, lastDay);
    }
  }

  /** Trays and people in one spring. */
  static MadeLog of(Crop crop, Truth truth, Habits habits, Dice dice) {
    Place table =
        new Place(
            "Table",
            PlaceKind.TABLE,
            1000,
            habits.constant() ? new Climate.Constant(18) : new Climate.Heated(12, 4, 26),
            0,
            null);
    Scenario scenario = scenario(crop, table, spring(dice));
    MadeFarm farm = new MadeFarm(scenario, table, habits.writesReady());
    List<TrayLife> trays = new ArrayList<>();
    boolean pots = crop.pottingOn().when() == Crop.PottingOn.When.ALWAYS;
    for (int day = 0; day < SEASON.days() && day <= habits.lastDay(); day++) {
      if (!scenario.rounds().isWorkingDay(farm.date(day))) {
        continue;
      }
      for (TrayLife tray : trays) {
        tray.look(day);
        if (tray.isHardened(day)) {
          tray.plantOut(day);
        }
      }
      int outside = trays.stream().filter(TrayLife::isOutside).mapToInt(TrayLife::spaces).sum();
      for (TrayLife tray : trays) {
        boolean mayGo = tray.isInside() && tray.isReady(day) && (!pots || tray.isPotted());
        if (mayGo && day >= habits.released() && outside + tray.spaces() <= habits.yard()) {
          tray.moveOut(day);
          outside += tray.spaces();
        }
      }
      int potted = trays.stream().filter(TrayLife::hasPotsInside).mapToInt(TrayLife::spaces).sum();
      for (TrayLife tray : trays) {
        boolean due = pots && tray.isInside() && !tray.isPotted() && tray.isReady(day);
        if (due && potted + tray.spacesInPots() <= habits.pots()) {
          tray.potOn(day);
          potted += tray.spaces();
        }
      }
      for (int i = trays.size(); i < dueOffHeat(day, habits.trays()); i++) {
        trays.add(new TrayLife(truth, farm, crop, dice, Integer.toString(i + 1), day));
      }
    }
    return new MadeLog(scenario, truth, trays.stream().map(t -> t.log(table)).toList());
  }

  /** Three batches ten days apart, the trays of each off the heat over a week. */
  private static int dueOffHeat(int day, int trays) {
    int due = 0;
    for (int i = 0; i < trays; i++) {
      due += day >= 20 + 10 * (i * BATCHES / trays) + i % 7 ? 1 : 0;
    }
    return due;
  }

  private static Scenario scenario(Crop crop, Place table, WeatherYear spring) {
    return new Scenario(
        "made",
        SEASON,
        0,
        new Rounds(LocalTime.of(8, 0), Set.of(DayOfWeek.SUNDAY)),
        List.of(
            new Place("Mats", PlaceKind.HEAT_BENCH, 9, new Climate.Constant(20), 0, null),
            table,
            new Place("Yard", PlaceKind.HARDENING, 9, new Climate.Outdoor(), 0, null)),
        Map.of(crop.name(), crop),
        List.of(),
        List.of(spring),
        null,
        Labour.NOT_LIMITED);
  }

  /** From 6 C in March to 20 C in July, each day like the one before it; no night kills. */
  private static WeatherYear spring(Dice dice) {
    double[] min = new double[SEASON.days()];
    double[] max = new double[SEASON.days()];
    double off = 0;
    for (int day = 0; day < min.length; day++) {
      off = 0.65 * off + 3 * Math.sqrt(1 - 0.65 * 0.65) * dice.normal();
      double mean = 13 - 7 * Math.cos(Math.PI * day / 140) + off;
      min[day] = Math.max(-1, mean - 5);
      max[day] = Math.max(min[day], mean + 5);
    }
    return new WeatherYear(SEASON.start().getYear(), min, max);
  }
}
