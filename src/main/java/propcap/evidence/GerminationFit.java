package propcap.evidence;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.CountedTray;

/** What a germination test tells of each lot. */
public record GerminationFit(List<Lot> lots) {
  public GerminationFit {
    lots = List.copyOf(lots);
  }

  /** Why no base temperature can be told. */
  public enum NoBase {
    /** Fewer than two temperatures with enough inspections. */
    ONE_TEMPERATURE,
    /** The fastest temperature is the coldest: all others lie above the optimum. */
    COLDEST_IS_FASTEST,
    /** Seedlings are hardly slower in the cold. */
    COLD_DOES_NOT_SLOW
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

    /** The temperature with the shortest time to half; empty where no curve can be told. */
    public Optional<AtTemperature> fastest() {
      AtTemperature fastest = null;
      double least = Double.POSITIVE_INFINITY;
      for (AtTemperature at : temperatures) {
        CurveFit curve = at.lognormal();
        if (curve != null && curve.halfByDays().value() < least) {
          least = curve.halfByDays().value();
          fastest = at;
        }
      }
      return Optional.ofNullable(fastest);
    }
  }

  /** A shape that was tried, and Akaike's criterion of it. */
  public record Tried(CurveFamily family, double akaike) {}

  /**
   * A lot at one temperature.
   *
   * @param germinating share of the seeds that ever show; where no curve can be told, that had
   *     shown by the end
   * @param lognormal the curve that the simulator takes; null where none can be told
   * @param best the curve of the least Akaike criterion; null likewise
   */
  public record AtTemperature(
      double tempC,
      List<CountedTray> trays,
      Estimate germinating,
      @Nullable CurveFit lognormal,
      @Nullable CurveFit best,
      List<Tried> tried) {
    public AtTemperature {
      trays = List.copyOf(trays);
      tried = List.copyOf(tried);
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
