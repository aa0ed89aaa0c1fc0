package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import propcap.Tried;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.season.PretendedLog.Counting;

/** What a look back tells of springs whose numbers were all right, on farms made up. */
@Tag("guarantees")
class ReviewGuaranteeTest {
  private static final int SPRINGS = 100;

  /**
   * A range leaves out a tenth on each side, and ties with its ends are in it; so of sowings there
   * should be as many within as the forecast's own springs have, and a verdict of "did not hold" or
   * "too well" in 5 springs of 100 at the most.
   */
  @ParameterizedTest
  @EnumSource(names = {"NOTHING", "STANDS"})
  void theRangesHoldAsOftenAsIsTold(Counting counting) throws Exception {
    List<Double> apart = new ArrayList<>();
    double inside = 0;
    int sowings = 0;
    int later = 0;
    double laterInside = 0;
    double laterExpected = 0;
    int astray = 0;
    int alarms = 0;
    int reviewed = 0;
    for (int seed = 0; reviewed < SPRINGS; seed++) {
      Scenario farm = RandomScenarios.from(seed);
      if (farm.sowings().size() < 3) {
        continue;
      }
      Scenario known =
          Lived.until(farm.season().end().plusDays(1), farm, farm, 1000 + seed, 0, counting);
      if (known.soFar() == null || known.soFar().trays().isEmpty()) {
        continue;
      }
      reviewed++;
      Review review = Reviewing.review(known, new RunSettings(seed, 200, null, 1), done -> {});
      Review.Look winter = review.looks().get(0);
      apart.add((winter.inside() - winter.expected()) / winter.sowings());
      inside += winter.inside();
      sowings += winter.sowings();
      astray += winter.isAsItShould() ? 0 : 1;
      alarms += review.wrong().isEmpty() ? 0 : 1;
      for (Review.Look look : review.looks().subList(1, review.looks().size())) {
        later += look.sowings();
        laterInside += look.inside();
        laterExpected += look.expected();
      }
    }
    double mean = apart.stream().mapToDouble(a -> a).average().orElseThrow();
    double error =
        Math.sqrt(
            apart.stream().mapToDouble(a -> (a - mean) * (a - mean)).sum()
                / (SPRINGS - 1)
                / SPRINGS);
    Tried.row(
        "guarantees",
        "review: ranges of 8 springs of 10 hold as often as is told, and right numbers are not"
            + " called wrong",
        SPRINGS + " farms made up, one spring each, counted: " + counting,
        String.format(
            Locale.ROOT,
            "winter: %.0f %% of %d sowings within, %.1f points from what is told (se %.1f); later"
                + " forecasts: %.0f %% of %d within, told %.0f %%; verdict astray in %d, a number"
                + " called wrong in %d of %d",
            100 * inside / sowings,
            sowings,
            100 * mean,
            100 * error,
            100 * laterInside / later,
            later,
            100 * laterExpected / later,
            astray,
            alarms,
            SPRINGS));
    assertThat(mean).isBetween(-3 * error, 3 * error);
    // 5 of 100 at the most, and three standard errors of 100 tries, 6.5 of 100.
    assertThat(astray).isLessThan(12);
    assertThat(alarms).isLessThan(12);
  }
}
