package propcap.study.order;

import java.util.List;
import java.util.OptionalInt;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.Labour;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.SeasonTotals;
import propcap.study.Seasons;
import propcap.study.forecast.Safety;
import propcap.study.order.Supplies.ByMoney;
import propcap.study.order.Supplies.ForSowing;
import propcap.study.statistics.Counts;

/**
 * The question before the season: how much seed, how many trays, pots and how much mix? More trays
 * are tried than are planned, with room for all: whether there is room is another question, and
 * another answer ({@link propcap.study.size.SizingRun}). What the trays then use beyond themselves,
 * pots and trays sown again, is what they use in the house as it is.
 */
public final class Supplying {

  /** How many trays are tried for each one planned, and how many more. */
  private static final int TIMES = 2;

  private static final int MORE = 8;

  /** Of the work of a run, that with room for all and twice the trays, and up to the plan's. */
  private static final double UP_TO_GENEROUS = 0.6;

  private static final double UP_TO_PLANNED = 0.75;

  private final Scenario scenario;
  private final double chance;
  private final RunSettings settings;
  private final DoubleConsumer progress;

  /** What each season's trays bring, if there is room for all and twice as many. */
  private final List<TrayYields> yields;

  /** By sowing: share of seasons in which it is met in the places as they are. */
  private final double[] inHouse;

  private Supplying(Scenario scenario, double chance, RunSettings settings, DoubleConsumer progress)
      throws InterruptedException {
    this.scenario = scenario;
    this.chance = chance;
    this.settings = settings;
    this.progress = progress;
    yields = yields();
    inHouse = inHouse();
  }

  /**
   * Finds what the season takes.
   *
   * @param chance with which each sowing should have the plants needed, between 0 and 1
   * @param progress told, from any thread, the share done, 0 to 1
   * @throws InterruptedException if the thread is interrupted; nothing is left behind
   */
  public static Supplies supplies(
      Scenario scenario, double chance, RunSettings settings, DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    if (!(chance > 0 && chance < 1)) {
      throw new BadQuestionException("a chance is more than 0 % and less than 100 %, such as 90%");
    }
    return new Supplying(scenario, chance, settings, progress).supplies();
  }

  private Supplies supplies() throws InterruptedException {
    List<ForSowing> sowings =
        IntStream.range(0, scenario.sowings().size()).mapToObj(this::forSowing).toList();
    List<HouseUse> uses = uses(sowings);
    SupplyList list = new SupplyList(chance, sowings, yields, uses);
    return new Supplies(
        scenario,
        settings,
        settings.seasons(),
        chance,
        sowings,
        safe(sowings, uses),
        list.lots(),
        list.items());
  }

  /** Sowings that are safe with the trays that are ordered, in the house as it is. */
  private static int safe(List<ForSowing> sowings, List<HouseUse> uses) {
    return Safety.count(
        sowings.stream().map(ForSowing::sowing).toList(), s -> inHouse(sowings.get(s), s, uses));
  }

  private static double inHouse(ForSowing sowing, int s, List<HouseUse> uses) {
    if (sowing.ordered() == 0 || uses.isEmpty()) {
      return sowing.sowing().plantsNeeded() == 0 ? 1 : 0;
    }
    return uses.stream().filter(u -> u.isMet(s)).count() / (double) uses.size();
  }

  private List<TrayYields> yields() throws InterruptedException {
    Scenario generous =
        scenario
            .withSowings(scenario.sowings().stream().map(s -> s.withTrays(tried(s))).toList())
            .withEndlessRoom()
            .withLabour(Labour.NOT_LIMITED);
    int n = settings.seasons();
    try (Seasons seasons = Seasons.withDiaries(List.of(generous), settings)) {
      return seasons.run(
          0,
          n,
          outcome -> new TrayYields(generous, outcome.diary()),
          done -> progress.accept(UP_TO_GENEROUS * done / n));
    }
  }

  private static int tried(Sowing sowing) {
    return TIMES * sowing.trays() + MORE;
  }

