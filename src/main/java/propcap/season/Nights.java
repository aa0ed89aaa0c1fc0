package propcap.season;

import propcap.farm.Crop;
import propcap.farm.WeatherYear;

/**
 * The days of one weather year as they count for a crop that hardens off. A day belongs to the
 * plants that spend it wholly outside: from the day after their move to the day before they are
 * planted out.
 */
final class Nights {
  /** By the day of the move, the first day on which plants are hardened from 00:00 on. */
  private final int[] hardenedOn;

  /** Nights that kill before each day. */
  private final int[] killingBefore;

  Nights(Crop.Hardening hardening, WeatherYear year) {
    hardenedOn = new int[year.days()];
    killingBefore = new int[year.days() + 1];
    int[] fitBefore = new int[year.days() + 1];
    for (int d = 0; d < year.days(); d++) {
      boolean kills = year.minC(d) <= hardening.killBelowC();
      boolean fit = !kills && year.minC(d) > hardening.fitAboveC();
      fitBefore[d + 1] = fitBefore[d] + (fit ? 1 : 0);
      killingBefore[d + 1] = killingBefore[d] + (kills ? 1 : 0);
    }
    int day = 0;
    for (int moved = 0; moved < year.days(); moved++) {
      day = Math.max(day, moved + 1);
      while (day <= year.days() && fitBefore[day] - fitBefore[moved + 1] < hardening.takesDays()) {
        day++;
      }
      hardenedOn[moved] = day;
    }
  }

  /**
   * The first day on which plants moved out on a day are hardened from 00:00 on; the number of days
   * of the season or more if they never are.
   */
  int hardenedOn(int movedOn) {
    return hardenedOn[movedOn];
  }

  /** Nights that kill among the days after the move and before a day. */
  int killing(int movedOn, int before) {
    return before <= movedOn + 1 ? 0 : killingBefore[before] - killingBefore[movedOn + 1];
  }
}
