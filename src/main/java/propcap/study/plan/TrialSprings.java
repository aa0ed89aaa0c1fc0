package propcap.study.plan;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.chance.Luck;
import propcap.chance.SeasonLuck;
import propcap.farm.Scenario;
import propcap.season.House;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;
import propcap.study.SharedWork;
import propcap.study.statistics.Strata;

/**
 * The springs on which a search tries its plans: their luck is drawn once, for as many trays as a
 * plan may have, and is the same for every plan. A spring always runs on the same thread, because
 * the luck of trays that are sown again is drawn as they come; which thread that is changes
 * nothing.
 */
final class TrialSprings implements AutoCloseable {
  /** So many trays' luck is kept at most, some 80 MB. */
  private static final int MOST_TRAYS = 400_000;

  private static final int FEWEST = 24;

  private final List<Luck.Reader> readers;
  private final @Nullable SeasonLuck[] drawn;
  private final Scenario widest;
  private final long seed;
  private final ExecutorService pool;

  /**
   * Springs for plans of a scenario.
   *
   * @param widest the scenario with the most trays that any sowing may have
   * @param wanted how many springs; fewer where their luck would not fit in memory
   */
  TrialSprings(Scenario widest, long seed, int threads, int wanted) {
    this.widest = widest;
    this.seed = seed;
    Luck luck = new SeasonPlan(widest).luck(seed);
    readers = IntStream.range(0, threads).mapToObj(t -> luck.reader()).toList();
    drawn = new SeasonLuck[Math.min(wanted, Math.max(FEWEST, MOST_TRAYS / widest.trays()))];
    pool = Executors.newFixedThreadPool(threads);
  }

  int count() {
    return drawn.length;
  }

  /** The weather years of all the springs. */
  Strata strata() {
    return Strata.of(widest, seed, count());
  }

  /** What is kept of some springs of a plan, in their order. */
  <T> List<T> run(SeasonPlan plan, int from, int to, Function<SeasonOutcome, T> reading)
      throws InterruptedException {
    return run(from, to, luck -> reading.apply(House.season(plan, luck)));
  }

  /** What is made of the luck of some springs, in their order. */
  <T> List<T> run(int from, int to, Function<SeasonLuck, T> making) throws InterruptedException {
    List<@Nullable T> kept = new ArrayList<>(Collections.nCopies(to - from, null));
    List<Callable<Void>> shares = new ArrayList<>();
    for (int t = 0; t < readers.size(); t++) {
      int thread = t;
      shares.add(
          () -> {
            for (int n = from; n < to; n++) {
              if (Thread.currentThread().isInterrupted()) {
                throw new InterruptedException();
              }
              if (n % readers.size() == thread) {
                kept.set(n - from, making.apply(luck(thread, n)));
              }
            }
            return null;
          });
    }
    SharedWork.run(pool, shares);
    return kept.stream().map(Objects::requireNonNull).toList();
  }

  private SeasonLuck luck(int thread, int n) {
    SeasonLuck luck = drawn[n];
    if (luck == null) {
      luck = readers.get(thread).season(n);
      drawn[n] = luck;
    }
    return luck;
  }

  @Override
  public void close() {
    pool.shutdownNow();
  }
}
