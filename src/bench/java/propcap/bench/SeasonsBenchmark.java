package propcap.bench;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Threads;
import org.openjdk.jmh.annotations.Warmup;
import propcap.chance.Luck;
import propcap.chance.SeasonLuck;
import propcap.farm.Labour;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.files.FaultsException;
import propcap.files.ScenarioReader;
import propcap.season.House;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;

/** Seasons a second, on one thread and on two, of a plan as it is and of longer ones. */
@BenchmarkMode(Mode.Throughput)
@OutputTimeUnit(TimeUnit.SECONDS)
@Fork(value = 1, jvmArgsAppend = "-Xmx512m")
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 8, time = 2)
public class SeasonsBenchmark {
  /** A plan and its luck, shared by the threads as a forecast's are. */
  @State(Scope.Benchmark)
  public static class Plan {
    @Param({"1", "10", "100"})
    public int times;

    SeasonPlan plan;
    Luck luck;

    /** Reads the scenario that the system property {@code scenario} names. */
    @Setup
    public void read() throws FaultsException {
      Scenario scenario =
          repeated(ScenarioReader.read(Path.of(System.getProperty("scenario"))), times);
      plan = new SeasonPlan(scenario);
      luck = new Luck(scenario, 1);
    }
  }

  /** A thread's streams, and the next season's number. */
  @State(Scope.Thread)
  public static class Thread {
    Luck.Reader reader;
    int next;

    /** Starts at season 0. */
    @Setup
    public void start(Plan plan) {
      reader = plan.luck.reader();
    }
  }

  /** A season, luck and all. */
  @Benchmark
  public SeasonOutcome oneThread(Plan plan, Thread thread) {
    return House.season(plan.plan, thread.reader.season(thread.next++));
  }

  /** The same on two threads at once. */
  @Benchmark
  @Threads(2)
  public SeasonOutcome twoThreads(Plan plan, Thread thread) {
    return House.season(plan.plan, thread.reader.season(thread.next++));
  }

  /** A season's luck alone. */
  @Benchmark
  public SeasonLuck luckAlone(Plan plan, Thread thread) {
    return thread.reader.season(thread.next++);
  }

  /** So many times the sowings, in so many times the room. */
  static Scenario repeated(Scenario one, int times) {
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
