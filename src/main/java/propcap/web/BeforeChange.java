package propcap.web;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.study.Difference;
import propcap.study.Forecast;

/** What came of a scenario before it was changed last, by how many springs were tried. */
final class BeforeChange {
  private @Nullable Tried before;
  private @Nullable Tried now;

  /** Of one scenario, the plants on time of each spring. */
  private record Tried(Path file, Scenario scenario, Map<Integer, double[]> onTime) {}

  /**
   * Takes a forecast. One of the same scenario is no change, as where another is put beside it.
   *
   * @return how it differs from that before the change, on the same springs; empty where there was
   *     none, or none of so many
   */
  synchronized Optional<Difference> take(Path file, Forecast forecast) {
    Tried last = now;
    boolean isOfFile = last != null && last.file().equals(file);
    Tried tried = last;
    if (tried == null || !isOfFile || !tried.scenario().equals(forecast.scenario())) {
      before = isOfFile ? last : null;
      tried = new Tried(file, forecast.scenario(), new HashMap<>());
      now = tried;
    }
    double[] springs = forecast.onTimeBySpring();
    tried.onTime().put(springs.length, springs);
    return Optional.ofNullable(before)
        .map(other -> other.onTime().get(springs.length))
        .map(was -> forecast.onTimeMoreThan(was));
  }
}
