package propcap.study;

import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;

/**
 * How a scenario is run, as apart from what it is.
 *
 * @param seed of all luck: the same seed gives the same answer
 * @param seasons how many are run, or the most that are where a precision is asked for
 * @param precision stop when the 95 % half-width of total on-time plants is below this share of
 *     their mean; null: run all
 * @param threads of this machine that share the work; changes no digit of the answer
 * @param engine what simulates the seasons; changes no digit either
 */
public record RunSettings(
    long seed, int seasons, @Nullable Double precision, int threads, SeasonEngine engine) {
  public static final long DEFAULT_SEED = 1;
  public static final int DEFAULT_SEASONS = 1000;

  /** More springs than these tell nothing that a grower could use. */
  private static final int MOST_SEASONS = 1_000_000;

  /** More than any machine that a grower has. */
  private static final int MOST_THREADS = 256;

  /** On this machine's threads. */
  public RunSettings(long seed, int seasons, @Nullable Double precision, int threads) {
    this(seed, seasons, precision, threads, ThreadsEngine.HERE);
  }

  public RunSettings {
    if (seasons < 1 || seasons > MOST_SEASONS) {
      throw new IllegalArgumentException(
          "seasons must be from 1 to " + MOST_SEASONS + ", was " + seasons);
    }
    if (threads < 1 || threads > MOST_THREADS) {
      throw new IllegalArgumentException(
          "threads must be from 1 to " + MOST_THREADS + ", was " + threads);
    }
    if (precision != null && !(precision > 0 && precision < 1)) {
      throw new IllegalArgumentException(
          "precision must be a share between 0 and 1, was " + precision);
    }
  }

  /** These settings with as many seasons more as make every weather year come equally often. */
  public RunSettings inWholeBlocks(Scenario scenario) {
    return withSeasons(whole(seasons, scenario.weather().size()));
  }

  /** These settings, with an engine to simulate the seasons. */
  public RunSettings on(SeasonEngine newEngine) {
    return new RunSettings(seed, seasons, precision, threads, newEngine);
  }

  /** So many seasons of another seed, all of which are run. */
  public RunSettings ofSeed(long newSeed, int newSeasons) {
    return new RunSettings(newSeed, newSeasons, null, threads, engine);
  }

  public RunSettings withSeasons(int newSeasons) {
    return new RunSettings(seed, newSeasons, precision, threads, engine);
  }

  /** So many seasons, rounded up to whole blocks. */
  public static int whole(int seasons, int block) {
    int whole = (seasons + block - 1) / block * block;
    return whole > MOST_SEASONS ? seasons : whole;
  }

  /**
   * Checks that there are seasons enough to give a difference its error.
   *
   * @throws BadQuestionException for a single season
   */
  public void forDifferences() throws BadQuestionException {
    if (seasons < 2) {
      throw new BadQuestionException(
          "from one spring no error can be worked out, and without it nothing can be decided; say"
              + " --seasons 2 or more, better "
              + DEFAULT_SEASONS);
    }
  }
}
