package propcap.files;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import propcap.farm.Labour;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.Variants.Setting;
import propcap.files.scenario.PlaceFields;
import propcap.files.text.Fields;
import propcap.files.text.Quantity;

/**
 * What one column of a table of changes changes.
 *
 * @param head as the table has it, such as {@code shift of zinnia*}
 * @param of the place, or the ids of the sowings, where * stands for any letters
 */
record Change(String head, Kind kind, String of) {
  /** What is changed, by the words that a column begins with. */
  enum Kind {
    SPACES("spaces of "),
    SHIFT("shift of "),
    TRAYS("trays of "),
    HOURS("hours");

    final String words;

    Kind(String words) {
      this.words = words;
    }
  }

  /**
   * A cell.
   *
   * @param number spaces, trays, days or hours; of trays as a share, percent
   * @param isShare whether trays are given as a share of those in the plan
   */
  record Cell(Change change, Fields fields, String written, double number, boolean isShare) {
    /** The new trays of a sowing: whole ones, and at least one. */
    int trays(Sowing sowing) {
      return isShare ? (int) Math.max(1, Math.round(sowing.trays() * number / 100)) : (int) number;
    }

    Setting setting() {
      return new Setting(written, number);
    }

    /** What it does, where the row has no name. */
    String words() {
      String count = isShare ? "% trays of " : "trays of ";
      return switch (change.kind) {
        case SPACES -> whole() + " spaces of " + change.of;
        case HOURS -> Quantity.plain(number) + " hours a day";
        case TRAYS -> whole() + " " + count + change.of;
        case SHIFT ->
            number == 0
                ? change.of + " as planned"
                : String.format(
                    Locale.ROOT,
                    "%s %.0f day%s %s",
                    change.of,
                    Math.abs(number),
                    Math.abs(number) == 1 ? "" : "s",
                    number < 0 ? "earlier" : "later");
      };
    }

    private String whole() {
      return Quantity.plain(number);
    }
  }

  /** A column's meaning; empty where its words are none of ours. */
  static Optional<Change> of(String head) {
    for (Kind kind : Kind.values()) {
      if (kind == Kind.HOURS ? head.equals(kind.words) : head.startsWith(kind.words)) {
        return Optional.of(new Change(head, kind, head.substring(kind.words.length()).strip()));
      }
    }
    return Optional.empty();
  }

  /** Whether it changes a sowing. */
  boolean isOf(Sowing sowing) {
    return Sowing.matches(of, sowing.id());
  }

  boolean isOf(Place place) {
    return kind == Kind.SPACES && of.equals(place.name());
  }

  boolean isOfSowings() {
    return kind == Kind.SHIFT || kind == Kind.TRAYS;
  }

  /** The cell of a row; empty where nothing is written or it is wrong, which is reported. */
  Optional<Cell> cell(Fields row) {
    if (row.isBlank(head)) {
      return Optional.empty();
    }
    String written = row.known().word(head);
    boolean isShare = kind == Kind.TRAYS && written.contains("%");
    double number =
        switch (kind) {
          case SPACES -> whole(row.count(head, 0, PlaceFields.MOST_SPACES), 0);
          case SHIFT -> row.number(head, Quantity.SHIFT);
          case HOURS -> row.number(head, Quantity.HOURS_PER_DAY);
          case TRAYS -> isShare ? 100 * row.number(head, Quantity.PERCENT_OF_PLAN) : trays(row);
        };
    return Double.isNaN(number)
        ? Optional.empty()
        : Optional.of(new Cell(this, row, written, number, isShare));
  }

  private static double whole(int count, int least) {
    return count < least ? Double.NaN : count;
  }

  private double trays(Fields row) {
    return row.text(
            head,
            text -> text.wholeNumber().filter(n -> n >= 1 && n <= Sowing.MOST_TRAYS),
            "trays of each sowing, such as 12, or a share such as 120 %")
        .map(Long::doubleValue)
        .orElse(Double.NaN);
  }

  /** What a scenario has in this column as it is. */
  Setting asItIs(Scenario scenario, boolean inShares) {
    return switch (kind) {
      case SPACES ->
          scenario.places().stream()
              .filter(this::isOf)
              .findFirst()
              .map(p -> new Setting("" + p.spaces(), (double) p.spaces()))
              .orElseThrow();
      case SHIFT -> new Setting("0 days", 0.0);
      case HOURS -> hours(scenario.labour());
      case TRAYS -> inShares ? new Setting("100 %", 100.0) : trays(scenario);
    };
  }

  private static Setting hours(Labour labour) {
    return labour.isLimited()
        ? new Setting(Quantity.plain(labour.hoursPerDay()) + "/day", labour.hoursPerDay())
        : new Setting("not limited", null);
  }

  private Setting trays(Scenario scenario) {
    List<Integer> trays =
        scenario.sowings().stream().filter(this::isOf).map(Sowing::trays).distinct().toList();
    return trays.size() == 1
        ? new Setting("" + trays.get(0), (double) trays.get(0))
        : new Setting("as planned", null);
  }
}
