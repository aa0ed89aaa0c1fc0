package propcap.study;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import propcap.chance.Luck;
import propcap.chance.SeasonLuck;
import propcap.farm.Scenario;
import propcap.season.House;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;

/**
 * Runs numbered seasons of a scenario on several threads. Which thread runs which season changes
 * nothing, for a season's luck hangs on its number alone.
 */
final class Seasons implements AutoCloseable {
  private final SeasonPlan plan;
  private final Luck luck;
  private final List<Luck.Reader> readers = new ArrayList<>();
  private final ExecutorService pool;

  Seasons(Scenario scenario, long seed, int threads) {
    plan = new SeasonPlan(scenario);
    luck = new Luck(scenario, seed);
    for (int i = 0; i < threads; i++) {
      readers.add(luck.reader());
    }
    pool = Executors.newFixedThreadPool(threads);
  }

  /**
   * The outcomes of seasons, in order.
   *
   * @param from number of the first
   * @param to number after the last
   * @param done told, from any thread, how many of these have been run
   */
  List<SeasonOutcome> run(int from, int to, IntConsumer done) throws InterruptedException {
    SeasonOutcome[] outcomes = new SeasonOutcome[to - from];
    AtomicInteger next = new AtomicInteger(from);
    AtomicInteger finished = new AtomicInteger();
    List<Callable<Void>> shares = new ArrayList<>();
    for (Luck.Reader reader : readers) {
      shares.add(
          () -> {
            for (int n = next.getAndIncrement(); n < to; n = next.getAndIncrement()) {
              if (Thread.currentThread().isInterrupted()) {
                throw new InterruptedException();
              }
              SeasonLuck drawn = reader.season(n);
              outcomes[n - from] = House.season(plan, drawn);
              done.accept(finished.incrementAndGet());
            }
            return null;
          });
    }
    for (Future<Void> share : pool.invokeAll(shares)) {
      try {
        share.get();
      } catch (ExecutionException e) {
        throw new IllegalStateException("a season failed", e.getCause());
      }
    }
    return List.of(outcomes);
  }

  @Override
  public void close() {
    pool.shutdownNow();
  }
}
