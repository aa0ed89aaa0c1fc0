package propcap.farm;

import java.time.LocalDate;
import java.util.function.UnaryOperator;
import org.jspecify.annotations.Nullable;

/** Sowings that are as others but for one thing. */
public final class Sowings {
  private Sowings() {}

  /** A scenario with each of its sowings changed. */
  public static Scenario each(Scenario scenario, UnaryOperator<Sowing> change) {
    return scenario.withSowings(scenario.sowings().stream().map(change).toList());
  }

  public static Sowing needing(Sowing s, int plants) {
    return changed(s, plants, s.resowUntil(), s.leeway());
  }

  public static Sowing with(Sowing s, Sowing.Leeway leeway) {
    return changed(s, s.plantsNeeded(), s.resowUntil(), leeway);
  }

  /** Where there is no day, a tray of it that fails is not sown again. */
  public static Sowing sownAgainUntil(Sowing s, @Nullable LocalDate day) {
    return changed(s, s.plantsNeeded(), day, s.leeway());
  }

  private static Sowing changed(
      Sowing s, int plants, @Nullable LocalDate again, Sowing.Leeway leeway) {
    return new Sowing(
        s.id(),
        s.crop(),
        s.lot(),
        s.sow(),
        s.trays(),
        plants,
        s.bedFrom(),
        s.bedBy(),
        s.bedUntil(),
        again,
        s.germinateIn(),
        leeway);
  }
}
