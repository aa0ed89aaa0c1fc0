package propcap.farm;

/**
 * A place with room for trays.
 *
 * @param spaces how many trays fit; 0 is a closed place
 * @param stretchLossPerDay chance a day, 0 to 1, that a seedling is lost that stays here after its
 *     tray was ready to leave the heat
 */
public record Place(
    String name, PlaceKind kind, int spaces, Climate climate, double stretchLossPerDay) {
  public Place {
    Checks.require(!name.isBlank(), "a place needs a name");
    Checks.atLeast(0, "spaces of " + name, spaces);
    Checks.probability("stretch-loss of " + name, stretchLossPerDay);
  }

  public Place withSpaces(int newSpaces) {
    return new Place(name, kind, newSpaces, climate, stretchLossPerDay);
  }

  public boolean isOpen() {
    return spaces > 0;
  }
}
