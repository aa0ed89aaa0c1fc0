package propcap.study.sweep;

import java.io.IOException;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleConsumer;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Variants;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.TooLargeException;
import propcap.study.compare.Comparing;
import propcap.study.money.PlaceChanges;
import propcap.study.statistics.Difference;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Stat;
import propcap.study.statistics.Strata;

/**
 * What comes of each of many scenarios? All on the same seasons, one scenario after another; what
 * is finished is handed out to be kept, and what was kept is not run again.
 */
public final class Sweeping {

  /** So many outcomes are in memory at a time. */
  private static final int BATCH = 100;

  private final Variants variants;
  private final List<Scenario> scenarios;
  private final RunSettings settings;
  private final List<String> keys;
  private final Map<String, SweptSeasons> finished = new HashMap<>();

  /** Keeps the finished numbers of a scenario. */
  @FunctionalInterface
  public interface Keeping {
    void keep(String key, String numbers) throws IOException;
  }

  /**
   * A sweep that is to be run.
   *
   * @param version of the program: another one's numbers are not taken for its own
   * @param kept the numbers that were kept under a key; empty where there are none
   * @throws BadQuestionException where there is nothing to compare, or money is in more than one
   *     currency
   * @throws TooLargeException where so many seasons of all of them do not fit in memory
   */
  public Sweeping(
      Variants variants,
      RunSettings settings,
      String version,
      Function<String, Optional<String>> kept)
      throws BadQuestionException {
    if (variants.all().size() < 2) {
      throw new BadQuestionException("a sweep needs two scenarios or more");
    }
    this.variants = variants;
    this.scenarios = variants.scenarios();
    this.settings = settings;
    Comparing.checkCurrencies(scenarios);
    settings.forDifferences();
    TooLargeException.check(settings.seasons(), (long) SweptSeasons.BYTES * scenarios.size());
    keys = scenarios.stream().map(s -> RunKey.of(s, settings, version)).toList();
    for (int i = 0; i < keys.size(); i++) {
      Scenario scenario = scenarios.get(i);
      Optional<SweptSeasons> before =
          kept.apply(keys.get(i))
              .flatMap(text -> SweptSeasons.of(text, scenario, settings.seasons()));
      if (before.isPresent()) {
        finished.put(keys.get(i), before.get());
      }
    }
  }

  /** Under what the numbers of its scenarios are kept. */
  public Set<String> keys() {
    return new LinkedHashSet<>(keys);
  }

  /** How many scenarios it has. */
  public int size() {
    return keys.size();
  }

  /** How many of them are finished. */
  public int finished() {
    return (int) keys.stream().filter(finished::containsKey).count();
  }

  /**
   * Runs what is not finished.
   *
   * @param progress told, from any thread, the share done, 0 to 1
   * @throws InterruptedException where it was stopped; what is finished has been kept
   */
  public Sweep sweep(Keeping keeping, DoubleConsumer progress)
      throws IOException, InterruptedException {
    for (int i = 0; i < keys.size(); i++) {
      if (!finished.containsKey(keys.get(i))) {
        double before = finished();
        SweptSeasons seasons =
            run(scenarios.get(i), share -> progress.accept((before + share) / keys.size()));
        keeping.keep(keys.get(i), seasons.text());
        finished.put(keys.get(i), seasons);
      }
    }
    return answer();
  }

  private SweptSeasons run(Scenario scenario, DoubleConsumer progress) throws InterruptedException {
    int n = settings.seasons();
    SweptSeasons swept = SweptSeasons.none(scenario, n);
    try (Seasons seasons = new Seasons(List.of(scenario), settings)) {
      for (int batch = 0; batch < n; batch += BATCH) {
        int from = batch;
        swept.add(
            from,
            seasons.run(
                from,
                Math.min(n, from + BATCH),
                SweptSeasons.reading(scenario),
                done -> progress.accept((from + done) / (double) n)));
      }
    }
    return swept;
  }

  private Sweep answer() {
    boolean byMargin = scenarios.stream().allMatch(s -> s.prices() != null);
    List<Integer> ranking =
        IntStream.range(0, keys.size())
            .boxed()
            .sorted(Comparator.comparingDouble(i -> -Samples.mean(deciding(i, byMargin))))
            .toList();
    int best = ranking.get(0);
    return new Sweep(
        variants.columns(),
        IntStream.range(0, keys.size()).mapToObj(this::swept).toList(),
        settings,
        MeanLimits.CONFIDENCE,
        byMargin,
        ranking,
        ranking.stream()
            .filter(i -> i != best)
            .filter(i -> !difference(deciding(best, byMargin), deciding(i, byMargin)).isClear())
            .toList(),
        scenarios.stream().anyMatch(s -> !PlaceChanges.between(scenarios.get(0), s).isEmpty()));
  }

  private SweptSeasons seasons(int i) {
    SweptSeasons seasons = finished.get(keys.get(i));
    if (seasons == null) {
      throw new IllegalStateException(scenarios.get(i).name() + " has not been run");
    }
    return seasons;
  }

  private double[] deciding(int i, boolean byMargin) {
    return byMargin ? seasons(i).margin() : seasons(i).onTime();
  }

  private Sweep.Swept swept(int i) {
    Scenario scenario = scenarios.get(i);
    SweptSeasons seasons = seasons(i);
    Strata own = Strata.of(scenario, settings.seed(), settings.seasons());
    int fullest =
        IntStream.range(0, scenario.places().size())
            .boxed()
            .max(
                Comparator.<Integer>comparingDouble(seasons::fullDays)
                    .thenComparing(Comparator.reverseOrder()))
            .orElseThrow();
    double fullDays = seasons.fullDays(fullest);
    boolean hasMoney = scenario.prices() != null;
    boolean bothHaveMoney = hasMoney && scenarios.get(0).prices() != null;
    return new Sweep.Swept(
        variants.all().get(i),
        Stat.of(seasons.onTime(), own),
        Stat.of(seasons.late(), own),
        Stat.of(seasons.met(), own),
        seasons.safe(scenario.sowings()),
        fullDays > 0 ? scenario.places().get(fullest).name() : "",
        fullDays,
        hasMoney ? Stat.of(seasons.margin(), own) : null,
        toFirst(i, true, SweptSeasons::onTime),
        toFirst(i, bothHaveMoney, SweptSeasons::margin));
  }

  private @Nullable Difference toFirst(
      int i, boolean isTold, Function<SweptSeasons, double[]> number) {
    return i == 0 || !isTold
        ? null
        : difference(number.apply(seasons(0)), number.apply(seasons(i)));
  }

  private Difference difference(double[] from, double[] to) {
    return Paired.difference(
        from, to, Strata.of(scenarios, settings.seed(), settings.seasons()), true, keys.size() - 1);
  }
}
