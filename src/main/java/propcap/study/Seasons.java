package propcap.study;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.DoubleConsumer;
import java.util.function.Function;
import java.util.function.IntConsumer;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.season.Diary;
import propcap.season.SeasonOutcome;

/**
 * The one gate through which numbered seasons of one or more scenarios are run, on the same luck.
 * What runs them is the settings' engine. Which engine, and what of it runs which season, changes
 * nothing: a season's luck hangs on its number alone, and what is kept is put in that order here.
 */
public final class Seasons implements AutoCloseable {
  private final SeasonEngine.Opened engine;
  private final int scenarios;

  public Seasons(List<Scenario> scenarios, RunSettings settings) {
    this(settings, new SeasonsAsked(scenarios, settings.seed(), false, false));
  }

  private Seasons(RunSettings settings, SeasonsAsked asked) {
    engine = settings.engine().open(asked, settings.threads());
    scenarios = asked.scenarios().size();
  }

  /** Seasons that each have a diary in their outcome. */
  public static Seasons withDiaries(List<Scenario> scenarios, RunSettings settings) {
    return new Seasons(settings, new SeasonsAsked(scenarios, settings.seed(), true, false));
  }

  /** Seasons of one of many scenarios that are tried on the same few springs. */
  public static Seasons ofOneOfMany(Scenario scenario, RunSettings settings) {
    return new Seasons(settings, new SeasonsAsked(List.of(scenario), settings.seed(), false, true));
  }

  /** What is kept of a season's outcome. */
  @FunctionalInterface
  public interface Reading<T> {
    T of(int scenario, SeasonOutcome outcome);
  }

  /**
   * Runs so many seasons of all scenarios, from the first on.
   *
   * @param progress told, from any thread, the share done, 0 to 1
   */
  public <T> List<List<T>> run(int seasons, Reading<T> reading, DoubleConsumer progress)
      throws InterruptedException {
    return run(
        IntStream.range(0, scenarios).boxed().toList(),
        0,
        seasons,
        reading,
        done -> progress.accept(done / (double) seasons));
  }

  /** Runs seasons of the only scenario, or the first; what was kept, in the seasons' order. */
  public <T> List<T> run(int from, int to, Function<SeasonOutcome, T> reading, IntConsumer done)
      throws InterruptedException {
    return run(List.of(0), from, to, (scenario, outcome) -> reading.apply(outcome), done).get(0);
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
   * @throws IllegalStateException where the engine did not give each season once
   */
  public <T> List<List<T>> run(
      List<Integer> which, int from, int to, Reading<T> reading, IntConsumer done)
      throws InterruptedException {
    List<List<T>> kept = new ArrayList<>(Collections.nCopies(to - from, List.of()));
    AtomicInteger finished = new AtomicInteger();
    engine.run(
        which,
        from,
        to,
        (number, outcomes) -> {
          List<T> season =
              IntStream.range(0, which.size())
                  .mapToObj(i -> reading.of(which.get(i), outcomes.get(i)))
                  .toList();
          if (number == from) {
            TooLargeException.check(to - from, bytes(season));
          }
          if (!kept.set(number - from, season).isEmpty()) {
            throw new IllegalStateException("season " + number + " came twice");
          }
          done.accept(finished.incrementAndGet());
        });
    if (finished.get() != to - from) {
      throw new IllegalStateException(finished.get() + " seasons came of " + (to - from));
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

  @Override
  public void close() {
    engine.close();
  }
}
