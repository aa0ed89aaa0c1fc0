package propcap.farm;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * What was written down of one tray this season, and what follows from it by the rules of the
 * round: a tray that stood where it was, though there was room for it further on, was not due. Days
 * are those of the season, by number; what is said of a day is said of its round.
 *
 * @param sowing id of its sowing
 * @param name as the grower calls it
 * @param number of the tray in its sowing, from 0; one sown again has that of the one that failed
 * @param attempt 0; 1 and more where it was sown again
 * @param moves in the order of their days
 * @param notDueInHeat the last day on which it could have left the heat and did not; -1: none
 * @param readyAfter the last time, days after the round of day 0, at which the plug cannot have
 *     been ready; negative infinity: nothing is known
 * @param readyBy the first by which it must have been; infinity: it may not be yet
 */
public record TrayPast(
    String sowing,
    String name,
    int number,
    int attempt,
    List<Move> moves,
    int notDueInHeat,
    double readyAfter,
    double readyBy)
    implements Serializable {
  /**
   * A line of the log.
   *
   * @param plants alive in this tray; null: not counted
   * @param place where it stands after it; null after it was planted or thrown out
   * @param spaces that it fills there
   */
  public record Move(
      LoggedEvent event, int day, @Nullable Integer plants, @Nullable String place, int spaces)
      implements Serializable {}

  public TrayPast {
    moves = List.copyOf(moves);
    Checks.require(
        !moves.isEmpty() && moves.get(0).event() == LoggedEvent.SOWN, name + " was never sown");
  }

  public Optional<Move> at(LoggedEvent event) {
    return moves.stream().filter(m -> m.event() == event).findFirst();
  }

  /** The day of an event. */
  public OptionalInt day(LoggedEvent event) {
    return moves.stream().filter(m -> m.event() == event).mapToInt(Move::day).findFirst();
  }

  /** Whether it was thrown out before it had left the heat. */
  public boolean failed() {
    return at(LoggedEvent.THROWN_OUT).isPresent() && at(LoggedEvent.OFF_HEAT).isEmpty();
  }

  /** The event after which it stands where it does now: {@code SOWN} while it is in the heat. */
  public LoggedEvent lastMove() {
    return moves.stream()
        .map(Move::event)
        .filter(LoggedEvent::isMove)
        .reduce((earlier, later) -> later)
        .orElseThrow();
  }

  /** What was written of it last. */
  public LoggedEvent lastEvent() {
    return last().event();
  }

  /** Whether it has left the house, into the bed or thrown out. */
  public boolean isGone() {
    return lastEvent().isLast();
  }

  /** Where it stands now; empty where it is gone. */
  public Optional<String> standsIn() {
    return isGone() ? Optional.empty() : Optional.ofNullable(last().place());
  }

  /** Spaces that it fills now. */
  public int spaces() {
    return isGone() ? 0 : last().spaces();
  }

  private Move last() {
    return moves.get(moves.size() - 1);
  }

  /** This tray, thrown out after a day's round. */
  public TrayPast thrownOut(int day) {
    List<Move> more = new ArrayList<>(moves);
    more.add(new Move(LoggedEvent.THROWN_OUT, day, null, null, 0));
    return new TrayPast(sowing, name, number, attempt, more, notDueInHeat, readyAfter, readyBy);
  }
}
