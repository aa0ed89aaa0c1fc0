package propcap.study.order;

import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayTask;
import propcap.season.Diary;

/**
 * What each tray of one season brought, if it found room whenever it was due. Trays do not then
 * touch each other, so that the first ten of thirty are what ten would have been.
 */
final class TrayYields {
  private final short[][] onTime;
  private final short[][] potTrays;

  TrayYields(Scenario scenario, Diary diary) {
    int sowings = scenario.sowings().size();
    onTime = new short[sowings][];
    potTrays = new short[sowings][];
    for (int s = 0; s < sowings; s++) {
      int trays = scenario.sowings().get(s).trays();
      onTime[s] = new short[trays];
      potTrays[s] = new short[trays];
    }
    for (int i = 0; i < diary.size(); i++) {
      note(scenario, diary, i);
    }
  }

  private void note(Scenario scenario, Diary diary, int i) {
    int s = diary.sowing(i);
    int tray = diary.tray(i);
    TrayTask job = diary.job(i);
    if (job == TrayTask.POT_ON) {
      potTrays[s][tray] += (short) diary.fills(i);
    } else if (job == TrayTask.PLANT_OUT) {
      Sowing sowing = scenario.sowings().get(s);
      if (diary.day(i) <= scenario.season().dayOf(sowing.bedBy())) {
        onTime[s][tray] += (short) diary.plants(i);
      }
    }
  }

  /**
   * The fewest trays, from the first on, with so many plants on time; one more if all lack some.
   */
  int enough(int sowing, int needed) {
    int plants = 0;
    for (int tray = 0; tray < onTime[sowing].length; tray++) {
      if (plants >= needed) {
        return tray;
      }
      plants += onTime[sowing][tray];
    }
    return plants >= needed ? onTime[sowing].length : onTime[sowing].length + 1;
  }

  double plantsPerTray(int sowing) {
    double plants = 0;
    for (short tray : onTime[sowing]) {
      plants += tray;
    }
    return plants / onTime[sowing].length;
  }

  int potTrays(int sowing, int trays) {
    int sum = 0;
    for (int tray = 0; tray < trays; tray++) {
      sum += potTrays[sowing][tray];
    }
    return sum;
  }
}
