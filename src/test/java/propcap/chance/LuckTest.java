package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.apache.commons.math3.stat.inference.ChiSquareTest;
import org.junit.jupiter.api.Test;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.WeatherYear;

/** A tray's luck hangs on its season, sowing, number and attempt, and on nothing else. */
class LuckTest {
  private static final long SEED = 6001;

  private final Farms farm = new Farms();

  LuckTest() {
    farm.crops.clear();
    farm.crops.add(crop("cosmos", 72, 0.02, 100).make());
    farm.sowings.add(sowing("a", "cosmos", "old", 3));
    farm.sowings.add(sowing("b", "cosmos", "new", 2));
  }

  private static Crops crop(String name, int cells, double correlation, double tested) {
    Crops crop = new Crops();
    crop.name = name;
    crop.cells = cells;
    crop.germination = new Crop.Germination(0.8, tested, correlation);
    crop.emergence = new Crop.Emergence(9, 29, 38, 22, 6.5, 9.5);
    crop.spread = 0.1;
    crop.dampingOff = new Crop.DampingOff(1, 0.4);
    return crop;
  }

  private static Sowing sowing(String id, String crop, String lot, int trays) {
    LocalDate day = Farms.START;
    return new Sowing(
        id,
        crop,
        lot,
        day,
        trays,
        10,
        day,
        day.plusDays(50),
        null,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  private static SeasonLuck season(Scenario scenario, int number) {
    return new Luck(scenario, SEED).reader().season(number);
  }

  /** All that can be seen of a tray's luck, purpose by purpose. */
  private static List<Double> all(TrayLuck tray) {
    List<Double> seen = new ArrayList<>();
    seen.add((double) tray.fills());
    seen.add(tray.readyAt());
    for (int time = 60; time <= 120; time += 10) {
      seen.add((double) tray.showingBy(time));
    }
    seen.add(tray.pace());
    seen.add(tray.severity());
    for (DrawPurpose draw : DrawPurpose.values()) {
      seen.add((double) tray.lost(draw, 900, 0.5));
    }
    return seen;
  }

  @Test
  void oneSeedGivesTheSameLuckTwice() {
    Scenario scenario = farm.make();
    for (int tray = 0; tray < 3; tray++) {
      assertThat(all(season(scenario, 4).tray(0, tray, 0)))
          .isEqualTo(all(season(scenario, 4).tray(0, tray, 0)));
      assertThat(all(season(scenario, 4).tray(0, tray, 1)))
          .isEqualTo(all(season(scenario, 4).tray(0, tray, 1)));
    }
  }

  @Test
  void everySeedSeasonSowingTrayAndAttemptHasLuckOfItsOwn() {
    Scenario scenario = farm.make();
    Set<List<Double>> lucks = new HashSet<>();
    for (long seed = 1; seed <= 3; seed++) {
      Luck.Reader reader = new Luck(scenario, seed).reader();
      for (int number = 0; number < 20; number++) {
        SeasonLuck season = reader.season(number);
        for (int tray = 0; tray < 2; tray++) {
          for (int attempt = 0; attempt < 3; attempt++) {
            lucks.add(all(season.tray(0, tray, attempt)));
            lucks.add(all(season.tray(1, tray, attempt)));
          }
        }
      }
    }
    assertThat(lucks).hasSize(3 * 20 * 2 * 3 * 2);
  }

  private static void assertSameLuck(Scenario one, int sowing, Scenario other, int moved) {
    for (int number : new int[] {0, 1, 12}) {
      SeasonLuck before = season(one, number);
      SeasonLuck after = season(other, number);
      assertThat(after.weatherYear()).isEqualTo(before.weatherYear());
      for (int attempt = 0; attempt < 3; attempt++) {
        for (int tray = 0; tray < one.sowings().get(sowing).trays(); tray++) {
          assertThat(all(after.tray(moved, tray, attempt)))
              .as("season %d, tray %d, attempt %d", number, tray, attempt)
              .isEqualTo(all(before.tray(sowing, tray, attempt)));
        }
      }
    }
  }

  @Test
  void addedTraysLeaveTheOthersTheirLuck() {
    Scenario before = farm.make();
    farm.sowings.set(0, sowing("a", "cosmos", "old", 9));
    assertSameLuck(before, 0, farm.make(), 0);
    assertSameLuck(before, 1, farm.make(), 1);
  }

  @Test
  void theOrderOfThePlanHasNoPartInLuck() {
    Scenario before = farm.make();
    farm.sowings.add(0, farm.sowings.remove(1));
    assertSameLuck(before, 0, farm.make(), 1);
    assertSameLuck(before, 1, farm.make(), 0);
  }

  @Test
  void anotherSowingLeavesTheOthersTheirLuck() {
    Scenario before = farm.make();
    farm.crops.add(crop("tomato", 50, 0, 0).make());
    farm.sowings.add(1, sowing("c", "tomato", "old", 4));
    farm.sowings.add(0, sowing("d", "cosmos", "old", 4));
    assertSameLuck(before, 0, farm.make(), 1);
    assertSameLuck(before, 1, farm.make(), 3);
  }

  @Test
  void aSowingThatMovesKeepsItsLuck() {
    Scenario before = farm.make();
    LocalDate day = Farms.START.plusDays(14);
    farm.sowings.set(
        0,
        new Sowing(
            "a",
            "cosmos",
            "old",
            day,
            3,
            99,
            day,
            day.plusDays(9),
            null,
            day,
            null,
            Sowing.Leeway.NOT_SAID));
    assertSameLuck(before, 0, farm.make(), 0);
  }

  @Test
  void aPlaceThatGrowsOrOpensLeavesLuckAlone() {
    Scenario before = farm.make();
    farm.mats = 50;
    farm.house = 200;
    farm.morePlaces.add(
        new Place("Annexe", PlaceKind.TABLE, 40, new Climate.Constant(15), 0, null));
    assertSameLuck(before, 0, farm.make(), 0);
    assertSameLuck(before, 1, farm.make(), 1);
  }

  @Test
  void seasonFiftySevenIsTheSameAskedDirectlyAndAfterWalking() {
    Scenario scenario = farm.make();
    SeasonLuck direct = season(scenario, 57);
    Luck.Reader walking = new Luck(scenario, SEED).reader();
    for (int number = 0; number < 57; number++) {
      walking.season(number).tray(0, 2, 1);
    }
    SeasonLuck walked = walking.season(57);
    assertThat(walked.weatherYear()).isEqualTo(direct.weatherYear());
    for (int tray = 0; tray < 3; tray++) {
      assertThat(all(walked.tray(0, tray, 0))).isEqualTo(all(direct.tray(0, tray, 0)));
      assertThat(all(walked.tray(0, tray, 1))).isEqualTo(all(direct.tray(0, tray, 1)));
    }
  }

  @Test
  void threadsThatShareALuckSeeWhatOneThreadSees() {
    Luck luck = new Luck(farm.make(), SEED);
    List<List<Double>> together =
        IntStream.range(0, 60)
            .parallel()
            .mapToObj(number -> all(luck.reader().season(number).tray(0, 1, 1)))
            .toList();
    Luck.Reader alone = new Luck(farm.make(), SEED).reader();
    for (int number = 0; number < together.size(); number++) {
      assertThat(together.get(number)).isEqualTo(all(alone.season(number).tray(0, 1, 1)));
    }
  }

  @Test
  void traysAreSownAgainInAnyOrder() {
    Scenario scenario = farm.make();
    SeasonLuck season = season(scenario, 5);
    List<Double> last = all(season.tray(0, 2, 1));
    List<Double> first = all(season.tray(0, 0, 1));
    SeasonLuck again = season(scenario, 5);
    assertThat(all(again.tray(0, 0, 1))).isEqualTo(first);
    assertThat(all(again.tray(0, 2, 1))).isEqualTo(last);
  }

  /** Four standard errors of a correlation, 1/sqrt(n): a false alarm 6 times in 100,000. */
  private static boolean uncorrelated(double[] x, double[] y) {
    return Math.abs(Moments.correlation(x, y)) <= 4 / Math.sqrt(x.length);
  }

  /** By the paces, whose logs are normal, over 4,000 seasons. */
  @Test
  void seasonsSowingsTraysAndAttemptsAreUncorrelated() {
    int seasons = 4_000;
    double[][] pace = new double[4][seasons];
    Luck.Reader reader = new Luck(farm.make(), SEED).reader();
    for (int s = 0; s < seasons; s++) {
      SeasonLuck season = reader.season(s);
      pace[0][s] = Math.log(season.tray(0, 0, 0).pace());
      pace[1][s] = Math.log(season.tray(0, 1, 0).pace());
      pace[2][s] = Math.log(season.tray(1, 0, 0).pace());
      pace[3][s] = Math.log(season.tray(0, 0, 1).pace());
    }
    for (int i = 0; i < pace.length; i++) {
      for (int j = 0; j < i; j++) {
        assertThat(uncorrelated(pace[i], pace[j])).as("%d and %d", i, j).isTrue();
      }
    }
    double[] tray = pace[0];
    assertThat(
            uncorrelated(
                Arrays.copyOfRange(tray, 0, seasons - 1), Arrays.copyOfRange(tray, 1, seasons)))
        .isTrue();
    // The twin: a tenth of one tray's luck in another's.
    double[] mixed = new double[seasons];
    Arrays.setAll(mixed, s -> 0.1 * tray[s] + 0.9 * pace[1][s]);
    assertThat(uncorrelated(tray, mixed)).isFalse();
  }

  /** Chi-square over 5,000 seasons and ten years, at a level of one in a thousand. */
  @Test
  void everyWeatherYearComesAsOften() {
    Scenario one = farm.make();
    List<WeatherYear> ten = Collections.nCopies(10, one.weather().get(0));
    Scenario scenario =
        new Scenario(
            "ten years",
            one.season(),
            0,
            one.rounds(),
            one.places(),
            one.crops(),
            one.sowings(),
            ten,
            null,
            Labour.NOT_LIMITED);
    long[] drawn = new long[10];
    Luck.Reader reader = new Luck(scenario, SEED).reader();
    for (int s = 0; s < 5_000; s++) {
      drawn[reader.season(s).weatherYear()]++;
    }
    double[] equal = new double[10];
    Arrays.fill(equal, 500);
    assertThat(new ChiSquareTest().chiSquareTest(equal, drawn)).isGreaterThan(0.001);
    // The twin: one year drawn a quarter more often, another as much less.
    drawn[0] += 125;
    drawn[9] -= 125;
    assertThat(new ChiSquareTest().chiSquareTest(equal, drawn)).isLessThan(0.001);
  }
}
