package propcap.files.scenario;

import java.util.List;
import java.util.Optional;
import propcap.farm.Climate;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.files.text.Faults;
import propcap.files.text.Fields;
import propcap.files.text.FilePosition;
import propcap.files.text.Node;
import propcap.files.text.Quantity;

/**
 * What is known of a place as it was written.
 *
 * @param kind empty where it could not be read
 * @param spaces less than 0 where they could not be read
 * @param place empty where anything of it could not be read
 */
public record PlaceFields(
    Node.Keyed written, Optional<PlaceKind> kind, int spaces, Optional<Place> place) {
  static final List<String> KEYS =
      List.of("name", "kind", "spaces", "climate", "stretch-loss", "cost", "like", "after");

  /** More spaces than this are a slip of the pen; sums of them stay within an int. */
  public static final int MOST_SPACES = 1_000_000;

  static PlaceFields read(String name, Node.Keyed written, Amounts amounts, Faults faults) {
    Fields fields = new Fields(name, nameSpot(written), written, KEYS, faults);
    Optional<PlaceKind> kind = fields.choice("kind", List.of(PlaceKind.values()), PlaceKind::word);
    int spaces = fields.count("spaces", 0, MOST_SPACES);
    Optional<Climate> climate =
        fields.map("climate", name + "'s climate", ClimateFields.KEYS).flatMap(ClimateFields::read);
    double stretchLoss = fields.number("stretch-loss", Quantity.PERCENT_PER_DAY, 0);
    Optional<Place.Cost> cost =
        fields.has("cost")
            ? fields
                .map("cost", name + "'s cost", CostFields.KEYS)
                .flatMap(c -> CostFields.read(c, amounts))
            : Optional.empty();
    if (kind.isEmpty() || climate.isEmpty() || (fields.has("cost") && cost.isEmpty())) {
      return new PlaceFields(written, kind, spaces, Optional.empty());
    }
    Optional<Place> place =
        fields.made(
            () ->
                new Place(name, kind.get(), spaces, climate.get(), stretchLoss, cost.orElse(null)));
    return new PlaceFields(written, kind, spaces, place);
  }

  /** Whether trays fit, or may fit: spaces that could not be read are not held against it. */
  boolean mayBeOpen() {
    return spaces != 0;
  }

  /** Whether it is of the kind, or may be. */
  boolean mayBe(PlaceKind wanted) {
    return kind.isEmpty() || kind.get() == wanted;
  }

  private static FilePosition nameSpot(Node.Keyed written) {
    return written.entry("name").map(Node.Entry::spot).orElse(written.spot());
  }
}
