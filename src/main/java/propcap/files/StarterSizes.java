package propcap.files;

import java.util.List;

/**
 * How many trays a first farm has room for: its heat is mats, without a chamber.
 *
 * @param onHeat where trays germinate
 * @param onTables where seedlings grow on
 * @param hardening outdoors
 */
public record StarterSizes(int onHeat, int onTables, int hardening) {
  private static final int MOST = 99_999;

  public StarterSizes {
    for (int spaces : List.of(onHeat, onTables, hardening)) {
      if (spaces < 1 || spaces > MOST) {
        throw new IllegalArgumentException(
            "room for trays must be from 1 to " + MOST + ", was " + spaces);
      }
    }
  }

  /** A file of the first set, with these sizes. */
  String changed(String name, String text) {
    return switch (name) {
      case "scenario.yaml" -> scenario(text);
      // A crop's list of places names the chamber first or last; notes tell of it all the same.
      case "crops.yaml" -> text.replace("[Chamber, ", "[").replace(", Chamber]", "]");
      case "log.csv" -> text.replace(",Chamber,", ",Mats,");
      default -> text;
    };
  }

  private String scenario(String text) {
    String sized = put(text, "  - \\{name: Chamber, [^\n]*\n", "");
    sized =
        put(
            sized,
            "The 8 % and 2 % here are planning defaults",
            "The 2 % here is a planning default");
    sized = spaces(sized, "Mats", onHeat);
    sized = spaces(sized, "House", onTables);
    return spaces(sized, "Yard", hardening);
  }

  private static String spaces(String text, String place, int spaces) {
    return put(text, "(\\{name: " + place + ", kind: [a-z-]+, spaces: )\\d+", "$1" + spaces);
  }

  private static String put(String text, String old, String now) {
    String changed = text.replaceFirst(old, now);
    if (changed.equals(text) && !now.startsWith("$")) {
      throw new IllegalStateException("the starter's scenario lacks " + old);
    }
    return changed;
  }
}
