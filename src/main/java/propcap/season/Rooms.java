package propcap.season;

/** The rooms of all places, by the places' numbers. */
final class Rooms {
  private final Room[] rooms;
  private int noted;

  Rooms(SeasonPlan plan) {
    rooms = new Room[plan.places()];
    for (int p = 0; p < rooms.length; p++) {
      rooms[p] = new Room(plan.place(p).name(), plan.place(p).spaces());
    }
  }

  int count() {
    return rooms.length;
  }

  Room of(int place) {
    return rooms[place];
  }

  /** The first of some places with so many spaces free; -1 if there is none. */
  int firstWithRoom(int[] places, int spaces) {
    for (int place : places) {
      if (rooms[place].free() >= spaces) {
        return place;
      }
    }
    return -1;
  }

  /** Notes the use of each place, which has not changed since the last round, up to a day. */
  void noteUse(Notebook notes, int before) {
    for (int p = 0; p < rooms.length; p++) {
      notes.used(p, noted, before, rooms[p].used());
    }
    noted = before;
  }
}
