package propcap.study;

import java.math.BigDecimal;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.Scenario;

/**
 * Scenarios on the same seasons, each alternative against the first.
 *
 * @param scenarios the first, then the alternatives
 * @param seasons how many were run
 * @param confidence at which all intervals of one outcome hold together (Bonferroni), such as 0.95
 * @param outcomes what was compared
 * @param investments what the places that an alternative adds or enlarges cost and bring, one for
 *     each alternative; empty where no money is asked
 */
public record Comparison(
    List<Scenario> scenarios,
    RunSettings settings,
    int seasons,
    double confidence,
    List<Outcome> outcomes,
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

  /**
   * What it takes and what it brings to change the places as an alternative does.
   *
   * @param additions places that the alternative has and the first has not, or has fewer spaces of
   * @param gain margin of a season more than the first's, what running the places costs taken off
   * @param worth null: nothing is added, or something of which nobody said what it costs
   */
  public record Investment(List<Addition> additions, Difference gain, @Nullable Worth worth) {
    public Investment {
      additions = List.copyOf(additions);
    }

    /** What is added although nobody said what it costs. */
    public List<Addition> unpriced() {
      return additions.stream().filter(a -> a.place().cost() == null).toList();
    }
  }

  /**
   * A place that is new, or larger than the first scenario has it.
   *
   * @param spacesNow in the first scenario; 0: it is not there, or closed
   */
  public record Addition(Place place, int spacesNow) {
    public boolean isEnlarged() {
      return spacesNow > 0;
    }
  }

  /**
   * What additions are worth over their lives.
   *
   * @param buy all of it, once
   * @param yearly what they cost a year: an annuity of the buying and the upkeep; what they cost to
   *     run is in the margin
   * @param netPresentValue of their lives, at the mean gain, with half its interval
   * @param paybackYears years until the discounted gains have paid the buying; null: never
   * @param chancePays chance that over their lives, of springs drawn from the simulated ones, the
   *     gains pay for buying and upkeep
   */
  public record Worth(
      BigDecimal buy,
      BigDecimal yearly,
      double netPresentValue,
      double netPresentValueHalfWidth,
      @Nullable Double paybackYears,
      double chancePays) {}

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
