package propcap.farm;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

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

  /**
   * The first event after which it can take a tray; itself where it is the first of all.
   *
   * @param potting when the tray's crop is potted on: what always is goes out in pots alone
   */
  public LoggedEvent after(Crop.PottingOn.When potting) {
    return switch (this) {
      case SOWN, COUNTED, OFF_HEAT, THROWN_OUT -> SOWN;
      case OUTBREAK, READY, POTTED_ON -> OFF_HEAT;
      case MOVED_OUT -> potting == Crop.PottingOn.When.ALWAYS ? POTTED_ON : OFF_HEAT;
      case PLANTED_OUT -> MOVED_OUT;
    };
  }

  /**
   * Whether a tray that had another last is where this one takes trays from.
   *
   * @param potting when the tray's crop is potted on
   */
  public boolean takes(LoggedEvent last, Crop.PottingOn.When potting) {
    return canFollow(last) && last.compareTo(after(potting)) >= 0 && !last.isLast();
  }

  /** Whether it may come more than once in the life of a tray. */
  public boolean mayComeAgain() {
    return this == COUNTED;
  }

  /** Whether the tray stands elsewhere after it, or nowhere. */
  public boolean isMove() {
    return ROUND.contains(this);
  }

  /** The only kind of place where a tray can stand after it; empty where there are others. */
  public Optional<PlaceKind> standsOn() {
    return switch (this) {
      case OFF_HEAT, POTTED_ON -> Optional.of(PlaceKind.TABLE);
      case MOVED_OUT -> Optional.of(PlaceKind.HARDENING);
      default -> Optional.empty();
    };
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
