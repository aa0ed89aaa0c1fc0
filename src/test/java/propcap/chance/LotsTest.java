package propcap.chance;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Sowing;

/** Who shares a seed lot's luck. Trays of 2,000 cells show their lot's rate to a percent. */
class LotsTest {
  private final Farms farm = new Farms();

  private static Crop crop(String name) {
    Crops crop = new Crops();
    crop.name = name;
    crop.cells = 2_000;
    crop.germination = new Crop.Germination(0.8, 20, 0);
    return crop.make();
  }

  private static Sowing sowing(String id, String crop) {
    LocalDate day = Farms.START;
    return new Sowing(
        id,
        crop,
        "2026",
        day,
        1,
        10,
        day,
        day.plusDays(50),
        null,
        null,
        null,
        Sowing.Leeway.NOT_SAID);
  }

  LotsTest() {
    farm.crops.clear();
    farm.crops.add(crop("cosmos"));
    farm.crops.add(crop("tomato"));
    farm.sowings.add(sowing("a", "cosmos"));
    farm.sowings.add(sowing("b", "cosmos"));
    farm.sowings.add(sowing("c", "tomato"));
  }

  /** Unlike lots: within 4 standard errors, 1/sqrt(n), of none; a false alarm 6 in 100,000. */
  @Test
  void aLotIsSharedWithinACropAndNotBetweenCropsThatUseOneName() {
    int seasons = 400;
    double[][] fills = new double[3][seasons];
    Luck.Reader reader = new Luck(farm.make(), 6002).reader();
    for (int s = 0; s < seasons; s++) {
      SeasonLuck season = reader.season(s);
      for (int sowing = 0; sowing < 3; sowing++) {
        fills[sowing][s] = season.tray(sowing, 0, 0).fills();
      }
    }
    double limit = 4 / Math.sqrt(seasons);
    assertThat(Math.abs(Moments.correlation(fills[0], fills[2]))).isLessThan(limit);
    // The twin: one lot is refused as two. By its cells a pair is correlated by 2000 / 2020.
    assertThat(Moments.correlation(fills[0], fills[1])).isGreaterThan(limit).isGreaterThan(0.97);
  }

  @Test
  void aTrayThatIsSownAgainIsOfTheSameLot() {
    Luck.Reader reader = new Luck(farm.make(), 6003).reader();
    for (int s = 0; s < 50; s++) {
      SeasonLuck season = reader.season(s);
      // Two counts of one lot differ by sqrt(2 * 2000 * p * (1-p)), 32 at most; 6 times that.
      assertThat(season.tray(0, 0, 1).fills() - season.tray(0, 0, 0).fills()).isBetween(-190, 190);
    }
  }
}
