package propcap.study.now;

import java.util.List;
import propcap.farm.Scenario;
import propcap.farm.UnlikelyTray;
import propcap.season.UnlikelyTrays;

/** Are rows of the log missing, or wrong? */
public final class CheckingLog {
  private CheckingLog() {}

  /**
   * The trays that were far too early or too late by the plan's figures, in the log's order; none
   * where nothing is known of the season.
   */
  public static List<UnlikelyTray> unlikely(Scenario scenario) {
    return scenario.soFar() == null ? List.of() : UnlikelyTrays.of(scenario);
  }
}
