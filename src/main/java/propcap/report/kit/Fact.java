package propcap.report.kit;

import java.util.List;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.study.RunSettings;

/** A line of what was run, such as its seed. */
public record Fact(String name, String value) {

  /** What stands at the head of every page. */
  public static List<Fact> of(Scenario scenario, String springs, RunSettings settings) {
    return List.of(
        season(scenario),
        new Fact(
            "Sown",
            Words.plural(scenario.sowings().size(), "sowing")
                + ", "
                + Words.plural(scenario.trays(), "tray")),
        springs(scenario, springs),
        seed(settings));
  }

  /** The same of a day within the season, on which much is not sown yet. */
  public static List<Fact> within(Scenario scenario, String springs, RunSettings settings) {
    return List.of(season(scenario), springs(scenario, springs), seed(settings));
  }

  private static Fact season(Scenario scenario) {
    Season season = scenario.season();
    return new Fact(
        "Season", Dates.dayAndYear(season.start()) + " to " + Dates.dayAndYear(season.end()));
  }

  private static Fact springs(Scenario scenario, String springs) {
    return new Fact(
        "Springs tried",
        springs
            + ", each in the weather of one of "
            + Words.plural(scenario.weather().size(), "recorded year"));
  }

  private static Fact seed(RunSettings settings) {
    return new Fact("Random start", "number " + settings.seed());
  }

  /** How often and with which luck, such as {@code : 500 springs of each shift, seed 1}. */
  public static String run(int seasons, String of, long seed) {
    return ": " + Words.plural(seasons, "spring") + of + ", seed " + seed;
  }
}
