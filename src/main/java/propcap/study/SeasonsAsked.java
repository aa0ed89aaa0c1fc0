package propcap.study;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import propcap.chance.Luck;
import propcap.chance.SeasonLuck;
import propcap.farm.Scenario;
import propcap.season.House;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;

/**
 * Of what seasons are asked: scenarios on the same luck.
 *
 * @param seed of all luck
 * @param withDiary whether each outcome has a diary
 * @param keepsLuck whether other scenarios will be asked about the same springs
 */
public record SeasonsAsked(
    List<Scenario> scenarios, long seed, boolean withDiary, boolean keepsLuck)
    implements Serializable {
  public SeasonsAsked {
    scenarios = List.copyOf(scenarios);
  }

  /** The same, worked out as far as it can be before a season's number is known. */
  public Ready ready() {
    return new Ready(this);
  }

  /** Plans and laws of luck, shared by all threads. Luck is drawn once for all that share it. */
  public static final class Ready {
    private final List<SeasonPlan> plans = new ArrayList<>();
    private final List<Luck> lucks = new ArrayList<>();

    /** For each scenario, which luck is its. */
    private final int[] luckOf;

    private final boolean withDiary;
    private final boolean keepsLuck;

    private Ready(SeasonsAsked asked) {
      withDiary = asked.withDiary;
      keepsLuck = asked.keepsLuck;
      luckOf = new int[asked.scenarios.size()];
      List<Scenario> lucky = new ArrayList<>();
      for (int i = 0; i < luckOf.length; i++) {
        Scenario scenario = asked.scenarios.get(i);
        plans.add(new SeasonPlan(scenario, plans.isEmpty() ? null : plans.get(0)));
        luckOf[i] =
            IntStream.range(0, lucky.size())
                .filter(l -> Luck.isShared(lucky.get(l), scenario))
                .findFirst()
                .orElse(lucky.size());
        if (luckOf[i] == lucky.size()) {
          lucky.add(scenario);
          lucks.add(plans.get(i).luck(asked.seed));
        }
      }
    }

    /** One that runs seasons, for one thread. */
    public Runner runner() {
      return new Runner(
          this, lucks.stream().map(l -> keepsLuck ? l.keepingReader() : l.reader()).toList());
    }
  }

  /** Runs seasons one after the other, in any order. For one thread at a time. */
  public static final class Runner {
    private final Ready ready;
    private final List<Luck.Reader> readers;

    private Runner(Ready ready, List<Luck.Reader> readers) {
      this.ready = ready;
      this.readers = readers;
    }

    /** What came of a season in some scenarios. */
    public List<SeasonOutcome> season(List<Integer> which, int number) {
      SeasonLuck[] drawn = new SeasonLuck[readers.size()];
      List<SeasonOutcome> outcomes = new ArrayList<>();
      for (int scenario : which) {
        int luck = ready.luckOf[scenario];
        if (drawn[luck] == null) {
          drawn[luck] = readers.get(luck).season(number);
        }
        SeasonPlan plan = ready.plans.get(scenario);
        outcomes.add(
            ready.withDiary
                ? House.seasonWithDiary(plan, drawn[luck])
                : House.season(plan, drawn[luck]));
      }
      return outcomes;
    }
  }
}
