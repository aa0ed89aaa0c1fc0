package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import propcap.Tried;
import propcap.chance.Luck;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.UnlikelyTray;
import propcap.past.WrittenTray;

/** Which trays of a log are named, on many farms: {@code mvn -B -Pguarantees test}. */
@Tag("guarantees")
class UnlikelyTraysGuaranteeTest {
  private static final int FARMS = 150;
  private static final int SEASONS = 3;

  @Test
  void ofSeasonsByTheRulesNextToNoTrayIsNamed() {
    int trays = 0;
    List<String> named = new ArrayList<>();
    for (long seed = 1; seed <= FARMS; seed++) {
      Scenario scenario = RandomScenarios.from(seed);
      for (double share : new double[] {0.3, 0.5, 0.8}) {
        int today = (int) (share * scenario.season().days());
        for (PretendedLog.Counting counting : PretendedLog.Counting.values()) {
          FromADayOn farm = new FromADayOn(scenario, today, counting);
          Luck.Reader luck = farm.plan().luck(seed).reader();
          for (int season = 0; season < SEASONS; season++) {
            List<WrittenTray> log = farm.log(luck.season(season));
            trays += log.size();
            for (UnlikelyTray tray : UnlikelyTrays.of(farm.from(log))) {
              named.add(counting + ", farm " + seed + ", day " + today + ": " + tray);
            }
          }
        }
      }
    }
    Tried.row(
        "guarantees",
        "trays of a log that are named as too early or too late",
        trays
            + " trays of "
            + FARMS
            + " farms made up, "
            + SEASONS
            + " seasons by the rules each,"
            + " at 30, 50 and 80 % of the season, counted or not",
        named.size() + " named");
    assertThat(named).hasSizeLessThanOrEqualTo(trays / 5_000);
  }
}
