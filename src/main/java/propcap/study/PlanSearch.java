package propcap.study;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.SplittableRandom;
import java.util.function.DoubleConsumer;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;
import propcap.study.Choice.Setting;

/**
 * Looks for a better plan by small changes, each tried on the same springs as the plan that it
 * changes: simulated annealing (Kirkpatrick, Gelatt and Vecchi 1983, Science 220) in which a change
 * that is clearly worse on the first springs is not tried on the rest.
 */
final class PlanSearch {
  /** Springs after which a change may be given up; then all of them. */
  private static final int[] LOOKS = {16, 48};

  /** Standard errors by which a change must fall short to be given up. */
  private static final double CLEARLY = 1.5;

  /** What may be lost by one change at the start, as a share of what the plan is about. */
  private static final double WARMTH = 2e-4;

  /** What a change that is put back may have been worth, as a share of the same. */
  private static final double NO_GOOD = 1e-5;

  private final Scenario scenario;
  private final List<Choice> choices;
  private final Aims aims;
  private final Worth worth;
  private final TrialSprings springs;
  private final SeasonPlan like;
  private final SplittableRandom random;
  private final Proposals proposals;

  private int tries;

  /**
   * A search.
   *
   * @param ideas drafts whose settings are worth a try
   */
  PlanSearch(
      Scenario scenario,
      List<Choice> choices,
      Aims aims,
      Worth worth,
      TrialSprings springs,
      long seed,
      List<Draft> ideas) {
    this.scenario = scenario;
    this.choices = choices;
    this.aims = aims;
    this.worth = worth;
    this.springs = springs;
    this.random = new SplittableRandom(seed);
    this.like = new SeasonPlan(scenario);
    this.proposals = new Proposals(choices, ideas, random);
  }

  /**
   * The best draft found.
   *
   * @param startedFrom which of the starts it came from
   * @param isStopped whether it was interrupted before the budget was spent
   */
  record Found(Draft draft, double score, int tries, int startedFrom, boolean isStopped) {}

  /**
   * Searches from the best of some drafts until the budget is spent or the thread is interrupted.
   *
   * @throws InterruptedException if nothing had been tried yet
   */
  Found from(List<Draft> starts, Budget budget, DoubleConsumer progress)
      throws InterruptedException {
    Tried best = tried(starts.get(0));
    Tried current = best;
    int from = 0;
    try {
      for (int i = 1; i < starts.size(); i++) {
        Tried other = tried(starts.get(i));
        from = other.score() > best.score() ? i : from;
        best = other.score() > best.score() ? other : best;
      }
      current = best;
      double spent = budget.spent(tries);
      while (spent < 1) {
        double worse = -Math.log(random.nextDouble()) * WARMTH * (1 - spent) * worth.whole();
        current = changed(current, proposals.from(current.draft), worse);
        best = current.score() > best.score() ? current : best;
        progress.accept(spent);
        spent = budget.spent(tries);
      }
      best = withoutNeedless(best, Draft.asItIs(scenario, choices));
      return new Found(best.draft, best.score(), tries, from, false);
    } catch (InterruptedException e) {
      return new Found(best.draft, best.score(), tries, from, true);
    }
  }

  /** The plan with what does no good put back as it was: nobody likes to change for nothing. */
  private Tried withoutNeedless(Tried best, Draft asItIs) throws InterruptedException {
    Tried current = best;
    for (int s = 0; s < choices.size(); s++) {
      Setting was = asItIs.settings().get(s);
      Setting is = current.draft.settings().get(s);
      for (Setting back :
          List.of(
              was,
              new Setting(was.day(), is.trays(), was.place()),
              new Setting(is.day(), was.trays(), was.place()),
              new Setting(is.day(), is.trays(), was.place()),
              new Setting(is.day(), was.trays(), is.place()))) {
        Draft draft = current.draft.with(s, back);
        Tried next = changed(current, draft, NO_GOOD * worth.whole());
        if (next != current) {
          current = next;
          break;
        }
      }
    }
    return current;
  }

  // One plan on the springs.

  /** A spring of a plan. */
  private record Spring(double worth, BitSet met) {}

  private final class Tried {
    private final Draft draft;
    private final List<Spring> seasons = new ArrayList<>();
    private final int[] met = new int[choices.size()];
    private double sum;

    Tried(Draft draft) {
      this.draft = draft;
    }

    void add(List<Spring> more) {
      for (Spring spring : more) {
        seasons.add(spring);
        sum += spring.worth;
        spring.met.stream().forEach(s -> met[s]++);
      }
    }

    double share(int sowing) {
      return met[sowing] / (double) seasons.size();
    }

    double score() {
      double score = sum / seasons.size();
      for (int s = 0; s < met.length; s++) {
        score -= aims.missing(s, share(s));
      }
      return score;
    }
  }

  private Spring read(SeasonOutcome season) {
    BitSet met = new BitSet(choices.size());
    for (int s = 0; s < choices.size(); s++) {
      met.set(s, worth.isMet(season, s));
    }
    return new Spring(worth.of(season), met);
  }

  private Tried tried(Draft draft) throws InterruptedException {
    Tried tried = new Tried(draft);
    tried.add(springs.run(plan(draft), 0, springs.count(), this::read));
    tries++;
    return tried;
  }

  private SeasonPlan plan(Draft draft) {
    return new SeasonPlan(draft.sown(scenario, choices), like);
  }

  /** A change of a plan if it is no worse than by so much; else the plan as it is. */
  private Tried changed(Tried current, Draft draft, double worse) throws InterruptedException {
    // Counted first, or a farm that leaves nothing to choose would never spend its budget.
    tries++;
    if (draft.equals(current.draft)) {
      return current;
    }
    SeasonPlan plan = plan(draft);
    Tried next = new Tried(draft);
    for (int look : LOOKS) {
      if (look < springs.count()) {
        next.add(springs.run(plan, next.seasons.size(), look, this::read));
        if (isClearlyWorse(current, next, worse)) {
          return current;
        }
      }
    }
    next.add(springs.run(plan, next.seasons.size(), springs.count(), this::read));
    return next.score() > current.score() - worse ? next : current;
  }

  /** By the paired differences of the springs seen; a goal counts where either plan misses it. */
  private boolean isClearlyWorse(Tried current, Tried next, double worse) {
    BitSet counts = new BitSet();
    for (int s = 0; s < choices.size(); s++) {
      counts.set(s, aims.isBelow(s, current.share(s)) || aims.isBelow(s, next.share(s)));
    }
    int n = next.seasons.size();
    double sum = 0;
    double squares = 0;
    for (int i = 0; i < n; i++) {
      Spring was = current.seasons.get(i);
      Spring is = next.seasons.get(i);
      double difference =
          is.worth - was.worth + aims.weight() * (met(is, counts) - met(was, counts));
      sum += difference;
      squares += difference * difference;
    }
    double mean = sum / n;
    double error = Math.sqrt(Math.max(0, squares / n - mean * mean) / n);
    return mean + CLEARLY * error < -worse;
  }

  private static int met(Spring spring, BitSet counts) {
    BitSet met = (BitSet) spring.met.clone();
    met.and(counts);
    return met.cardinality();
  }
}