  private double[] inHouse() throws InterruptedException {
    int n = settings.seasons();
    int sowings = scenario.sowings().size();
    try (Seasons seasons = new Seasons(List.of(scenario), settings)) {
      List<boolean[]> met =
          seasons.run(
              0,
              n,
              outcome -> {
                boolean[] isMet = new boolean[sowings];
                for (int s = 0; s < sowings; s++) {
                  isMet[s] = SeasonTotals.isMet(scenario, outcome, s);
                }
                return isMet;
              },
              done ->
                  progress.accept(UP_TO_GENEROUS + (UP_TO_PLANNED - UP_TO_GENEROUS) * done / n));
      return IntStream.range(0, sowings)
          .mapToDouble(s -> met.stream().filter(m -> m[s]).count() / (double) n)
          .toArray();
    }
  }

  /**
   * What each season uses in the house as it is, with the trays that are ordered: in other seasons
   * than those by which they were chosen, in which they are enough more often than in all.
   */
  private List<HouseUse> uses(List<ForSowing> all) throws InterruptedException {
    int n = settings.seasons();
    List<Integer> sown =
        IntStream.range(0, all.size()).filter(s -> all.get(s).ordered() > 0).boxed().toList();
    if (sown.isEmpty()) {
      return List.of();
    }
    Scenario ordered =
        scenario.withSowings(
            sown.stream().map(s -> all.get(s).sowing().withTrays(all.get(s).ordered())).toList());
    try (Seasons seasons = Seasons.withDiaries(List.of(ordered), settings)) {
      return seasons.run(
          n,
          2 * n,
          outcome -> new HouseUse(ordered, outcome, sown, all.size()),
          done -> progress.accept(UP_TO_PLANNED + (1 - UP_TO_PLANNED) * done / n));
    }
  }

  private ForSowing forSowing(int s) {
    Sowing sowing = scenario.sowings().get(s);
    Crop crop = scenario.cropOf(sowing);
    int tried = tried(sowing);
    int needed = sowing.plantsNeeded();
    Counts enough = Counts.of(yields.stream().mapToInt(y -> y.enough(s, needed)));
    double perTray = yields.stream().mapToDouble(y -> y.plantsPerTray(s)).average().orElse(0);
    Integer byMean = perTray > 0 ? (int) Math.min(tried, Math.ceil(needed / perTray)) : null;
    return new ForSowing(
        sowing,
        crop,
        least(enough, chance, tried),
        tried,
        chanceWith(enough, sowing.trays()),
        inHouse[s],
        chanceWith(enough, tried),
        perTray,
        byMean,
        byMean == null ? null : chanceWith(enough, byMean),
        bySeed(crop, needed),
        byMoney(sowing, s, enough, perTray, tried));
  }

  /** Share of seasons in which so many trays are enough. */
  private static double chanceWith(Counts enough, int trays) {
    return enough.share(e -> e <= trays);
  }

  /** The fewest trays that are enough with a chance; null where those tried are not. */
  private static @Nullable Integer least(Counts enough, double chance, int tried) {
    int trays = enough.reached(chance);
    return trays > tried ? null : (Integer) trays;
  }

  private @Nullable Integer bySeed(Crop crop, int needed) {
    if (crop.germination().rate() == 0 && needed > 0) {
      return null;
    }
    OptionalInt cells =
        new SeedMargin(crop.germination(), crop.seedsPerCell()).cells(needed, chance);
    return cells.isPresent() ? (Integer) cells.getAsInt() : null;
  }

  private @Nullable ByMoney byMoney(
      Sowing sowing, int s, Counts enough, double perTray, int tried) {
    Prices prices = scenario.prices();
    if (prices == null || perTray == 0) {
      return null;
    }
    Prices.PlantPrices price = prices.of(sowing.crop());
    double potTrays =
        yields.stream().mapToDouble(y -> y.potTrays(s, tried) / (double) tried).average().orElse(0);
    double plant =
        (prices.trayOf(sowing.crop()).doubleValue() + potTrays * prices.potTray().doubleValue())
            / perTray;
    double worth = price.worth().doubleValue();
    Newsvendor costs =
        new Newsvendor(
            worth + price.lacking().doubleValue() - plant,
            plant - (prices.sellSurplus() ? worth : 0));
    double ratio = costs.criticalRatio();
    Integer trays = ratio >= 1 ? null : ratio <= 0 ? (Integer) 0 : least(enough, ratio, tried);
    return new ByMoney(costs, trays);
  }
}
