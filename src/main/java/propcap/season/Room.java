package propcap.season;

/** A place while a season runs: how many of its spaces are taken. */
final class Room {
  private final String name;
  private final int spaces;
  private int used;

  Room(String name, int spaces) {
    this.name = name;
    this.spaces = spaces;
  }

  int free() {
    return spaces - used;
  }

  int used() {
    return used;
  }

  void take(int trays) {
    if (trays > spaces - used) {
      throw new IllegalStateException(name + " has no room for " + trays + " trays more");
    }
    used += trays;
  }

  /** Takes trays whether there is room or not: a grower can overfill a table. */
  void squeezeIn(int trays) {
    used += trays;
  }

  void leave(int trays) {
    if (trays > used) {
      throw new IllegalStateException(trays + " trays leave " + name + ", which holds " + used);
    }
    used -= trays;
  }
}
