package propcap.study.plan;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import propcap.chance.Luck;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;
import propcap.farm.WorkKind;
import propcap.season.House;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;
import propcap.study.BadQuestionException;
import propcap.study.money.Accounts;

/** Plans that are made by chance, and what is true of each of them. */
final class PlansByForce {
  private static final PlanningQuestion QUESTION = new PlanningQuestion(0.9, 14, 14, 2, List.of());

  private PlansByForce() {}

  /** Any plan that may be chosen. */
  static TrialPlan any(List<Choice> choices, SplittableRandom random) {
    return new TrialPlan(
        choices.stream()
            .map(
                c ->
                    new Choice.Setting(
                        c.days().get(random.nextInt(c.days().size())),
                        1 + random.nextInt(c.mostTrays()),
                        random.nextInt(c.places().size())))
            .toList());
  }

  static List<PlanUpperBound.Spring> atBest(
      Scenario farm, List<Choice> choices, PlanUpperBound bounding, int springs) {
    Luck.Reader reader = new Luck(Choice.widest(farm, choices), 3).reader();
    return IntStream.range(0, springs).mapToObj(n -> bounding.spring(reader.season(n))).toList();
  }

  /** What a plan with these trays does not pass in a spring. */
  private static double ofItsTrays(
      PlanUpperBound bounding, PlanUpperBound.Spring spring, List<Sowing> sowings) {
    return bounding.unpaid
        + IntStream.range(0, sowings.size())
            .mapToDouble(s -> spring.worth()[s][sowings.get(s).trays()])
            .sum();
  }

  /**
   * How often a plan of a farm with money brings more in a spring than its trays at their best, and
   * the cost of those that were not sown; and how often plans do in the mean.
   *
   * @param less by how much the bound is lowered
   */
  static long above(Scenario farm, SplittableRandom random, int plans, int springs, double less) {
    try {
      List<Choice> choices = Choice.of(farm, QUESTION);
      PlanUpperBound bounding = new PlanUpperBound(farm, choices);
      List<PlanUpperBound.Spring> best = atBest(farm, choices, bounding, springs);
      double[] most = bounding.most(best);
      Luck.Reader reader = new Luck(Choice.widest(farm, choices), 3).reader();
      long above = 0;
      for (int p = 0; p < plans; p++) {
        Scenario sown = any(choices, random).sown(farm, choices);
        SeasonPlan plan = new SeasonPlan(sown);
        double sum = -less * springs;
        for (int n = 0; n < springs; n++) {
          SeasonOutcome season = House.season(plan, reader.season(n));
          double brings = allSown(sown, season);
          sum += most[n] - brings;
          double ofItsTrays = ofItsTrays(bounding, best.get(n), sown.sowings());
          above += brings > ofItsTrays - less + 1e-6 ? 1 : 0;
        }
        above += sum < -1e-6 ? 1 : 0;
      }
      return above;
    } catch (BadQuestionException e) {
      // A farm whose sowings have no day: nothing to be tried.
      return 0;
    }
  }

  /** Its margin less the cost of the trays that were to be sown and were not. */
  static double allSown(Scenario sown, SeasonOutcome season) {
    Prices prices = sown.prices();
    if (prices == null) {
      throw new IllegalArgumentException("no money");
    }
    double hour = prices.hour().doubleValue();
    double sow = sown.labour().minutes().hours(WorkKind.SOW, 1);
    double unsown =
        IntStream.range(0, season.sowings())
            .mapToDouble(
                s ->
                    Math.max(0, sown.sowings().get(s).trays() - season.trays(s, TrayMove.SOWN))
                        * (prices.trayOf(sown.sowings().get(s).crop()).doubleValue() + hour * sow))
            .sum();
    return Accounts.margin(sown, prices, season).doubleValue() - unsown;
  }
}
