package propcap.season;

import java.time.DayOfWeek;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.WeatherYear;

/** Small farms in which much is left to luck, and room is short. */
final class FarmsWithAPast {
  private FarmsWithAPast() {}

  /**
   * Three crops, one of them always potted on and one if held; four sowings of two and three trays,
   * two of them of one lot; a rest day; a house too small for all; five springs, with nights of
   * frost.
   */
  static Scenario threeCrops() {
    Farms farm = new Farms();
    farm.rounds = new Rounds(Rounds.DEFAULT_AT, Set.of(DayOfWeek.SUNDAY));
    farm.mats = 7;
    farm.house = 8;
    farm.yard = 5;
    farm.stretchLossPerDay = 0.05;
    farm.crops =
        List.of(
            crop("cosmos", Crop.PottingOn.NEVER, 1),
            crop("tomato", new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 6, 7, 4, 0.03), 1),
            crop("pepper", new Crop.PottingOn(Crop.PottingOn.When.IF_HELD, 6, 6, 4, 0.03), 2));
    farm.sowings =
        List.of(
            sowing("a", "cosmos", 0, 3, 34),
            sowing("b", "tomato", 2, 2, 44),
            sowing("c", "cosmos", 9, 2, 42),
            sowing("d", "pepper", 4, 2, 46));
    Scenario made = farm.make();
    return withWeather(made, springs(5, made.season().days()));
  }

  /** One lot of little tested seed, in two sowings of three trays; all trays have its rate. */
  static Scenario oneLot() {
    Farms farm = new Farms();
    farm.mats = 5;
    farm.house = 5;
    farm.yard = 3;
    Crops crop = luckyCrop("cosmos", Crop.PottingOn.NEVER, 1);
    crop.germination = new Crop.Germination(0.7, 8, 0);
    farm.crops = List.of(crop.make());
    farm.sowings = List.of(sowing("a", "cosmos", 0, 3, 34), sowing("c", "cosmos", 3, 3, 38));
    Scenario made = farm.make();
    return withWeather(made, springs(5, made.season().days()));
  }

  private static Crop crop(String name, Crop.PottingOn pottingOn, int seeds) {
    return luckyCrop(name, pottingOn, seeds).make();
  }

  private static Crops luckyCrop(String name, Crop.PottingOn pottingOn, int seeds) {
    Crops crop = new Crops();
    crop.name = name;
    crop.cells = 12;
    crop.seedsPerCell = seeds;
    crop.germination = new Crop.Germination(seeds == 1 ? 0.75 : 0.5, 30, 0.05);
    crop.emergence = new Crop.Emergence(5, 30, 40, 20, 5, 7.5);
    crop.pullAfterDays = 9;
    crop.failBelow = 0.35;
    crop.standWindowDays = 3;
    crop.takesDays = 11;
    crop.spread = 0.15;
    crop.loss = 0.05;
    crop.dampingOff = new Crop.DampingOff(0.2, 0.4);
    crop.holdsDays = 4;
    crop.overheldLossPerDay = 0.04;
    crop.pottingOn = pottingOn;
    crop.hardening = new Crop.Hardening(4, 2, -1, 0.2, 0.03, 1, 12);
    return crop;
  }

  private static Sowing sowing(String id, String crop, int sowDay, int trays, int bedBy) {
    return new Sowing(
        id,
        crop,
        "lot",
        Farms.day(sowDay),
        trays,
        10,
        Farms.day(20),
        Farms.day(bedBy),
        Farms.day(bedBy + 7),
        Farms.day(16),
        null,
        Sowing.Leeway.NOT_SAID);
  }

  static List<WeatherYear> springs(int years, int days) {
    SplittableRandom random = new SplittableRandom(11);
    List<WeatherYear> springs = new ArrayList<>();
    for (int y = 0; y < years; y++) {
      double[] minC = new double[days];
      Arrays.setAll(minC, d -> 4 + d / 10.0 + 3 * random.nextGaussian());
      springs.add(new WeatherYear(2001 + y, minC, Arrays.stream(minC).map(m -> m + 9).toArray()));
    }
    return springs;
  }

  static Scenario withWeather(Scenario made, List<WeatherYear> weather) {
    return new Scenario(
        made.name(),
        made.season(),
        made.frostAtC(),
        made.rounds(),
        made.places(),
        made.crops(),
        made.sowings(),
        weather,
        made.prices(),
        made.labour());
  }
}
