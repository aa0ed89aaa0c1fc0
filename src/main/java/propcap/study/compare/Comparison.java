package propcap.study.compare;

import java.util.List;
import java.util.Optional;
import propcap.farm.Scenario;
import propcap.study.RunSettings;
import propcap.study.money.Investment;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/**
 * Scenarios on the same seasons, each alternative against the first.
 *
 * @param scenarios the first, then the alternatives
 * @param seasons how many were run
 * @param confidence at which all intervals of one outcome hold together (Bonferroni), such as 0.95
 * @param outcomes what was compared
 * @param safe sowings of each scenario that are safe (see {@link propcap.study.forecast.Safety})
 * @param investments what the places that an alternative changes cost and bring, one for each
 *     alternative; empty where no money is asked
 */
public record Comparison(
    List<Scenario> scenarios,
    RunSettings settings,
    int seasons,
    double confidence,
    List<Outcome> outcomes,
    List<Integer> safe,
    List<Investment> investments) {

  /** What an outcome is, so that words can be made of it. */
  public enum Kind {
    ON_TIME,
    ON_TIME_OF_CROP,
    LATE,
    SOWINGS_MET,
    WAITING,
    LOST,
    MARGIN
  }

  /**
   * One outcome of the season.
   *
   * @param subject the crop, the step waited at or the cause of loss, by its word; empty for a
   *     total
   * @param moreIsBetter false for waiting, losses and late plants
   * @param levels one for each scenario
   * @param differences one for each alternative
   */
  public record Outcome(
      Kind kind,
      String subject,
      boolean moreIsBetter,
      List<Stat> levels,
      List<Difference> differences) {}

  /** The total of a kind. */
  public Outcome total(Kind kind) {
    return find(kind, "").orElseThrow();
  }

  public Optional<Outcome> find(Kind kind, String subject) {
    return outcomes.stream()
        .filter(o -> o.kind() == kind && o.subject().equals(subject))
        .findFirst();
  }
}
