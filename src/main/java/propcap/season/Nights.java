package propcap.season;

import propcap.farm.Crop;
import propcap.farm.WeatherYear;

/**
 * The days of one weather year as they count for a crop that hardens off. A day belongs to the
 * plants that spend it wholly outside: from the day after their move to the day before they are
 * planted out.
 */
final class Nights {
  private final double takesDays;

  /** Fit days, and nights that kill, before each day. */
  private final int[] fitBefore;

  private final int[] killingBefore;

  Nights(Crop.Hardening hardening, WeatherYear year) {
    takesDays = hardening.takesDays();
    fitBefore = new int[year.days() + 1];
    killingBefore = new int[year.days() + 1];
    for (int d = 0; d < year.days(); d++) {
      boolean kills = year.minC(d) <= hardening.killBelowC();
      boolean fit = !kills && year.minC(d) > hardening.fitAboveC();
      fitBefore[d + 1] = fitBefore[d] + (fit ? 1 : 0);
      killingBefore[d + 1] = killingBefore[d] + (kills ? 1 : 0);
    }
  }

  /**
   * The first day on which plants moved out on a day are hardened from 00:00 on; the number of days
   * of the season or more if they never are.
   */
  int hardenedOn(int movedOn) {
    int day = movedOn + 1;
    while (day < fitBefore.length && fitBefore[day] - fitBefore[movedOn + 1] < takesDays) {
      day++;
    }
    return day;
  }

  /** Nights that kill among the days after the move and before a day. */
  int killing(int movedOn, int before) {
    return before <= movedOn + 1 ? 0 : killingBefore[before] - killingBefore[movedOn + 1];
  }
}
