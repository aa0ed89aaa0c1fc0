package propcap.study.plan;

import java.util.List;
import java.util.SplittableRandom;
import propcap.study.plan.Choice.Setting;

/** The small changes of a plan that a search tries, drawn at random. */
final class Proposals {
  private final List<Choice> choices;
  private final List<TrialPlan> ideas;
  private final SplittableRandom random;

  /**
   * Changes of plans.
   *
   * @param ideas plans whose settings are worth a try
   */
  Proposals(List<Choice> choices, List<TrialPlan> ideas, SplittableRandom random) {
    this.choices = choices;
    this.ideas = ideas;
    this.random = random;
  }

  /**
   * The plan with one sowing changed, or two.
   *
   * @param wanting the sowings that could do better, which are changed the most
   */
  TrialPlan from(TrialPlan trialPlan, List<Integer> wanting) {
    TrialPlan changed = trialPlan;
    int changes = random.nextInt(10) < 7 ? 1 : 2;
    for (int i = 0; i < changes; i++) {
      int s =
          !wanting.isEmpty() && random.nextInt(10) < 6
              ? wanting.get(random.nextInt(wanting.size()))
              : random.nextInt(choices.size());
      changed = changed.with(s, another(s, changed.settings().get(s)));
    }
    return changed;
  }

  private Setting another(int s, Setting now) {
    Choice choice = choices.get(s);
    int kind = random.nextInt(100);
    if (kind < 35) {
      return now.onDay(otherDay(choice, now.day()));
    }
    if (kind < 63) {
      return now.withTrays(otherTrays(choice, now.trays()));
    }
    if (kind < 71) {
      return now.onDay(otherDay(choice, now.day())).withTrays(otherTrays(choice, now.trays()));
    }
    if (kind < 75) {
      return now.in(random.nextInt(choice.places().size()));
    }
    return ideas.get(random.nextInt(ideas.size())).settings().get(s);
  }

  /** Mostly near, now and then far. */
  private int otherDay(Choice choice, int day) {
    int nth = choice.days().indexOf(day) + step(choice.days().size());
    return choice.days().get(Math.max(0, Math.min(choice.days().size() - 1, nth)));
  }

  private int otherTrays(Choice choice, int trays) {
    return Math.max(1, Math.min(choice.mostTrays(), trays + step(choice.mostTrays())));
  }

  private int step(int among) {
    int longest = Math.max(1, random.nextInt(3) == 0 ? among / 2 : among / 8);
    int size = 1 + random.nextInt(longest);
    return random.nextBoolean() ? size : -size;
  }
}
