package propcap.report.kit;

import java.util.List;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.study.RunSettings;

/** A line of what was run, such as its seed. */
public record Fact(String name, String value) {

  /** What stands at the head of every page. */
  public static List<Fact> of(Scenario scenario, String springs, RunSettings settings) {
    Season season = scenario.season();
    return List.of(
        new Fact(
            "Season", Dates.dayAndYear(season.start()) + " to " + Dates.dayAndYear(season.end())),
        new Fact(
            "Sown",
            Words.plural(scenario.sowings().size(), "sowing")
                + ", "
                + Words.plural(scenario.trays(), "tray")),
        new Fact(
            "Springs tried",
            springs
                + ", each in the weather of one of "
                + Words.plural(scenario.weather().size(), "recorded year")),
        new Fact("Seed of all luck", Long.toString(settings.seed())));
  }

  /** How often and with which luck, such as {@code : 500 springs of each shift, seed 1}. */
  public static String run(int seasons, String of, long seed) {
    return ": " + Words.plural(seasons, "spring") + of + ", seed " + seed;
  }
}
