package propcap.evidence.stages;

import java.time.LocalDate;
import propcap.farm.Crop;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.WeatherYear;

/**
 * Where made trays stand: its days and how warm they are, counted apart from {@link TableWarmth}.
 */
record MadeFarm(Scenario scenario, Place table, boolean writesReady) {
  LocalDate date(int day) {
    return scenario.season().start().plusDays(day);
  }

  double roundAt(int day) {
    return day + scenario.rounds().shareOfDay();
  }

  private WeatherYear weather() {
    return scenario.weather().get(0);
  }

  /** The time at which so many degree days have passed on the table since a day's round. */
  double when(Crop crop, int fromDay, double degreeDays) {
    double left = degreeDays;
    double time = roundAt(fromDay);
    for (int day = fromDay; day < weather().days(); day++) {
      double rate = crop.growingOn().rate(table.climate().meanC(weather().meanC(day)));
      double enough = rate > 0 ? left / rate : Double.POSITIVE_INFINITY;
      if (time + enough <= day + 1) {
        return time + enough;
      }
      left -= rate * (day + 1 - time);
      time = day + 1;
    }
    return Double.POSITIVE_INFINITY;
  }

  /** Fit days spent wholly outside between two rounds. */
  int fitDays(Crop crop, int movedOutOn, int today) {
    int fit = 0;
    for (int day = movedOutOn + 1; day < today; day++) {
      fit += weather().minC(day) > crop.hardening().fitAboveC() ? 1 : 0;
    }
    return fit;
  }
}
