package propcap.study;

import java.util.List;
import java.util.ServiceLoader;
import propcap.season.SeasonOutcome;

/**
 * What simulates numbered seasons: this machine's threads, or a cluster. A season is a function of
 * its number, so which engine runs it, where and when, changes no digit. Questions do not ask it
 * themselves: {@link Seasons} does, and puts what comes back in the seasons' order.
 */
public interface SeasonEngine extends AutoCloseable {
  /** The threads of this machine. */
  static SeasonEngine ofThisMachine() {
    return ThreadsEngine.HERE;
  }

  /**
   * An engine elsewhere, by the first jar that knows one.
   *
   * @param address such as spark://10.0.0.5:7077
   * @throws EngineException where no jar does, or nothing there takes work; its message says what
   *     to do
   */
  static SeasonEngine at(String address) throws InterruptedException {
    Provider provider =
        ServiceLoader.load(Provider.class, SeasonEngine.class.getClassLoader())
            .findFirst()
            .orElseThrow(
                () ->
                    new EngineException(
                        "--on "
                            + address
                            + ": this program was built without Spark. Build the one with it by mvn"
                            + " -B -Pspark -DskipTests package, and start it as docs/cluster.md"
                            + " says"));
    return provider.at(address);
  }

  /**
   * Makes ready to run seasons of some scenarios.
   *
   * @param threads of this machine that an engine on it uses
   * @throws EngineException where the engine can't take the work; its message says why
   */
  Opened open(SeasonsAsked asked, int threads);

  @Override
  void close();

  /** An engine that is ready to run what was asked. */
  interface Opened extends AutoCloseable {
    /**
     * Runs seasons, each once.
     *
     * @param which scenarios, by number
     * @param from number of the first season
     * @param to number after the last
     * @param taking given each season as it comes, in any order
     * @throws InterruptedException if the thread is interrupted; the work is then called off
     * @throws EngineException where the engine gave up; its message says why
     */
    void run(List<Integer> which, int from, int to, Taking taking) throws InterruptedException;

    @Override
    void close();
  }

  /** Takes a season in each of the scenarios that were asked for; called from any thread. */
  @FunctionalInterface
  interface Taking {
    void take(int number, List<SeasonOutcome> outcomes);
  }

  /** What finds an engine elsewhere, where its jar is there. */
  interface Provider {
    /**
     * Reaches an engine.
     *
     * @param address such as spark://10.0.0.5:7077
     * @throws EngineException where nothing there takes work; its message says why
     */
    SeasonEngine at(String address) throws InterruptedException;
  }
}
