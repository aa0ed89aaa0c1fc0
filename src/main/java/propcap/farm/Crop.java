package propcap.farm;

import java.io.Serializable;
import java.util.List;

/**
 * What is known of a crop, from the seed to the day it can be planted out.
 *
 * @param cells cells a tray
 * @param seedsPerCell seeds sown in each cell, thinned to one seedling
 * @param germinateIn names of places, best first
 * @param leaveAt share of all cells, 0 to 1, that show when a tray is ready to leave the heat
 * @param pullAfterDays days after sowing when a tray leaves the heat whatever shows
 * @param standWindowDays days after leaving the heat within which a cell must show to count
 * @param failBelow share of cells, 0 to 1, below which a pulled tray is thrown out
 * @param materials what its seed weighs and how much mix it takes
 */
public record Crop(
    String name,
    int cells,
    int seedsPerCell,
    Germination germination,
    Emergence emergence,
    List<String> germinateIn,
    double leaveAt,
    double pullAfterDays,
    double standWindowDays,
    double failBelow,
    GrowingOn growingOn,
    PottingOn pottingOn,
    Hardening hardening,
    Materials materials)
    implements Serializable {

  /** Common practice: lids and heat come off at half the seedlings. */
  public static final double DEFAULT_LEAVE_AT = 0.5;

  /** Planning default, not measured. */
  public static final double DEFAULT_PULL_AFTER_DAYS = 21;

  /** Planning default, not measured. */
  public static final double DEFAULT_STAND_WINDOW_DAYS = 5;

  /** Planning default, not measured. */
  public static final double DEFAULT_FAIL_BELOW = 0.25;

  public Crop {
    Checks.require(!name.isBlank(), "a crop needs a name");
    Checks.atLeast(1, "cells per tray", cells);
    Checks.atLeast(1, "seeds per cell", seedsPerCell);
    germinateIn = List.copyOf(germinateIn);
    Checks.require(!germinateIn.isEmpty(), name + " needs a place to germinate in");
    Checks.probability("leave-at", leaveAt);
    Checks.require(leaveAt > 0, "leave-at must be more than 0 %, was " + 100 * leaveAt + " %");
    Checks.positive("pull-after", pullAfterDays);
    Checks.notNegative("stand-window", standWindowDays);
    Checks.probability("fail-below", failBelow);
  }

  /** This crop, potted on at other times. */
  public Crop pottedOn(PottingOn.When when) {
    return with(
        growingOn,
        new PottingOn(
            when, pottingOn.potsPerTray, pottingOn.takesDays, pottingOn.holdsDays, pottingOn.loss),
        hardening);
  }

  /** This crop with other stages after germination. */
  public Crop with(GrowingOn grown, PottingOn potted, Hardening hardened) {
    return new Crop(
        name,
        cells,
        seedsPerCell,
        germination,
        emergence,
        germinateIn,
        leaveAt,
        pullAfterDays,
        standWindowDays,
        failBelow,
        grown,
        potted,
        hardened,
        materials);
  }

  /** The number of showing cells at which a tray is ready to leave the heat, at least 1. */
  public int cellsToLeave() {
    return wholeCells(leaveAt);
  }

  /** A pulled tray with fewer showing cells than this has failed. */
  public int cellsNotToFail() {
    return wholeCells(failBelow);
  }

  private int wholeCells(double share) {
    // 0.55 * 100 is 55.00000000000001 in binary: a whole product must stay whole.
    return (int) Math.ceil(share * cells - 1e-9);
  }

  /** Thermal time that growing on takes, degree days above the base: mean over trays' medians. */
  public double growingOnDegreeDays() {
    return growingOn.takesDays * growingOn.rate(growingOn.atC);
  }

  /** Thermal time that a pot takes; its rate and reference temperature are those of growing on. */
  public double pottedDegreeDays() {
    return pottingOn.takesDays * growingOn.rate(growingOn.atC);
  }

  /**
   * Days from sowing to the bed where every stage stands at its best temperature and goes as it
   * does for the middle tray. A tray may be a little quicker by luck; none is by much.
   */
  public double quickestDays() {
    double best = growingOn.rate(growingOn.optimumC);
    double potted = pottingOn.when == PottingOn.When.ALWAYS ? pottedDegreeDays() / best : 0;
    return emergence.medianDegreeDays() / emergence.rate(emergence.optimumC)
        + growingOnDegreeDays() / best
        + potted
        + hardening.takesDays;
  }

  /**
   * How many seeds of a lot come up.
   *
   * @param rate chance that a seed germinates, 0 to 1
   * @param testedSeeds seeds in the test that the rate comes from; 0: taken as certain
   * @param trayCorrelation correlation, 0 up to 1, between two seeds of one tray
   */
  public record Germination(double rate, double testedSeeds, double trayCorrelation)
      implements Serializable {
    /** A chance or a correlation below this is none. */
    public static final double LEAST = 1e-6;

    public Germination {
      Checks.probability("germination rate", rate);
      Checks.notNegative("tested-seeds", testedSeeds);
      Checks.probability("tray-correlation", trayCorrelation);
      Checks.require(
          trayCorrelation < 1, "tray-correlation must be less than 1, was " + trayCorrelation);
      // Below that arithmetic with binary fractions is no longer exact.
      Checks.require(
          rate == 0 || rate >= LEAST,
          "germination rate must be 0 or at least 0.0001 %, was " + 100 * rate + " %");
      Checks.require(
          trayCorrelation == 0 || trayCorrelation >= LEAST,
          "tray-correlation must be 0 or at least 0.000001, was " + trayCorrelation);
    }
  }

  /**
   * How fast seedlings show, by the thermal-time model of Garcia-Huidobro, Monteith and Squire
   * (1982), J. Exp. Bot. 33. Temperatures in degrees C.
   *
   * @param atC temperature at which the two times below hold
   * @param halfByDays days until half of the seedlings that will ever show have shown
   * @param mostByDays days until nine in ten have
   */
  public record Emergence(
      double baseC,
      double optimumC,
      double ceilingC,
      double atC,
      double halfByDays,
      double mostByDays)
      implements Serializable {
    public Emergence {
      Checks.finite("emergence base", baseC);
      Checks.finite("emergence ceiling", ceilingC);
      Checks.require(
          baseC < optimumC, "base must be below optimum (" + optimumC + " C), was " + baseC);
      Checks.require(
          optimumC < ceilingC,
          "optimum must be below ceiling (" + ceilingC + " C), was " + optimumC);
      Checks.require(
          atC > baseC && atC < ceilingC, "at must lie between base and ceiling, was " + atC);
      Checks.positive("half-by", halfByDays);
      Checks.finite("most-by", mostByDays);
      Checks.require(
          mostByDays > halfByDays,
          "most-by must be later than half-by (" + halfByDays + " days), was " + mostByDays);
    }

    /** Rate of development at a temperature, degree days above the base a day; 0 outside. */
    public double rate(double tempC) {
      if (tempC <= baseC || tempC >= ceilingC) {
        return 0;
      }
      if (tempC <= optimumC) {
        return tempC - baseC;
      }
      return (optimumC - baseC) * (ceilingC - tempC) / (ceilingC - optimumC);
    }

    /** The median thermal time to showing, degree days above the base. */
    public double medianDegreeDays() {
      return halfByDays * rate(atC);
    }
  }

  /**
   * The weeks on the table. Temperatures in degrees C, chances 0 to 1.
   *
   * @param takesDays days that growing on takes at {@code atC}
   * @param spread log-scale standard deviation between trays
   * @param loss chance that a plant is lost to no one cause
   * @param holdsDays days that a ready plug keeps
   * @param overheldLossPerDay chance a day after that
   */
  public record GrowingOn(
      double baseC,
      double optimumC,
      double atC,
      double takesDays,
      double spread,
      double loss,
      DampingOff dampingOff,
      double holdsDays,
      double overheldLossPerDay)
      implements Serializable {
    /** Planning default, not measured. */
    public static final double DEFAULT_SPREAD = 0.10;

    /** Planning default, not measured. */
    public static final double DEFAULT_LOSS = 0.03;

    /** Planning default, not measured. */
    public static final double DEFAULT_OVERHELD_LOSS = 0.03;

    public GrowingOn {
      Checks.finite("growing-on base", baseC);
      Checks.finite("growing-on optimum", optimumC);
      Checks.finite("growing-on at", atC);
      Checks.require(
          baseC < optimumC, "base must be below optimum (" + optimumC + " C), was " + baseC);
      Checks.require(atC > baseC, "at must be above base (" + baseC + " C), was " + atC);
      Checks.positive("growing-on takes", takesDays);
      Checks.notNegative("spread", spread);
      Checks.probability("growing-on loss", loss);
      Checks.notNegative("holds", holdsDays);
      Checks.probability("overheld-loss", overheldLossPerDay);
    }

    /** Rate of development at a temperature, degree days above the base a day, never below 0. */
    public double rate(double tempC) {
      return Math.max(0, Math.min(tempC, optimumC) - baseC);
    }
  }

  /**
   * An outbreak of damping-off in a tray.
   *
   * @param chance that a tray has one, 0 to 1
   * @param severity mean share of its plants that are lost, 0 to 1
   */
  public record DampingOff(double chance, double severity) implements Serializable {
    public static final DampingOff NONE = new DampingOff(0, 0);

    public DampingOff {
      Checks.probability("damping-off chance", chance);
      Checks.probability("damping-off severity", severity);
    }
  }

  /**
   * Moving plugs to pots.
   *
   * @param potsPerTray pots that fill one space
   * @param takesDays days that a pot takes at growing on's {@code atC}
   * @param holdsDays days that a ready pot keeps
   * @param loss chance that a plant is lost in the move, 0 to 1
   */
  public record PottingOn(
      When when, int potsPerTray, double takesDays, double holdsDays, double loss)
      implements Serializable {
    /** When plugs are potted on. */
    public enum When implements Worded {
      /** Plugs go to the beds as they are. */
      NEVER,
      /** As soon as the plug is ready. */
      ALWAYS,
      /** Once a ready plug has been held as long as it keeps and is still on the table. */
      IF_HELD
    }

    /** Planning default, not measured. */
    public static final double DEFAULT_LOSS = 0.02;

    public static final PottingOn NEVER = new PottingOn(When.NEVER, 1, 0, 0, 0);

    public PottingOn {
      Checks.atLeast(1, "pots-per-tray", potsPerTray);
      Checks.notNegative("potting-on takes", takesDays);
      Checks.notNegative("potting-on holds", holdsDays);
      Checks.probability("potting-on loss", loss);
    }
  }

  /**
   * Hardening off outdoors. Temperatures in degrees C, chances 0 to 1.
   *
   * @param takesDays fit days needed
   * @param fitAboveC a day is fit when its minimum is above this
   * @param killBelowC a night at or below this costs plants
   * @param frostLoss chance that a plant is lost on such a night
   * @param loss chance that a plant is lost to no one cause
   * @param frostRisk share of record years that may still have a frost on or after the release date
   * @param offsetDays days from that date to the release; negative for hardy crops
   */
  public record Hardening(
      double takesDays,
      double fitAboveC,
      double killBelowC,
      double frostLoss,
      double loss,
      double frostRisk,
      int offsetDays)
      implements Serializable {
    /** Planning default, not measured. */
    public static final double DEFAULT_FIT_ABOVE_C = 2;

    /** Planning default, not measured. */
    public static final double DEFAULT_KILL_BELOW_C = -2;

    /** Planning default, not measured. */
    public static final double DEFAULT_FROST_LOSS = 0.10;

    /** Planning default, not measured. */
    public static final double DEFAULT_LOSS = 0.02;

    /** Planning default, not measured. */
    public static final double DEFAULT_FROST_RISK = 0.10;

    public Hardening {
      Checks.notNegative("hardening takes", takesDays);
      Checks.finite("fit-above", fitAboveC);
      Checks.finite("kill-below", killBelowC);
      Checks.probability("frost-loss", frostLoss);
      Checks.probability("hardening loss", loss);
      Checks.probability("frost-risk", frostRisk);
    }
  }
}
