package propcap.evidence.germination;

import java.util.Comparator;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
import propcap.farm.CountedTray;

/** What a germination test tells of each lot. */
public record GerminationFit(List<Lot> lots) {
  /** Planning default: no sowing is another one for so small a difference. */
  private static final double TWO_POINTS = 0.02;

  public GerminationFit {
    lots = List.copyOf(lots);
  }

  /** Why no base temperature can be told. */
  public enum NoBase {
    /** Fewer than two temperatures with enough inspections. */
    ONE_TEMPERATURE,
    /** The fastest temperature is the coldest: all others lie above the optimum. */
    COLDEST_IS_FASTEST,
    /** Of two temperatures that are left below the optimum the warmer may not be below it. */
    OPTIMUM_TOO_NEAR,
    /** Seedlings are hardly slower in the cold. */
    COLD_DOES_NOT_SLOW,
    /** The line would have the base where water freezes. */
    BELOW_FREEZING,
    /** One line through the temperatures fits poorly by its own test. */
    FITS_POORLY
  }

  /**
   * A lot of seed.
   *
   * @param temperatures rising
   * @param trayCorrelation null where no two trays are alike in lot and temperature
   * @param thermal null where no base can be told
   * @param noBase why not; null where one can
   */
  public record Lot(
      String crop,
      String lot,
      List<AtTemperature> temperatures,
      @Nullable Estimate trayCorrelation,
      @Nullable ThermalFit thermal,
      @Nullable NoBase noBase) {
    public Lot {
      temperatures = List.copyOf(temperatures);
    }

    public int seeds() {
      return temperatures.stream().mapToInt(AtTemperature::seeds).sum();
    }

    /**
     * The best temperature: where most come up, and of those that come within two points of it the
     * one at which half of them come first. Tests that ended early, or that tell no curve, are left
     * aside where there are others.
     */
    public AtTemperature best() {
      List<AtTemperature> telling =
          Stream.<Predicate<AtTemperature>>of(
                  at -> at.lognormal() != null && !at.germinating().endedEarly(),
                  at -> at.lognormal() != null,
                  at -> true)
              .map(asked -> temperatures.stream().filter(asked).toList())
              .filter(found -> !found.isEmpty())
              .findFirst()
              .orElseThrow();
      double most =
          telling.stream().mapToDouble(at -> at.germinating().share().value()).max().orElseThrow();
      return telling.stream()
          .filter(at -> at.germinating().share().value() >= most - TWO_POINTS)
          .min(
              Comparator.comparingDouble(AtTemperature::halfByDays)
                  .thenComparingDouble(at -> -at.germinating().share().value()))
          .orElseThrow();
    }
  }

  /** A shape that was tried, and Akaike's criterion of it. */
  public record TriedFamily(CurveFamily family, double akaike) {}

  /**
   * A lot at one temperature.
   *
   * @param germinating share of the seeds that ever show; of trays that were counted once, that had
   *     shown by then
   * @param lognormal the curve that the simulator takes; null where none can be told
   * @param best the curve of the least Akaike criterion; null likewise
   */
  public record AtTemperature(
      double tempC,
      List<CountedTray> trays,
      GerminatingShare germinating,
      @Nullable CurveFit lognormal,
      @Nullable CurveFit best,
      List<TriedFamily> tried) {
    public AtTemperature {
      trays = List.copyOf(trays);
      tried = List.copyOf(tried);
    }

    /** Endless where no curve can be told. */
    private double halfByDays() {
      return lognormal == null ? Double.POSITIVE_INFINITY : lognormal.halfByDays().value();
    }

    public int seeds() {
      return trays.stream().mapToInt(CountedTray::seeds).sum();
    }

    public int emerged() {
      return trays.stream().mapToInt(CountedTray::emerged).sum();
    }

    public double lastDays() {
      return trays.stream().mapToDouble(CountedTray::lastDays).max().orElse(0);
    }
  }
}
