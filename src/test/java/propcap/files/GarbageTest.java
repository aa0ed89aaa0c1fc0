package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.Mutated;
import propcap.Tried;
import propcap.farm.Crop;
import propcap.farm.Scenario;
import propcap.files.text.FaultsException;

/** Whatever becomes of a grower's files, they read as a sound scenario or as faults. */
class GarbageTest {
  private static final int TRIES = 150;

  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4})
  void nothingComesOutButAScenarioOrFaults(long seed, @TempDir Path path) {
    int sound = tried(seed, TRIES, path);
    // Both ends of the promise were tried: some changes do no harm, most do.
    assertThat(sound).isBetween(1, TRIES - 1);
  }

  @Tag("attack")
  @Test
  void nothingElseComesOutInTenThousandTries(@TempDir Path path) {
    int sound = 0;
    for (long seed = 101; seed <= 110; seed++) {
      sound += tried(seed, 1_000, path);
    }
    Tried.row(
        "attack",
        "A scenario's files, mutated: read as a sound scenario, or refused with faults",
        "10,000 mutations of five files, seeds 101 to 110",
        "all; " + sound + " read, " + (10_000 - sound) + " refused");
    assertThat(sound).isBetween(100, 9_900);
  }

  /** How many of the mutated sets were read as sound scenarios. */
  private static int tried(long seed, int tries, Path path) {
    GrowersFolder folder = new GrowersFolder(path);
    folder.write(
        "weather.csv", GrowersFolder.weather(LocalDate.of(2001, 1, 1), LocalDate.of(2002, 12, 31)));
    folder.write(
        "other.yaml",
        """
        extends: scenario.yaml
        places:
          - {name: Chamber 2, like: Chamber, spaces: 30, after: Chamber,
             cost: {buy: 5200, lasts: 12 years, keep: 150/year, run: 3.60 EUR/day}}
          - {name: Mats, spaces: 0}
        money:
          currency: EUR
          plants:
            tomato: {worth: 0.95, late: 0.40, short: 1.20, tray: 6.50}
            default: {worth: 0.30, late: 0.10, short: 0.45}
          tray: 1.10
          pot-tray: 2.40 EUR
          discount: 6 %
          sell-surplus: true
        crops:
          tomato: {emergence: {base: 10 C}, germinate-in: [Chamber]}
        sowings:
          - {match: "tomato*", shift: -7 days}
          - {match: pepper-1, trays: 40}
        """);
    List<String> names =
        List.of("other.yaml", "scenario.yaml", "crops.yaml", "sowings.csv", "weather.csv");
    SplittableRandom random = new SplittableRandom(seed);
    int sound = 0;
    for (int i = 0; i < tries; i++) {
      String name = names.get(random.nextInt(names.size()));
      String text = folder.text(name);
      folder.write(
          name,
          Mutated.of(text, 1 + random.nextInt(2), random).getBytes(StandardCharsets.ISO_8859_1));
      try {
        isSound(folder.read("other.yaml"));
        sound++;
      } catch (FaultsException e) {
        assertThat(e.faults()).isNotEmpty().doesNotHaveDuplicates();
        assertThat(e.faults()).allMatch(f -> !f.found().isBlank() && !f.right().isBlank());
        // The records' own refusals are the last line of defence: the reader should be first.
        assertThat(e.faults()).noneMatch(f -> f.right().endsWith("that go together"));
        assertThat(e.faults()).noneMatch(f -> f.right().endsWith("that holds together"));
      }
      folder.write(name, text);
    }
    return sound;
  }

  private static void isSound(Scenario scenario) {
    for (Crop crop : scenario.crops().values()) {
      assertThat(crop.growingOnDegreeDays()).isPositive().isFinite();
      assertThat(crop.emergence().medianDegreeDays()).isPositive().isFinite();
      assertThat(crop.toString()).doesNotContain("NaN").doesNotContain("Infinity");
    }
    assertThat(scenario.places().toString()).doesNotContain("NaN").doesNotContain("Infinity");
    assertThat(scenario.trays()).isPositive();
    assertThat(scenario.frostAtC()).isFinite();
    scenario.crops().values().forEach(scenario::releaseDate);
  }
}
