package propcap.study.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.IntFunction;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.Tried;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.season.PretendedLog.Counting;
import propcap.study.Lived;
import propcap.study.RunSettings;

/** What a look back tells of springs whose numbers were all right, on farms made up. */
@Tag("guarantees")
class ReviewGuaranteeTest {
  private static final int SPRINGS = 100;

  private static Stream<Arguments> farms() {
    IntFunction<Scenario> madeUp = RandomScenarios::from;
    IntFunction<Scenario> uneven = seed -> ReviewingTest.farm(10, 0.9);
    return Stream.of(Counting.NOTHING, Counting.STANDS)
        .flatMap(
            c ->
                Stream.of(
                    Arguments.of("farms made up", madeUp, c),
                    Arguments.of("a farm of three uneven sowings", uneven, c)));
  }

  /**
   * A range leaves out a tenth on each side, and ties with its ends are in it; so of sowings there
   * should be as many within as the forecast's own springs have, and a verdict of "did not hold" or
   * "too well" in 5 springs of 100 at the most.
   */
  @ParameterizedTest
  @MethodSource("farms")
  void theRangesHoldAsOftenAsIsTold(String name, IntFunction<Scenario> farms, Counting counting)
      throws Exception {
    ForecastCheck winter = new ForecastCheck();
    ForecastCheck later = new ForecastCheck();
    int astray = 0;
    int alarms = 0;
    for (int seed = 0; winter.apart.size() < SPRINGS; seed++) {
      Scenario farm = farms.apply(seed);
      Scenario known =
          Lived.until(farm.season().end().plusDays(1), farm, farm, 1000 + seed, 0, counting);
      if (farm.sowings().size() < 3 || Objects.requireNonNull(known.soFar()).trays().isEmpty()) {
        continue;
      }
      Review review = Reviewing.review(known, new RunSettings(seed, 200, null, 1), done -> {});
      winter.add(review.looks().subList(0, 1));
      later.add(review.looks().subList(1, review.looks().size()));
      astray += review.looks().get(0).isAsItShould() ? 0 : 1;
      alarms += review.wrong().isEmpty() ? 0 : 1;
    }
    Tried.row(
        "guarantees",
        "review: ranges of 8 springs of 10 hold as often as is told, and right numbers are not"
            + " called wrong",
        SPRINGS + " springs of " + name + ", 200 of each forecast, counted: " + counting,
        "winter: "
            + winter
            + "; later forecasts: "
            + later
            + "; winter's verdict astray in "
            + astray
            + ", a number called wrong in "
            + alarms);
    assertThat(Math.abs(winter.mean())).isLessThanOrEqualTo(3 * winter.error());
    assertThat(Math.abs(later.mean())).isLessThanOrEqualTo(3 * later.error());
    // 5 of 100 at the most, and three standard errors of 100 tries, 6.5 of 100.
    assertThat(astray).isLessThan(12);
    assertThat(alarms).isLessThan(12);
  }

  /** Of many springs, for of a hundred 5 are not told from 8: 5 % and three standard errors. */
  @ParameterizedTest
  @MethodSource("manySprings")
  void rightNumbersAreCalledWrongInOneSpringOfTwenty(
      String name, IntFunction<Scenario> farms, int tries, int springs) {
    int wrong = LogFiguresTest.wrong(farms, tries, springs);
    Tried.row(
        "guarantees",
        "review: a right number is called wrong in at most one spring of twenty",
        String.format(
            Locale.ENGLISH, "%,d springs of %s, each held against %d", tries, name, springs),
        String.format(Locale.ENGLISH, "%.1f %%", 100.0 * wrong / tries));
    assertThat(wrong / (double) tries).isLessThan(0.05 + 3 * Math.sqrt(0.05 * 0.95 / tries));
  }

  private static Stream<Arguments> manySprings() {
    IntFunction<Scenario> uneven = seed -> ReviewingTest.farm(10, 0.9);
    IntFunction<Scenario> madeUp = RandomScenarios::from;
    return Stream.of(
        Arguments.of("a farm of three uneven sowings", uneven, 2000, 40),
        Arguments.of("a farm of three uneven sowings", uneven, 2000, 200),
        Arguments.of("farms made up", madeUp, 2000, 40));
  }

  /** How many came within their ranges, against how many should have, spring by spring. */
  private static final class ForecastCheck {
    private final List<Double> apart = new ArrayList<>();
    private double inside;
    private double expected;
    private int sowings;

    void add(List<Review.ForecastCheck> looks) {
      List<Review.ForecastCheck> open = looks.stream().filter(l -> l.sowings() > 0).toList();
      if (!open.isEmpty()) {
        double its = open.stream().mapToDouble(Review.ForecastCheck::inside).sum();
        double should = open.stream().mapToDouble(Review.ForecastCheck::expected).sum();
        int of = open.stream().mapToInt(Review.ForecastCheck::sowings).sum();
        inside += its;
        expected += should;
        sowings += of;
        apart.add((its - should) / of);
      }
    }

    double mean() {
      return apart.stream().mapToDouble(a -> a).average().orElseThrow();
    }

    double error() {
      double mean = mean();
      double squares = apart.stream().mapToDouble(a -> (a - mean) * (a - mean)).sum();
      return Math.sqrt(squares / (apart.size() - 1) / apart.size());
    }

    @Override
    public String toString() {
      return String.format(
          Locale.ROOT,
          "%.1f %% of %d sowings within, told %.1f %% (a spring's difference %.1f points, se %.1f)",
          100 * inside / sowings,
          sowings,
          100 * expected / sowings,
          100 * mean(),
          100 * error());
    }
  }
}
