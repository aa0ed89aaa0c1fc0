package propcap.study.plan;

import java.util.Arrays;
import java.util.List;
import java.util.NavigableMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.chance.SeasonLuck;
import propcap.farm.Crop;
import propcap.farm.Labour;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.WorkKind;
import propcap.season.SeasonPlan;
import propcap.season.TraysAtBest;

/**
 * What no plan passes, by the seed alone: each sowing has the plants that its trays can have {@link
 * TraysAtBest at the very most}, all of them on time, and pays for its trays, its pots and the
 * hands that sow and plant them, but for no place. Days, places and room do not come into it.
 *
 * <p>It holds in each spring for each plan that sows all its trays; a tray that stays unsown saves
 * its cost besides. The mean of the springs is then the largest over the numbers of trays, sowing
 * by sowing.
 */
final class PlanUpperBound {
  private final List<Choice> choices;
  private final TraysAtBest best;
  private final boolean isMoney;
  private final double[] needed;

  /** Of a sowing's plant: worth up to those needed, of one that is lacking, worth beyond. */
  private final double[] plant;

  private final double[] lacking;
  private final double[] surplus;
  private final double[] tray;

  /** What hours that end unpaid with the season are worth at the most. */
  final double unpaid;

  /** A bound of the plans of a scenario that may be chosen. */
  PlanUpperBound(Scenario scenario, List<Choice> choices) {
    this.choices = choices;
    best = new TraysAtBest(new SeasonPlan(scenario));
    int n = choices.size();
    needed = choices.stream().mapToDouble(c -> c.sowing().plantsNeeded()).toArray();
    plant = new double[n];
    lacking = new double[n];
    surplus = new double[n];
    tray = new double[n];
    Prices prices = scenario.prices();
    isMoney = prices != null;
    if (prices == null) {
      Arrays.fill(tray, 1);
      unpaid = 0;
      return;
    }
    double hour = prices.hour().doubleValue();
    Labour.Minutes minutes = scenario.labour().minutes();
    for (int s = 0; s < n; s++) {
      Sowing sowing = choices.get(s).sowing();
      Crop crop = scenario.cropOf(sowing);
      Prices.PlantPrices price = prices.of(sowing.crop());
      double planted = hour * minutes.hours(WorkKind.PLANT_OUT, 1);
      if (crop.pottingOn().when() == Crop.PottingOn.When.ALWAYS) {
        planted += hour * minutes.hours(WorkKind.POT_ON, 1);
        planted += prices.potTray().doubleValue() / crop.pottingOn().potsPerTray();
      }
      double sold = price.worth().max(price.late()).doubleValue() - planted;
      lacking[s] = price.lacking().doubleValue();
      plant[s] = Math.max(0, sold + lacking[s]);
      surplus[s] = prices.sellSurplus() ? Math.max(0, sold) : 0;
      tray[s] = prices.trayOf(sowing.crop()).doubleValue() + hour * minutes.hours(WorkKind.SOW, 1);
    }
    unpaid = scenario.labour().isLimited() ? hour * longestPiece(scenario) : 0;
  }

  /** Work is begun while anything is left of a day: at the season's end one piece may be owed. */
  private static double longestPiece(Scenario scenario) {
    int cells = scenario.crops().values().stream().mapToInt(Crop::cells).max().orElse(0);
    return Arrays.stream(WorkKind.values())
        .mapToDouble(w -> scenario.labour().minutes().hours(w, Math.max(1, cells)))
        .max()
        .orElse(0);
  }

  /**
   * One spring at its best.
   *
   * @param worth by sowing and number of trays, from 0
   * @param met the same: whether the plants needed can be had
   */
  @SuppressWarnings("ArrayRecordComponent") // Read at once and thrown away: nobody compares it.
  record Spring(double[][] worth, boolean[][] met) {}

  Spring spring(SeasonLuck luck) {
    int n = choices.size();
    Spring spring = new Spring(new double[n][], new boolean[n][]);
    for (int s = 0; s < n; s++) {
      int most = choices.get(s).mostTrays();
      spring.worth[s] = new double[most + 1];
      spring.met[s] = new boolean[most + 1];
      TreeMap<Integer, Integer> more = new TreeMap<>();
      int plants = 0;
      int withAgain = 0;
      for (int trays = 0; trays <= most; trays++) {
        spring.worth[s][trays] = isMoney ? worth(s, trays, plants, more) : -trays;
        spring.met[s][trays] = withAgain >= needed[s];
        if (trays < most) {
          int first = best.plants(luck, s, trays);
          int again = Math.max(first, best.plantsSownAgain(luck, s, trays));
          if (again > first) {
            more.merge(again - first, 1, Integer::sum);
          }
          plants += first;
          withAgain += again;
        }
      }
    }
    return spring;
  }

  /**
   * The best that may come of some trays.
   *
   * @param more plants that a tray would have more if it were sown again, which costs a tray: how
   *     many trays there are of each number
   */
  private double worth(int s, int trays, int plants, NavigableMap<Integer, Integer> more) {
    double most = worth(s, plants) - tray[s] * trays;
    double sum = plants;
    int sown = trays;
    for (int gain : more.descendingMap().keySet()) {
      for (int i = 0; i < more.getOrDefault(gain, 0); i++) {
        sum += gain;
        sown++;
        most = Math.max(most, worth(s, sum) - tray[s] * sown);
      }
    }
    return most;
  }

  private double worth(int s, double plants) {
    return plant[s] * Math.min(plants, needed[s])
        + surplus[s] * Math.max(0, plants - needed[s])
        - lacking[s] * needed[s];
  }

  /** What no plan passes in the mean, by spring. */
  double[] most(List<Spring> springs) {
    double[] most = new double[springs.size()];
    Arrays.fill(most, unpaid);
    for (int s = 0; s < choices.size(); s++) {
      int trays = mostWorth(s, springs);
      for (int i = 0; i < most.length; i++) {
        most[i] += springs.get(i).worth[s][trays];
      }
    }
    return most;
  }

  private int mostWorth(int s, List<Spring> springs) {
    int found = 0;
    double most = Double.NEGATIVE_INFINITY;
    for (int trays = 0; trays <= choices.get(s).mostTrays(); trays++) {
      int k = trays;
      double worth = springs.stream().mapToDouble(o -> o.worth[s][k]).sum();
      if (worth > most) {
        most = worth;
        found = trays;
      }
    }
    return found;
  }

  /** Share of the springs in which so many trays can have the plants that a sowing needs. */
  double chance(int s, int trays, List<Spring> springs) {
    return springs.stream().filter(o -> o.met[s][trays]).count() / (double) springs.size();
  }

  /** The fewest trays that can reach a sowing's goal; none where not even all that it may have. */
  @Nullable Integer fewest(int s, List<Spring> springs) {
    return IntStream.rangeClosed(0, choices.get(s).mostTrays())
        .filter(trays -> chance(s, trays, springs) >= choices.get(s).goal())
        .boxed()
        .findFirst()
        .orElse(null);
  }
}
