package propcap.evidence.germination;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.apache.commons.math3.random.Well19937c;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.evidence.germination.GerminationFit.AtTemperature;
import propcap.evidence.germination.GerminationFit.Lot;
import propcap.farm.CountedTray;
import propcap.farm.CountedTray.Inspection;

/** Whatever the counts, there is an answer, its limits enclose it, and every number is one. */
class RandomCountsTest {
  static IntStream seeds() {
    return IntStream.range(0, 100);
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("seeds")
  void anyCountsAreAnswered(int seed) {
    List<CountedTray> trays = draw(new Well19937c(seed));
    for (Lot lot : GerminationFitting.fit(trays, Map.of()).lots()) {
      for (AtTemperature at : lot.temperatures()) {
        assertThat(at.germinating().share().low()).isNotNegative();
        assertThat(at.germinating().share().high()).isLessThanOrEqualTo(1);
        assertFinite(at.lognormal(), at);
        assertFinite(at.best(), at);
      }
      for (Double near : new Double[] {null, 18.0}) {
        CropEntry entry = CropEntry.of(lot, near);
        assertThat(entry.tested().seeds()).isPositive();
        CropEntry.Showing showing = entry.emergence();
        if (showing != null) {
          assertThat(showing.halfByDays()).isPositive().isFinite();
          assertThat(showing.mostByDays()).isGreaterThan(showing.halfByDays()).isFinite();
        }
      }
    }
    assertThat(GerminationReport.of(trays).groups()).isNotEmpty();
  }

  private static void assertFinite(@Nullable CurveFit curve, AtTemperature at) {
    if (curve != null) {
      assertThat(curve.akaike()).isFinite();
      assertThat(curve.shown(at.lastDays())).isBetween(0.0, 1.0);
      curve.band().at(at.lastDays()).ifPresent(b -> assertThat(b.high()).isBetween(b.value(), 1.0));
    }
  }

  /** Few seeds or many, trays alike or not, looks at any time: nothing that a law would draw. */
  private static List<CountedTray> draw(Well19937c chance) {
    List<CountedTray> trays = new ArrayList<>();
    int temperatures = 1 + chance.nextInt(3);
    for (int t = 0; t < temperatures; t++) {
      int n = 1 + chance.nextInt(4);
      for (int i = 0; i < n; i++) {
        int seeds = 1 + chance.nextInt(chance.nextBoolean() ? 6 : 80);
        int looks = 1 + chance.nextInt(9);
        List<Inspection> inspections = new ArrayList<>();
        double days = 0;
        int up = 0;
        for (int look = 0; look < looks; look++) {
          days += chance.nextBoolean() ? 1 : 0.01 + 4 * chance.nextDouble();
          up += chance.nextInt(3) == 0 ? chance.nextInt(seeds - up + 1) : 0;
          inspections.add(new Inspection(days, up));
        }
        trays.add(new CountedTray("lot", "crop", 10 + 5 * t, "tray " + i, seeds, inspections));
      }
    }
    return trays;
  }
}
