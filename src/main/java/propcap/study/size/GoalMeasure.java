package propcap.study.size;

import java.util.Arrays;
import java.util.List;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;
import propcap.study.BadQuestionException;
import propcap.study.NamesInQuestions;
import propcap.study.RunSettings;
import propcap.study.SeasonTotals;
import propcap.study.money.Accounts;
import propcap.study.size.Goal.Measure;
import propcap.study.statistics.BestSelection;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Strata;

/** What a goal is measured by, season by season, and the limits of its mean. */
final class GoalMeasure {
  private final Scenario scenario;
  private final Goal goal;
  private final RunSettings settings;
  private final List<Integer> sowings;
  private final ToDoubleFunction<SeasonOutcome> margin;

  GoalMeasure(Scenario scenario, SizingQuestion question, RunSettings settings)
      throws BadQuestionException {
    this.scenario = scenario;
    this.settings = settings;
    goal = question.goal();
    sowings = NamesInQuestions.sowings(scenario, question.match());
    margin = goal.measure() == Measure.MARGIN ? Accounts.marginOf(scenario) : o -> 0;
  }

  /**
   * The measure of one season.
   *
   * @param yearlyCost of the places, which is no part of a season's margin
   */
  double of(SeasonOutcome season, double yearlyCost) {
    return switch (goal.measure()) {
      case MET -> sowings.stream().allMatch(s -> SeasonTotals.isMet(scenario, season, s)) ? 1 : 0;
      case ON_TIME -> SeasonTotals.onTime(season, sowings.stream().mapToInt(s -> s));
      case ON_TIME_SHARE -> onTimeShare(season);
      case MARGIN -> margin.applyAsDouble(season) - yearlyCost;
    };
  }

  private double onTimeShare(SeasonOutcome season) {
    long needed = 0;
    long there = 0;
    for (int s : sowings) {
      int wanted = scenario.sowings().get(s).plantsNeeded();
      needed += wanted;
      there += Math.min(wanted, season.onTime(s));
    }
    return needed == 0 ? 1 : there / (double) needed;
  }

  /**
   * Limits of its mean; its numbers have ends that none can leave.
   *
   * @param all what was seen of all sizes: the ends of a margin
   */
  MeanLimits limits(double[] seen, double confidence, Supplier<List<double[]>> all) {
    return switch (goal.measure()) {
      case MET ->
          MeanLimits.ofChance(
              (int) Arrays.stream(seen).filter(met -> met > 0).count(), seen.length, confidence);
      case ON_TIME_SHARE -> MeanLimits.within(seen, strata(seen), 0, 1, confidence);
      case ON_TIME -> MeanLimits.within(seen, strata(seen), 0, cells(), confidence);
      case MARGIN -> {
        var any = BestSelection.any(all.get());
        yield MeanLimits.within(seen, strata(seen), any.getMin(), any.getMax(), confidence);
      }
    };
  }

  Strata strata(double[] seen) {
    return Strata.of(scenario, settings.seed(), seen.length);
  }

  private double cells() {
    return sowings.stream()
        .map(s -> scenario.sowings().get(s))
        .mapToDouble(s -> s.trays() * scenario.cropOf(s).cells())
        .sum();
  }
}
