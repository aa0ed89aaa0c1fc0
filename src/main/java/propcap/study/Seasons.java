package propcap.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import propcap.chance.Luck;
import propcap.chance.SeasonLuck;
import propcap.farm.Scenario;
import propcap.season.Diary;
import propcap.season.House;
import propcap.season.SeasonOutcome;
import propcap.season.SeasonPlan;

/**
 * Runs numbered seasons of one or more scenarios on the same luck, on several threads. Which thread
 * runs which season changes nothing, for a season's luck hangs on its number alone. Luck is drawn
 * once for all scenarios that share it.
 */
final class Seasons implements AutoCloseable {
  private final List<SeasonPlan> plans = new ArrayList<>();
  private final List<Luck> lucks = new ArrayList<>();

  /** For each scenario, which luck is its. */
  private final int[] luckOf;

  private final List<List<Luck.Reader>> readersOfThreads;
  private final ExecutorService pool;
  private final boolean withDiary;

  Seasons(List<Scenario> scenarios, long seed, int threads) {
    this(scenarios, seed, threads, false);
  }

  private Seasons(List<Scenario> scenarios, long seed, int threads, boolean withDiary) {
    this.withDiary = withDiary;
    luckOf = new int[scenarios.size()];
    List<Scenario> lucky = new ArrayList<>();
    for (int i = 0; i < luckOf.length; i++) {
      Scenario scenario = scenarios.get(i);
      plans.add(new SeasonPlan(scenario, plans.isEmpty() ? null : plans.get(0)));
      luckOf[i] =
          IntStream.range(0, lucky.size())
              .filter(l -> Luck.isShared(lucky.get(l), scenario))
              .findFirst()
              .orElse(lucky.size());
      if (luckOf[i] == lucky.size()) {
        lucky.add(scenario);
        lucks.add(new Luck(scenario, seed));
      }
    }
    readersOfThreads =
        IntStream.range(0, threads)
            .mapToObj(t -> lucks.stream().map(Luck::reader).toList())
            .toList();
    pool = Executors.newFixedThreadPool(threads);
  }

  /** Seasons that each have a diary in their outcome. */
  static Seasons withDiaries(List<Scenario> scenarios, RunSettings settings) {
    return new Seasons(scenarios, settings.seed(), settings.threads(), true);
  }

  /** What is kept of a season's outcome. */
  @FunctionalInterface
  interface Reading<T> {
    T of(int scenario, SeasonOutcome outcome);
  }

  /**
   * Runs seasons.
   *
   * @param which scenarios, by number
   * @param from number of the first season
   * @param to number after the last
   * @param reading called from any thread
   * @param done told, from any thread, how many of these seasons have been run
   * @return for each of those scenarios what was kept, in the seasons' order
   * @throws TooLargeException where what is kept of the first season, times their number, does not
   *     fit in memory
   */
  <T> List<List<T>> run(List<Integer> which, int from, int to, Reading<T> reading, IntConsumer done)
      throws InterruptedException {
    List<List<T>> kept = new ArrayList<>(Collections.nCopies(to - from, List.of()));
    AtomicInteger next = new AtomicInteger(from);
    AtomicInteger finished = new AtomicInteger();
    List<Callable<Void>> shares = new ArrayList<>();
    for (List<Luck.Reader> readers : readersOfThreads) {
      shares.add(
          () -> {
            try {
              for (int n = next.getAndIncrement(); n < to; n = next.getAndIncrement()) {
                if (Thread.currentThread().isInterrupted()) {
                  throw new InterruptedException();
                }
                List<T> season = season(readers, which, n, reading);
                if (n == from) {
                  TooLargeException.check(to - from, bytes(season));
                }
                kept.set(n - from, season);
                done.accept(finished.incrementAndGet());
              }
              return null;
            } finally {
              // Where one thread has failed, the others have nothing left to do.
              next.set(to);
            }
          });
    }
    for (Future<Void> share : pool.invokeAll(shares)) {
      try {
        share.get();
      } catch (ExecutionException e) {
        if (e.getCause() instanceof TooLargeException tooLarge) {
          throw tooLarge;
        }
        if (e.getCause() instanceof OutOfMemoryError) {
          throw TooLargeException.outOfMemory();
        }
        throw new IllegalStateException("a season failed", e.getCause());
      }
    }
    return IntStream.range(0, which.size())
        .mapToObj(i -> kept.stream().map(season -> season.get(i)).toList())
        .toList();
  }

  /** What is kept of a season in all scenarios, in bytes, with the objects' own. */
  private static long bytes(List<?> kept) {
    long bytes = 64;
    for (Object one : kept) {
      if (one instanceof SeasonOutcome outcome) {
        bytes += outcome.bytes();
      } else if (one instanceof Diary diary) {
        bytes += diary.bytes();
      } else if (one instanceof double[] numbers) {
        bytes += 32 + 8L * numbers.length;
      } else if (one instanceof double[][] rows) {
        bytes += 32 + Arrays.stream(rows).mapToLong(row -> 32 + 8L * row.length).sum();
      } else {
        bytes += 64;
      }
    }
    return bytes;
  }

  private <T> List<T> season(
      List<Luck.Reader> readers, List<Integer> which, int number, Reading<T> reading) {
    SeasonLuck[] drawn = new SeasonLuck[lucks.size()];
    List<T> kept = new ArrayList<>();
    for (int scenario : which) {
      int luck = luckOf[scenario];
      if (drawn[luck] == null) {
        drawn[luck] = readers.get(luck).season(number);
      }
      SeasonPlan plan = plans.get(scenario);
      kept.add(
          reading.of(
              scenario,
              withDiary
                  ? House.seasonWithDiary(plan, drawn[luck])
                  : House.season(plan, drawn[luck])));
    }
    return kept;
  }

  @Override
  public void close() {
    pool.shutdownNow();
  }
}
