package propcap.web.question;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.study.forecast.Forecast;
import propcap.study.statistics.Difference;

/** What came of a scenario before it was changed last. */
final class BeforeChange {
  private @Nullable Tried before;
  private @Nullable Tried now;

  /** Of one scenario, the plants on time spring by spring, of as many as were tried. */
  private record Tried(Path file, Scenario scenario, List<Long> onTime) {}

  /**
   * Takes a forecast. One of the same scenario is no change, as where another is put beside it.
   *
   * @return how it differs from that before the change, on the springs that both have; empty where
   *     there was none
   */
  synchronized Optional<Difference> take(Path file, Forecast forecast) {
    Tried last = now;
    if (last == null || !last.file().equals(file)) {
      before = null;
    } else if (!last.scenario().equals(forecast.scenario())) {
      before = last;
    }
    now = new Tried(file, forecast.scenario(), forecast.onTimeBySpring());
    return Optional.ofNullable(before).map(was -> forecast.onTimeMoreThan(was.onTime()));
  }
}
