package propcap.evidence.germination;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.math3.random.Well19937c;
import org.junit.jupiter.api.Test;
import propcap.evidence.Estimate;
import propcap.evidence.germination.GerminationFit.Lot;
import propcap.farm.CountedTray;

/** Which of a lot's temperatures the crop list's entry is of. */
class CropEntryTest {
  /** 9 of 10 come up at 20 C; at 28 C they are sooner, and 6 of 10; at 14 C as many, but later. */
  private static Lot hotAndCold() {
    List<CountedTray> trays = new ArrayList<>();
    Well19937c chance = new Well19937c(1);
    trays.addAll(new Trays.Law(0.9, 0, 8, 0.2, 1, 20).draw(chance, 14, 4, 50));
    trays.addAll(new Trays.Law(0.9, 0, 5, 0.2, 1, 20).draw(chance, 20, 4, 50));
    trays.addAll(new Trays.Law(0.6, 0, 3.5, 0.2, 1, 20).draw(chance, 28, 4, 50));
    return GerminationFitting.fit(trays, Map.of()).lots().get(0);
  }

  @Test
  void withoutACropListItIsOfTheBestTemperatureNotTheFastest() {
    CropEntry entry = CropEntry.of(hotAndCold(), null);
    assertThat(entry.atC()).isEqualTo(20);
    assertThat(entry.tested().rate()).isCloseTo(0.9, within(0.05));
    assertThat(requireNonNull(entry.emergence()).halfByDays()).isCloseTo(5, within(0.5));
  }

  @Test
  void withACropListItIsOfTheTemperatureNearestToTheLists() {
    assertThat(CropEntry.of(hotAndCold(), 27.0).atC()).isEqualTo(28);
    assertThat(CropEntry.of(hotAndCold(), 27.0).tested().rate()).isCloseTo(0.6, within(0.1));
    assertThat(CropEntry.of(hotAndCold(), 16.0).atC()).isEqualTo(14);
  }

  /** At 25 C the counting ended when half were up: it may be the best, but it does not say so. */
  @Test
  void aTestThatEndedEarlyIsNotTheBest() {
    List<CountedTray> trays = new ArrayList<>();
    Well19937c chance = new Well19937c(2);
    trays.addAll(new Trays.Law(0.9, 0, 6, 0.2, 1, 20).draw(chance, 18, 4, 50));
    trays.addAll(new Trays.Law(0.9, 0, 4, 0.2, 1, 4).draw(chance, 25, 4, 50));
    Lot lot = GerminationFitting.fit(trays, Map.of()).lots().get(0);
    assertThat(lot.best().tempC()).isEqualTo(18);
  }

  /** 45, 40, 30 and 46 of 50: 161 of 200, but the trays differ as some 50 seeds would. */
  @Test
  void traysThatDifferAreWrittenAsFewerSeeds() {
    List<CountedTray> trays = new ArrayList<>();
    for (int up : new int[] {45, 40, 30, 46}) {
      trays.add(Trays.total(20, "tray " + up, 50, up));
    }
    Lot lot = GerminationFitting.fit(trays, Map.of()).lots().get(0);
    EquivalentCount tested = CropEntry.of(lot, null).tested();
    // Chi-square 16.5 of 3: a factor of 5.5, and Student's t of 3.18 for 1.96: 200 / 14.5.
    assertThat(tested.seeds()).isBetween(10, 20);
    Estimate told = lot.temperatures().get(0).germinating().share();
    assertThat(Coverage.limits(tested).low()).isCloseTo(told.low(), within(0.05));
    assertThat(Coverage.limits(tested).high()).isCloseTo(told.high(), within(0.05));
  }
}
