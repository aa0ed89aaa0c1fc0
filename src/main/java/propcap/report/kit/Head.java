package propcap.report.kit;

import propcap.farm.Scenario;
import propcap.study.RunSettings;

/** What stands at the head of a file for other programs: which scenario, told by what. */
public record Head(String scenario, String version, int seasons, long seed) {
  public static Head of(Scenario scenario, String version, int seasons, RunSettings settings) {
    return new Head(scenario.name(), version, seasons, settings.seed());
  }
}
