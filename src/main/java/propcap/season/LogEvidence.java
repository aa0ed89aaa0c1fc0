package propcap.season;

import java.util.HashMap;
import java.util.Map;
import java.util.stream.IntStream;
import propcap.chance.KnownLuck;
import propcap.chance.KnownTray;
import propcap.farm.SoFar;

/** What a log says of luck: its days become thermal times, by the weather that there was. */
final class LogEvidence {
  private LogEvidence() {}

  /** What is known of luck. */
  static KnownLuck of(SeasonPlan plan) {
    return KnownLuck.of(IntStream.range(0, years(plan)).mapToObj(year -> in(plan, year)).toList());
  }

  /** Each weather year for itself, unless this season's own weather is known to the last day. */
  static int years(SeasonPlan plan) {
    SoFar soFar = plan.scenario().soFar();
    boolean isSame =
        plan.past().trays().isEmpty()
            || (soFar != null
                && soFar.weather().size() >= plan.scenario().season().dayOf(soFar.today()));
    return isSame ? 1 : plan.scenario().weather().size();
  }

  private static Map<KnownLuck.Tray, KnownTray> in(SeasonPlan plan, int year) {
    Clocks clocks = plan.clocks(year);
    Map<KnownLuck.Tray, KnownTray> known = new HashMap<>();
    for (Past.Known tray : plan.past().trays()) {
      known.put(
          new KnownLuck.Tray(tray.line().sowing, tray.tray().number(), tray.tray().attempt()),
          new TrayEvidence(plan, clocks, tray).known());
    }
    return known;
  }
}
