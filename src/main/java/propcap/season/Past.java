package propcap.season;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.LoggedEvent;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;

/** What was done on the rounds of the days that are past, in the order of a round. */
final class Past {
  private static final int NOWHERE = -1;

  /** A tray that was sown, and its line of the plan. */
  record Known(SeasonPlan.Line line, TrayPast tray) {
    int rank() {
      return line.rank(tray.number(), tray.attempt());
    }
  }

  /**
   * Something that was done.
   *
   * @param turn within its day
   * @param place where the tray stands after it, by number
   * @param counted plants; {@link #NOT_COUNTED}: not
   * @param atLeast plants that it must have had, for so many were counted then or later, or it was
   *     moved on
   */
  record Done(
      Known known, LoggedEvent event, int day, int turn, int place, int counted, int atLeast) {
    boolean isCounted() {
      return counted != NOT_COUNTED;
    }
  }

  static final int NOT_COUNTED = -1;

  private final List<Known> trays = new ArrayList<>();
  private final List<Done> done = new ArrayList<>();

  Past(SeasonPlan plan, @Nullable SoFar soFar) {
    if (soFar == null) {
      return;
    }
    List<String> ids = plan.scenario().sowings().stream().map(Sowing::id).toList();
    for (TrayPast tray : soFar.trays()) {
      int sowing = ids.indexOf(tray.sowing());
      // A sowing that a what-if leaves out stands nowhere.
      if (sowing >= 0) {
        Known known = new Known(plan.line(sowing), tray);
        trays.add(known);
        add(plan, known);
      }
    }
    done.sort(Comparator.comparingInt(Done::day).thenComparingInt(Done::turn));
  }

  private void add(SeasonPlan plan, Known known) {
    List<TrayPast.Move> moves = known.tray().moves();
    int atLeast = 0;
    int[] least = new int[moves.size()];
    for (int i = moves.size() - 1; i >= 0; i--) {
      TrayPast.Move move = moves.get(i);
      boolean isCount =
          move.event() != LoggedEvent.COUNTED && move.event() != LoggedEvent.THROWN_OUT;
      Integer plants = move.plants();
      if (isCount && plants != null) {
        atLeast = Math.max(atLeast, plants);
      } else if (isCount && move.event().isMove() && move.event() != LoggedEvent.OFF_HEAT) {
        atLeast = Math.max(atLeast, 1);
      }
      least[i] = atLeast;
    }
    int turn = -1;
    int day = -1;
    for (int i = 0; i < moves.size(); i++) {
      TrayPast.Move move = moves.get(i);
      // What was only looked at comes before all moves: it is on no list of them.
      turn = Math.max(move.day() == day ? turn : -1, LoggedEvent.ROUND.indexOf(move.event()));
      day = move.day();
      Integer plants = move.plants();
      done.add(
          new Done(
              known,
              move.event(),
              day,
              turn,
              move.place() == null ? NOWHERE : plan.placeNamed(move.place()),
              plants == null ? NOT_COUNTED : plants,
              least[i]));
    }
  }

  /** Trays that were sown. */
  List<Known> trays() {
    return trays;
  }

  /** All that was done, in its order. */
  List<Done> done() {
    return done;
  }
}
