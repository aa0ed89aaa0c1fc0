package propcap.study.bottleneck;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Prices;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.study.Capacity;
import propcap.study.RunSettings;
import propcap.study.Seasons;
import propcap.study.compare.Comparison;
import propcap.study.compare.Measures;
import propcap.study.money.Investing;
import propcap.study.money.Investment;
import propcap.study.money.Investment.Pays;
import propcap.study.money.PlaceChanges;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Paired;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Stat;
import propcap.study.statistics.Strata;

/**
 * A scenario, and every place of it a tenth larger, one at a time; as things were at the start, a
 * tenth smaller too.
 */
final class TenthChanges {
  private static final Set<Comparison.Kind> TOLD =
      EnumSet.of(
          Comparison.Kind.ON_TIME,
          Comparison.Kind.SOWINGS_MET,
          Comparison.Kind.WAITING,
          Comparison.Kind.MARGIN);

  private final Scenario start;
  private final Scenario current;
  private final RunSettings settings;
  private final int intervals;
  private final List<Scenario> scenarios = new ArrayList<>();
  private final List<Capacity> open;
  private final int asThingsWere;
  private final Measures measures;
  private final Strata strata;
  private List<List<double[]>> numbers = List.of();

  /** In order: as it is, more of each open place; then fewer of each, or as things were. */
  TenthChanges(Scenario start, Scenario current, RunSettings settings, int intervals) {
    this.start = start;
    this.current = current;
    this.settings = settings;
    this.intervals = intervals;
    open = Capacity.allOf(current);
    scenarios.add(current);
    open.forEach(place -> scenarios.add(with(place, tenth(place))));
    if (current.equals(start)) {
      open.forEach(place -> scenarios.add(with(place, -tenthLess(place))));
      asThingsWere = 0;
    } else {
      asThingsWere = scenarios.size();
      scenarios.add(start);
    }
    measures = new Measures(scenarios, TOLD);
    strata = Strata.of(current, settings.seed(), settings.seasons());
  }

  void run(DoubleConsumer progress) throws InterruptedException {

    try (Seasons seasons = new Seasons(scenarios, settings)) {
      numbers = seasons.run(settings.seasons(), measures::of, progress);
    }
  }

  Scenario with(Capacity place, int more) {
    return place.sized(current, place.size() + more);
  }

  /** Sowings that are safe in a scenario of those tried; 0 is as it is. */
  int safe(int tried) {
    return measures.safe(scenarios.get(tried), numbers.get(tried));
  }

  Stat onTime() {
    return Stat.of(column(0, Comparison.Kind.ON_TIME, ""), strata);
  }

  List<Bottlenecks.Worth> worths() {
    return IntStream.range(0, open.size())
        .mapToObj(this::worth)
        .sorted(
            Comparator.comparingDouble((Bottlenecks.Worth w) -> w.more().plantsForEach())
                .reversed())
        .toList();
  }

  private Bottlenecks.Worth worth(int i) {
    return new Bottlenecks.Worth(
        open.get(i),
        more(i),
        fewer(i),
        List.of(RoomWait.values()).stream()
            .map(step -> difference(0, 1 + i, Comparison.Kind.WAITING, step.word()))
            .toList());
  }

  /**
   * The place of which a tenth more clearly brings plants and does not clearly cost more than it
   * brings; of several, the one that brings most of them by the space.
   */
  Optional<Capacity> best() {
    return IntStream.range(0, open.size())
        .boxed()
        .filter(i -> more(i).onTime().isMore() && more(i).pays() != Pays.NO)
        .max(Comparator.comparingDouble(i -> more(i).plantsForEach()))
        .map(open::get);
  }

  Bottlenecks.Step step(Capacity place, int addedSoFar) {
    int i = open.indexOf(place);
    return new Bottlenecks.Step(
        place, more(i), addedSoFar, difference(asThingsWere, 1 + i, Comparison.Kind.ON_TIME, ""));
  }

  private Bottlenecks.Trial more(int i) {
    Capacity place = open.get(i);
    Difference margin = margin(0, 1 + i);
    Investment.Worth worth = margin == null ? null : bought(i, margin);
    return new Bottlenecks.Trial(
        tenth(place),
        difference(0, 1 + i, Comparison.Kind.ON_TIME, ""),
        margin,
        worth,
        pays(place, margin, worth),
        safe(1 + i));
  }

  /** Priced by the spaces that the place is written with, whatever was added since. */
  private Investment.@Nullable Worth bought(int i, Difference margin) {
    Prices prices = start.prices();
    Capacity place = open.get(i);
    if (prices == null || place.isHands()) {
      return null;
    }
    Capacity written =
        Capacity.allOf(start).stream()
            .filter(c -> c.name().equals(place.name()))
            .findFirst()
            .orElseThrow();
    return new Investing(prices.discount(), settings.seed())
        .worth(
            PlaceChanges.between(start, written.sized(start, written.size() + tenth(place))),
            column(0, Comparison.Kind.MARGIN, ""),
            column(1 + i, Comparison.Kind.MARGIN, ""),
            margin);
  }

  /** What lowers the margin never pays; hands cost nothing but the hours, which are in it. */
  private Pays pays(Capacity place, @Nullable Difference margin, Investment.@Nullable Worth worth) {
    Prices prices = start.prices();
    if (margin == null || prices == null) {
      return Pays.NOT_KNOWN;
    }
    if (margin.isLess() || (place.isHands() && prices.hour().signum() > 0)) {
      return Pays.of(margin);
    }
    return worth == null ? Pays.NOT_KNOWN : worth.pays();
  }

  private Bottlenecks.@Nullable Trial fewer(int i) {
    int spaces = tenthLess(open.get(i));
    if (spaces == 0) {
      return null;
    }
    int fewer = 1 + open.size() + i;
    Difference margin = margin(0, fewer);
    return new Bottlenecks.Trial(
        spaces,
        difference(0, fewer, Comparison.Kind.ON_TIME, ""),
        margin,
        null,
        margin == null ? Pays.NOT_KNOWN : Pays.of(margin),
        safe(fewer));
  }

  private @Nullable Difference margin(int from, int to) {
    return measures.indexOf(Comparison.Kind.MARGIN, "") < 0
        ? null
        : difference(from, to, Comparison.Kind.MARGIN, "");
  }

  private Difference difference(int from, int to, Comparison.Kind kind, String subject) {
    Measures.Measure measure = measures.all().get(measures.indexOf(kind, subject));
    return Paired.difference(
        column(from, kind, subject),
        column(to, kind, subject),
        strata,
        measure.moreIsBetter(),
        intervals);
  }

  private double[] column(int scenario, Comparison.Kind kind, String subject) {
    return Samples.column(numbers.get(scenario), measures.indexOf(kind, subject));
  }

  /** To the space, or the hour a day, and at least one. */
  static int tenth(Capacity place) {
    return Math.max(1, (int) Math.round(place.size() / 10));
  }

  /** The last table and the last hardening area cannot be closed: one space is left. */
  static int tenthLess(Capacity place) {
    return Math.max(0, Math.min(tenth(place), (int) place.size() - 1));
  }
}
