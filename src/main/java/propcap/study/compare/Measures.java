package propcap.study.compare;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import propcap.farm.Loss;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.season.SeasonOutcome;
import propcap.study.SeasonTotals;
import propcap.study.compare.Comparison.Kind;
import propcap.study.forecast.Safety;
import propcap.study.money.Accounts;

/** What is read of each season when scenarios are compared: the same numbers for all of them. */
public final class Measures {
  /** One number of a season, and what it is. */
  public record Measure(Kind kind, String subject, boolean moreIsBetter) {}

  private final List<Measure> measures = new ArrayList<>();
  private final List<List<ToDoubleFunction<SeasonOutcome>>> readings = new ArrayList<>();

  /** Whole numbers of so many bits and more are exact. */
  private static final int BITS = 50;

  private final Set<Kind> kinds;
  private final List<Scenario> scenarios;

  public Measures(List<Scenario> scenarios) {
    this(scenarios, EnumSet.allOf(Kind.class));
  }

  /** Those of some kinds alone: each number takes its room in memory a hundred thousand times. */
  public Measures(List<Scenario> scenarios, Set<Kind> kinds) {
    this.kinds = kinds;
    this.scenarios = scenarios;
    scenarios.forEach(s -> readings.add(new ArrayList<>()));
    add(Kind.ON_TIME, "", true, s -> SeasonTotals::onTime);
    Set<String> crops = new LinkedHashSet<>();
    scenarios.forEach(s -> s.sowings().forEach(sowing -> crops.add(sowing.crop())));
    for (String crop : crops) {
      add(Kind.ON_TIME_OF_CROP, crop, true, s -> o -> SeasonTotals.onTime(o, ofCrop(s, crop)));
    }
    add(Kind.LATE, "", false, s -> SeasonTotals::late);
    add(Kind.SOWINGS_MET, "", true, s -> o -> SeasonTotals.met(s, o));
    add(Kind.WAITING, "", false, s -> SeasonTotals::waited);
    for (RoomWait step : RoomWait.values()) {
      add(Kind.WAITING, step.word(), false, s -> o -> SeasonTotals.waited(o, step));
    }
    for (Loss cause : Loss.values()) {
      add(Kind.LOST, cause.word(), false, s -> o -> SeasonTotals.lost(o, cause));
    }
    if (scenarios.stream().allMatch(s -> s.prices() != null)) {
      add(Kind.MARGIN, "", true, Accounts::marginOf);
    }
  }

  private void add(
      Kind kind,
      String subject,
      boolean moreIsBetter,
      Function<Scenario, ToDoubleFunction<SeasonOutcome>> reading) {
    if (!kinds.contains(kind)) {
      return;
    }
    measures.add(new Measure(kind, subject, moreIsBetter));
    for (int i = 0; i < scenarios.size(); i++) {
      readings.get(i).add(reading.apply(scenarios.get(i)));
    }
  }

  public List<Measure> all() {
    return measures;
  }

  public int indexOf(Kind kind, String subject) {
    return IntStream.range(0, measures.size())
        .filter(m -> measures.get(m).kind() == kind && measures.get(m).subject().equals(subject))
        .findFirst()
        .orElse(-1);
  }

  /** Every number of one season of a scenario, then of which sowings the plants were on time. */
  public double[] of(int scenario, SeasonOutcome season) {
    return DoubleStream.concat(
            readings.get(scenario).stream().mapToDouble(r -> r.applyAsDouble(season)),
            kinds.contains(Kind.SOWINGS_MET) ? met(scenario, season) : DoubleStream.empty())
        .toArray();
  }

  /** A bit a sowing, fifty to a number, for they are kept a hundred thousand times. */
  private DoubleStream met(int scenario, SeasonOutcome season) {
    double[] bits = new double[(season.sowings() + BITS - 1) / BITS];
    IntStream.range(0, season.sowings())
        .filter(s -> SeasonTotals.isMet(scenarios.get(scenario), season, s))
        .forEach(s -> bits[s / BITS] += 1L << s % BITS);
    return Arrays.stream(bits);
  }

  /** Share of the seasons in which a sowing's plants were on time, where such numbers are kept. */
  private double chance(List<double[]> seasons, int sowing) {
    return seasons.stream()
            .mapToLong(s -> ((long) s[measures.size() + sowing / BITS] >> sowing % BITS) & 1)
            .sum()
        / (double) seasons.size();
  }

  /** How many sowings of a scenario are safe in such seasons of it. */
  public int safe(Scenario scenario, List<double[]> seasons) {
    return Safety.count(scenario.sowings(), s -> chance(seasons, s));
  }

  private static IntStream ofCrop(Scenario scenario, String crop) {
    List<Sowing> sowings = scenario.sowings();
    return IntStream.range(0, sowings.size()).filter(s -> sowings.get(s).crop().equals(crop));
  }
}
