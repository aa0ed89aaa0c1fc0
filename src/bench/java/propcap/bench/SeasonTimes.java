package propcap.bench;

import com.sun.management.OperatingSystemMXBean;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import propcap.chance.Luck;
import propcap.farm.Labour;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;
import propcap.season.House;
import propcap.season.SeasonPlan;

/**
 * Processor time of a season on one thread, of a plan as it is and of longer ones, by turns: other
 * work on the machine takes from all of them alike. All threads count, those that collect garbage
 * and compile among them.
 */
final class SeasonTimes {
  private static final int WARMING = 2;
  private static final int ROUNDS = 9;

  /** Seasons of the plan in a round; of a plan ten times as long a tenth. */
  private static final int SEASONS = 1200;

  private static final OperatingSystemMXBean MACHINE =
      ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

  /** Something of each season's outcome: one that nobody reads might be left out. */
  private long read;

  /** A plan so many times as long. */
  private final class Plan {
    private final SeasonPlan plan;
    private final Luck.Reader reader;
    private final int seasons;
    private int next;

    Plan(Scenario one, int times) {
      Scenario scenario = repeated(one, times);
      plan = new SeasonPlan(scenario);
      reader = new Luck(scenario, 1).reader();
      seasons = SEASONS / times;
    }

    /** Milliseconds of processor time that a season takes. */
    double season() {
      long begun = MACHINE.getProcessCpuTime();
      for (int i = 0; i < seasons; i++) {
        read += House.season(plan, reader.season(next++)).onTime(0);
      }
      return (MACHINE.getProcessCpuTime() - begun) / 1e6 / seasons;
    }

    /** The same of its luck alone. */
    double luck() {
      long begun = MACHINE.getProcessCpuTime();
      for (int i = 0; i < seasons; i++) {
        read += reader.season(next++).weatherYear();
      }
      return (MACHINE.getProcessCpuTime() - begun) / 1e6 / seasons;
    }
  }

  /** Measures the scenario of a file and prints it. */
  static void tell(Path file) throws FaultsException {
    new SeasonTimes().measure(ScenarioReader.read(file));
  }

  private void measure(Scenario scenario) {
    Plan one = new Plan(scenario, 1);
    Plan ten = new Plan(scenario, 10);
    Plan hundred = new Plan(scenario, 100);
    double[][] all = new double[4][ROUNDS];
    for (int i = -WARMING; i < ROUNDS; i++) {
      double season = one.season();
      double[] round = {
        1000 / season, ten.season() / season, hundred.season() / season, one.luck() / season
      };
      for (int j = 0; j < round.length; j++) {
        all[j][Math.max(0, i)] = round[j];
      }
    }
    Targets.tellAtLeast("seasons a second of a core", told(all[0]), 2000, "");
    Targets.tell("season of a plan 10 times as long", told(all[1]), 10.3, "times");
    Targets.tell("season of a plan 100 times as long", told(all[2]), 110, "times");
    System.out.printf(Locale.ROOT, "share of a season that is luck: %.2f%n", told(all[3]));
    if (read <= 0) {
      throw new IllegalStateException("nothing came of any season");
    }
  }

  /** The median, after the quartiles are printed. */
  private static double told(double[] figures) {
    double[] sorted = figures.clone();
    Arrays.sort(sorted);
    System.out.printf(
        Locale.ROOT,
        "  median of %d rounds %.2f, quartiles %.2f and %.2f%n",
        sorted.length,
        sorted[sorted.length / 2],
        sorted[sorted.length / 4],
        sorted[sorted.length - 1 - sorted.length / 4]);
    return sorted[sorted.length / 2];
  }

  /** So many times the sowings, in so many times the room. */
  private static Scenario repeated(Scenario one, int times) {
    List<Sowing> sowings = new ArrayList<>();
    for (int i = 0; i < times; i++) {
      for (Sowing s : one.sowings()) {
        sowings.add(
            new Sowing(
                s.id() + "/" + i,
                s.crop(),
                s.lot(),
                s.sow(),
                s.trays(),
                s.plantsNeeded(),
                s.bedFrom(),
                s.bedBy(),
                s.bedUntil(),
                s.resowUntil(),
                null,
                Sowing.Leeway.NOT_SAID));
      }
    }
    List<Place> places = one.places().stream().map(p -> p.withSpaces(times * p.spaces())).toList();
    return new Scenario(
        one.name(),
        one.season(),
        one.frostAtC(),
        one.rounds(),
        places,
        one.crops(),
        sowings,
        one.weather(),
        null,
        Labour.NOT_LIMITED);
  }
}
