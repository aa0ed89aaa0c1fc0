package propcap.study.plan;

import java.util.List;
import propcap.farm.Place;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;
import propcap.season.SeasonOutcome;

/**
 * What a search goes by: the margin of {@link propcap.study.money.Accounts} in floating point,
 * which is fast; where no money is asked, the trays of the plan, as a cost.
 */
final class PlanWorth {
  private final boolean isMoney;
  private final int[] needed;
  private final double[] onTime;
  private final double[] late;
  private final double[] lacking;
  private final double[] tray;
  private final double[] runPerDay;
  private final double potTray;
  private final double hour;
  private final boolean sellSurplus;
  private final double whole;

  PlanWorth(Scenario scenario) {
    List<Sowing> sowings = scenario.sowings();
    int n = sowings.size();
    needed = sowings.stream().mapToInt(Sowing::plantsNeeded).toArray();
    onTime = new double[n];
    late = new double[n];
    lacking = new double[n];
    tray = new double[n];
    runPerDay = new double[scenario.places().size()];
    Prices prices = scenario.prices();
    isMoney = prices != null;
    if (prices == null) {
      potTray = 0;
      hour = 0;
      sellSurplus = false;
      whole = scenario.trays();
      return;
    }
    potTray = prices.potTray().doubleValue();
    hour = prices.hour().doubleValue();
    sellSurplus = prices.sellSurplus();
    double sum = 0;
    for (int s = 0; s < n; s++) {
      Prices.PlantPrices price = prices.of(sowings.get(s).crop());
      onTime[s] = price.worth().doubleValue();
      late[s] = price.late().doubleValue();
      lacking[s] = price.lacking().doubleValue();
      tray[s] = prices.trayOf(sowings.get(s).crop()).doubleValue();
      sum += needed[s] * (onTime[s] + lacking[s]) + tray[s] * sowings.get(s).trays();
    }
    whole = sum > 0 ? sum : 1;
    for (int p = 0; p < runPerDay.length; p++) {
      Place.Cost cost = scenario.places().get(p).cost();
      runPerDay[p] = cost == null ? 0 : cost.runPerDay().doubleValue();
    }
  }

  /** What the whole plan is about: it says how much a chance that is missed weighs. */
  double whole() {
    return whole;
  }

  /**
   * What one sowing brings in a season.
   *
   * @param planned trays that are to be sown: what counts where no money is asked
   * @param sown trays that were, trays sown again included
   * @param pots trays of pots
   */
  double of(int s, int onTimePlants, int latePlants, int planned, int sown, int pots) {
    if (!isMoney) {
      return -planned;
    }
    int out = onTimePlants;
    int after = latePlants;
    int lacks = Math.max(0, needed[s] - out - after);
    if (!sellSurplus) {
      out = Math.min(out, needed[s]);
      after = Math.min(after, needed[s] - out);
    }
    return onTime[s] * out + late[s] * after - lacking[s] * lacks - tray[s] * sown - potTray * pots;
  }

  /** What all of a season of a plan brings. */
  double of(SeasonOutcome season, List<Sowing> sowings) {
    double sum = hour == 0 ? 0 : -hour * season.hours();
    for (int s = 0; s < needed.length; s++) {
      sum +=
          of(
              s,
              season.onTime(s),
              season.late(s),
              sowings.get(s).trays(),
              season.trays(s, TrayMove.SOWN),
              season.potTrays(s));
    }
    for (int p = 0; p < runPerDay.length; p++) {
      sum -= runPerDay[p] == 0 ? 0 : runPerDay[p] * season.daysInUse(p);
    }
    return sum;
  }

  boolean isMet(int s, int onTimePlants) {
    return onTimePlants >= needed[s];
  }

  /** Share of the plants needed that is on time, at most 1. */
  double supplied(int s, int onTimePlants) {
    return isMet(s, onTimePlants) ? 1 : onTimePlants / (double) needed[s];
  }
}
