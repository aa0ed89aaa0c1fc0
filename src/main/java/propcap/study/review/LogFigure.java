package propcap.study.review;

import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import propcap.farm.LoggedEvent;
import propcap.past.WrittenTray;
import propcap.past.WrittenTray.Entry;

/** A figure that a log gives of each of its trays. */
public enum LogFigure {
  /** Share of its cells with a seedling once the last are up. */
  STAND,
  /** Days from sowing until it was taken off the heat. */
  IN_HEAT,
  /** Days from then until it was potted on or moved out. */
  ON_TABLE,
  /** Share of the stand that was lost until it was potted on or moved out. */
  LOST_ON_TABLE,
  /** Share of the plants moved out that were lost until they were planted. */
  LOST_OUTSIDE;

  private static final Set<LoggedEvent> GONE =
      Set.of(LoggedEvent.PLANTED_OUT, LoggedEvent.THROWN_OUT);
  private static final List<LoggedEvent> OFF_TABLE =
      List.of(LoggedEvent.POTTED_ON, LoggedEvent.MOVED_OUT);

  /** Whether it is a number of days, which are whole ones in a log. */
  public boolean isDays() {
    return this == IN_HEAT || this == ON_TABLE;
  }

  /** Whether all that it takes has been: the tray made the move, or is gone. */
  boolean isOver(WrittenTray tray) {
    return end(tray).isPresent() || tray.entries().stream().anyMatch(e -> GONE.contains(e.event()));
  }

  /** The figure; empty where the move was not made, or plants were not counted. */
  OptionalDouble of(WrittenTray tray, int cells) {
    Entry from = start(tray).orElse(null);
    Entry to = end(tray).orElse(null);
    if (from == null || to == null) {
      return OptionalDouble.empty();
    }
    return switch (this) {
      case STAND -> share(to.plants(), cells);
      case IN_HEAT, ON_TABLE ->
          OptionalDouble.of((double) ChronoUnit.DAYS.between(from.date(), to.date()));
      case LOST_ON_TABLE, LOST_OUTSIDE -> lost(from.plants(), to.plants());
    };
  }

  private Optional<Entry> start(WrittenTray tray) {
    return at(
        tray,
        switch (this) {
          case STAND, IN_HEAT -> List.of(LoggedEvent.SOWN);
          case ON_TABLE, LOST_ON_TABLE -> List.of(LoggedEvent.OFF_HEAT);
          case LOST_OUTSIDE -> List.of(LoggedEvent.MOVED_OUT);
        });
  }

  private Optional<Entry> end(WrittenTray tray) {
    return at(
        tray,
        switch (this) {
          case STAND, IN_HEAT -> List.of(LoggedEvent.OFF_HEAT);
          case ON_TABLE, LOST_ON_TABLE -> OFF_TABLE;
          case LOST_OUTSIDE -> List.of(LoggedEvent.PLANTED_OUT);
        });
  }

  private static Optional<Entry> at(WrittenTray tray, List<LoggedEvent> events) {
    return tray.entries().stream().filter(e -> events.contains(e.event())).findFirst();
  }

  private static OptionalDouble share(@Nullable Integer plants, int cells) {
    return plants == null ? OptionalDouble.empty() : OptionalDouble.of((double) plants / cells);
  }

  private static OptionalDouble lost(@Nullable Integer of, @Nullable Integer left) {
    return of == null || left == null || of == 0
        ? OptionalDouble.empty()
        : OptionalDouble.of(1 - (double) left / of);
  }
}
