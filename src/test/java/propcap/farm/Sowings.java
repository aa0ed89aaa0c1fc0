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
        s.resowUntil(),
        s.germinateIn(),
        s.leeway());
  }

  public static Sowing with(Sowing s, Sowing.Leeway leeway) {
    return new Sowing(
        s.id(),
        s.crop(),
        s.lot(),
        s.sow(),
        s.trays(),
        s.plantsNeeded(),
        s.bedFrom(),
        s.bedBy(),
        s.bedUntil(),
        s.resowUntil(),
        s.germinateIn(),
        leeway);
  }

  /** Where there is no day, a tray of it that fails is not sown again. */
  public static Sowing sownAgainUntil(Sowing s, @Nullable LocalDate day) {
    return new Sowing(
        s.id(),
        s.crop(),
        s.lot(),
        s.sow(),
        s.trays(),
        s.plantsNeeded(),
        s.bedFrom(),
        s.bedBy(),
        s.bedUntil(),
        day,
        s.germinateIn(),
        s.leeway());
  }
}
