package propcap.season;

import java.util.stream.IntStream;
import propcap.chance.DrawPurpose;
import propcap.chance.SeasonLuck;
import propcap.chance.ThermalClock;
import propcap.chance.TrayLuck;
import propcap.farm.Crop;

/**
 * What a tray can have in the bed at the very most, whenever it is sown and wherever it stands: the
 * cells that fill, less what every tray loses on its way (growing on, damping-off, the move to pots
 * where it must make it, hardening off).
 *
 * <p>No season passes it. Each of those losses is the inverse of a uniform that is the tray's own,
 * so that of fewer plants never more are left; and all other losses (no room, heat, frost, time)
 * only make fewer of them.
 */
public final class TraysAtBest {
  private final SeasonPlan plan;

  /**
   * By sowing: warmth, degree days, that a tray has at the least by the day on which it is pulled;
   * infinite where the season ends before.
   */
  private final double[] leastWarmth;

  /** Trays of a plan at their best; only days, trays and first places may differ from it. */
  public TraysAtBest(SeasonPlan plan) {
    this.plan = plan;
    leastWarmth = IntStream.range(0, plan.sowings()).mapToDouble(this::leastWarmth).toArray();
  }

  private double leastWarmth(int sowing) {
    SeasonPlan.Line line = plan.line(sowing);
    double pullAfter = line.crop.pullAfterDays();
    double least = Double.POSITIVE_INFINITY;
    for (int year = 0; year < plan.scenario().weather().size(); year++) {
      for (int place : line.germinateIn) {
        ThermalClock clock = plan.clocks(year).emergence(line.cropNumber, place);
        for (int day = 0; plan.place(place).isOpen() && day + pullAfter < plan.days(); day++) {
          double at = plan.roundAt(day);
          least = Math.min(least, clock.at(at + pullAfter) - clock.at(at));
        }
      }
    }
    // Less what rounding may take off.
    return least - 1e-6;
  }

  /** Plants at the most of a tray's first sowing. */
  public int plants(SeasonLuck luck, int sowing, int tray) {
    return plants(sowing, luck.tray(sowing, tray, 0));
  }

  /** The most plants of the times that it may be sown again; 0 where it never is. */
  public int plantsSownAgain(SeasonLuck luck, int sowing, int tray) {
    int most = 0;
    boolean mayFail = mayFail(sowing, luck.tray(sowing, tray, 0));
    for (int attempt = 1; mayFail && attempt <= mostAgain(sowing); attempt++) {
      TrayLuck again = luck.tray(sowing, tray, attempt);
      most = Math.max(most, plants(sowing, again));
      mayFail = mayFail(sowing, again);
    }
    return most;
  }

  /**
   * Whether a tray may be pulled with too few showing: not where the coldest place shows enough.
   */
  private boolean mayFail(int sowing, TrayLuck luck) {
    double warmth = leastWarmth[sowing];
    return Double.isFinite(warmth)
        && luck.showingBy(Math.max(0, warmth)) < plan.line(sowing).crop.cellsNotToFail();
  }

  /** A tray is pulled no sooner than its crop's days after it was sown. */
  private int mostAgain(int sowing) {
    SeasonPlan.Line line = plan.line(sowing);
    return (int) Math.floor((line.resowUntil - line.sowDay + 1e-6) / line.crop.pullAfterDays());
  }

  private int plants(int sowing, TrayLuck luck) {
    Crop crop = plan.line(sowing).crop;
    int plants = luck.fills();
    plants -= luck.lost(DrawPurpose.LOSS, plants, crop.growingOn().loss());
    plants -= luck.lost(DrawPurpose.DAMPED_OFF, plants, luck.severity());
    if (crop.pottingOn().when() == Crop.PottingOn.When.ALWAYS) {
      plants -= luck.lost(DrawPurpose.POTTING, plants, crop.pottingOn().loss());
    }
    return plants - luck.lost(DrawPurpose.HARDENING, plants, crop.hardening().loss());
  }
}
