package propcap.files.edit;

import java.util.List;
import propcap.files.edit.YamlText.Step;

/**
 * How many trays a first farm has room for: its heat is mats, without a chamber.
 *
 * @param onHeat where trays germinate
 * @param onTables where seedlings grow on
 * @param hardening outdoors
 */
public record StarterSizes(int onHeat, int onTables, int hardening) {
  /** More trays than these no first farm has. */
  public static final int MOST = 99_999;

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
    String sized = YamlText.remove(text, PlaceKeys.of("Chamber"));
    String notes =
        sized.replace(
            "The 8 % and 2 % here are planning defaults", "The 2 % here is a planning default");
    return spaces(spaces(spaces(notes, "Mats", onHeat), "House", onTables), "Yard", hardening);
  }

  private static String spaces(String text, String name, int spaces) {
    return YamlText.set(
        text, Step.below(PlaceKeys.of(name), Step.to("spaces")), Integer.toString(spaces));
  }
}
