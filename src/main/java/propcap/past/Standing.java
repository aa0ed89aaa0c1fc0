package propcap.past;

import org.jspecify.annotations.Nullable;
import propcap.past.WrittenTray.Entry;

/** Where a tray of a log stands, and how much of the place it fills. */
final class Standing {
  private final Spaces spaces;
  private int place = Spaces.NOWHERE;
  private int fills;

  /** As the plants that took are counted, and not those that were potted, it may fill more. */
  private int fillsAtMost;

  Standing(Spaces spaces) {
    this.spaces = spaces;
  }

  boolean isIn(int where) {
    return place == where;
  }

  boolean isOnATable() {
    return spaces.isTable(place);
  }

  /** The place's name; null: it stands nowhere. */
  @Nullable String name() {
    return place == Spaces.NOWHERE ? null : spaces.name(place);
  }

  int fills() {
    return fills;
  }

  int fillsAtMost() {
    return fillsAtMost;
  }

  /** Where an entry has it, or else the first of some places with room, or at last the first. */
  void moveTo(Entry entry, int[] of, int needs, int atMost) {
    String written = entry.place();
    int found = written == null ? spaces.firstWithRoom(of, needs) : spaces.named(written);
    stand(found == Spaces.NOWHERE ? of[0] : found, needs, atMost);
  }

  /** The same on the tables; it stays on its own where nothing else is written. */
  void moveToATable(Entry entry) {
    if (entry.place() == null && isOnATable()) {
      stand(place, 1, 1);
    } else {
      moveTo(entry, spaces.tables(), 1, 1);
    }
  }

  /** The same as pots, on its own table where they have room there or nowhere. */
  void moveAsPots(Entry entry, int needs, int atMost) {
    if (entry.place() == null
        && (spaces.free(place) + 1 >= needs
            || spaces.firstWithRoom(spaces.tables(), needs) == Spaces.NOWHERE)) {
      stand(place, needs, atMost);
    } else {
      moveTo(entry, spaces.tables(), needs, atMost);
    }
  }

  /** Whether there is surely room for so many trays of pots, on its own table or another. */
  boolean surelyHasRoomAsPots(int needs) {
    return spaces.surelyFree(place) + 1 >= needs || spaces.surelyHasRoom(spaces.tables(), needs);
  }

  private void stand(int in, int needs, int atMost) {
    leave();
    place = in;
    fills = needs;
    fillsAtMost = atMost;
    spaces.take(in, needs, atMost);
  }

  void leave() {
    if (place != Spaces.NOWHERE) {
      spaces.leave(place, fills, fillsAtMost);
    }
    standNowhere();
  }

  /** Leaves at a turn of the round that the log does not tell. */
  void throwOut() {
    if (place != Spaces.NOWHERE) {
      spaces.throwOut(place, fills, fillsAtMost);
    }
    standNowhere();
  }

  private void standNowhere() {
    place = Spaces.NOWHERE;
    fills = 0;
    fillsAtMost = 0;
  }
}
