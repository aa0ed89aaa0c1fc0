package propcap.farm;

import java.util.Arrays;
import java.util.List;

/** What a grower writes down of a tray, in the order in which it comes. */
public enum LoggedEvent implements Worded {
  /** The tray was sown; plants are its cells. */
  SOWN,
  /** Still in the heat, it was looked at; plants are the seedlings showing so far. */
  COUNTED,
  /** It left the heat; plants are its stand, counted once the last seedlings are up. */
  OFF_HEAT,
  /** Damping-off was seen; plants are those left. */
  OUTBREAK,
  /** The grower judged the plugs ready. */
  READY,
  /** The plugs were moved to pots; plants are those that took. */
  POTTED_ON,
  MOVED_OUT,
  PLANTED_OUT,
  /** What was left of the tray was thrown out; 0 plants where all had died. */
  THROWN_OUT;

  /** The events by which degree days are counted. */
  private static final List<LoggedEvent> TIMED = List.of(OFF_HEAT, READY, POTTED_ON, MOVED_OUT);

  /** The events that move trays, in the order in which a round comes to them. */
  public static final List<LoggedEvent> ROUND =
      List.of(THROWN_OUT, PLANTED_OUT, MOVED_OUT, OFF_HEAT, POTTED_ON, SOWN);

  /** Whether it may follow another in the life of a tray: damping-off may come while plugs wait. */
  public boolean canFollow(LoggedEvent before) {
    return compareTo(before) > 0
        || (this == OUTBREAK && before == READY)
        || (this == COUNTED && before == COUNTED);
  }

  /** The first event after which it can take a tray; itself where it is the first of all. */
  public LoggedEvent after() {
    return switch (this) {
      case SOWN, COUNTED, OFF_HEAT, THROWN_OUT -> SOWN;
      case OUTBREAK, READY, POTTED_ON, MOVED_OUT -> OFF_HEAT;
      case PLANTED_OUT -> MOVED_OUT;
    };
  }

  /** Whether a tray that had another last is where this one takes trays from. */
  public boolean takes(LoggedEvent last) {
    return canFollow(last) && last.compareTo(after()) >= 0 && !last.isLast();
  }

  /** Whether it may come more than once in the life of a tray. */
  public boolean mayComeAgain() {
    return this == COUNTED;
  }

  /** Whether the tray stands elsewhere after it, or nowhere. */
  public boolean isMove() {
    return ROUND.contains(this);
  }

  /** Whether nothing comes after it. */
  public boolean isLast() {
    return this == PLANTED_OUT || this == THROWN_OUT;
  }

  /** Whether growing on is timed by it. */
  public boolean isTimed() {
    return TIMED.contains(this);
  }

  public static List<String> words() {
    return Arrays.stream(values()).map(LoggedEvent::word).toList();
  }
}
