package propcap.files;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * The keys of a map or the cells of a row, read as what they should be. What is wrong is reported
 * and reading goes on; a record may be made of the values only where all was {@link #sound()}.
 */
final class Fields {
  private static final Pattern DATE = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}");
  private static final Pattern WHOLE = Pattern.compile("[-+]?[0-9]{1,18}");

  private final String owner;
  private final Spot at;
  private final Node.Keyed map;
  private final Faults faults;
  private boolean sound = true;

  /**
   * Looks at a map whose keys should be among the known ones.
   *
   * @param owner whose keys they are, as in "tomato's emergence"; may be empty
   * @param at where a missing key is reported
   */
  Fields(String owner, Spot at, Node.Keyed map, List<String> known, Faults faults) {
    this.owner = owner;
    this.at = at;
    this.map = onlyKnown(map, known, faults);
    this.faults = faults;
    if (map.open()) {
      sound = false;
    }
  }

  /**
   * Reports the keys that are not known. A known key that is missing and was nearly written counts
   * as unread, so that it is not reported twice.
   */
  static Node.Keyed onlyKnown(Node.Keyed map, List<String> known, Faults faults) {
    Map<String, Node.Entry> kept = new LinkedHashMap<>(map.entries());
    kept.keySet().retainAll(known);
    for (var written : map.entries().entrySet()) {
      String key = written.getKey();
      Spot spot = written.getValue().spot();
      if (!known.contains(key) && !faults.isFull(spot.file())) {
        faults.add(spot, "unknown key " + Words.shown(key), Words.oneOf(key, known));
        Words.nearest(key, known)
            .ifPresent(
                meant -> kept.putIfAbsent(meant, new Node.Entry(spot, new Node.Unread(spot))));
      }
    }
    return new Node.Keyed(map.spot(), kept, map.open());
  }

  /** Whether all that was asked for was there and right. */
  boolean sound() {
    return sound;
  }

  boolean has(String key) {
    return map.has(key);
  }

  /** The keys that are known, with their values. */
  Node.Keyed known() {
    return map;
  }

  /** Where a key is written; the map itself where it is not. */
  Spot spot(String key) {
    return map.entry(key).map(Node.Entry::spot).orElse(at);
  }

  /** Where the map itself is named. */
  Spot at() {
    return at;
  }

  /** The value as it was written, for a fault's words. */
  String written(String key) {
    return map.entry(key).map(e -> e.value().kind()).orElse("not given");
  }

  void fault(Spot spot, String found, String right) {
    sound = false;
    faults.add(spot, found, right);
  }

  /** A key's value is wrong in itself. */
  void wrong(String key, Node value, String right) {
    if (value instanceof Node.Unread) {
      sound = false;
    } else {
      fault(value.spot(), of(key) + " is " + value.kind(), right);
    }
  }

  /** A key's value does not fit what is written elsewhere. */
  void wrong(String key, String why, String right) {
    fault(spot(key), of(key) + " is " + written(key) + ", " + why, right);
  }

  /**
   * Two keys that do not go together: the fault lies with the first, unless the second was written
   * by a scenario that changes it.
   */
  void wrongPair(String first, String second, String relation, String right) {
    List<String> order = new ArrayList<>(map.entries().keySet());
    boolean secondChanged =
        map.has(second)
            && !spot(first).file().equals(spot(second).file())
            && order.indexOf(second) > order.indexOf(first);
    fault(
        spot(map.has(first) && !secondChanged ? first : second),
        of(first)
            + " is "
            + written(first)
            + ", "
            + relation
            + " "
            + second
            + " "
            + written(second),
        right);
  }

  Optional<Node> value(String key) {
    Optional<Node> value = map.entry(key).map(Node.Entry::value);
    if (value.isEmpty()) {
      sound = false;
      if (!map.open()) {
        faults.add(at, of(key) + " is missing", "the key " + key);
      }
    }
    return value;
  }

  /** NaN where it is missing or wrong, so that comparisons with it do not hold. */
  double number(String key, Quantity quantity) {
    Optional<Node> value = value(key);
    if (value.isPresent() && value.get() instanceof Node.Text text) {
      Quantity.Reading reading = quantity.read(text.text());
      if (reading.right() != null) {
        wrong(key, text, reading.right());
      }
      return reading.value();
    }
    value.ifPresent(v -> wrong(key, v, quantity.what()));
    return Double.NaN;
  }

  double number(String key, Quantity quantity, double otherwise) {
    return has(key) ? number(key, quantity) : otherwise;
  }

  /** A number that must be more than 0. */
  double positive(String key, Quantity quantity) {
    double number = number(key, quantity);
    if (number <= 0) {
      map.entry(key).ifPresent(e -> wrong(key, e.value(), "more than 0"));
    }
    return number;
  }

  /** A whole number without a unit; {@code least - 1} where it is missing or wrong. */
  int count(String key, int least, int most) {
    Optional<Node> value = value(key);
    if (value.isPresent() && value.get() instanceof Node.Text text) {
      String written = text.text().strip();
      if (WHOLE.matcher(written).matches()) {
        long count = Long.parseLong(written);
        if (count >= least && count <= most) {
          return (int) count;
        }
      }
    }
    value.ifPresent(v -> wrong(key, v, "a whole number from " + least + " to " + most));
    return least - 1;
  }

  int count(String key, int least, int most, int otherwise) {
    return has(key) ? count(key, least, most) : otherwise;
  }

  /** A name: one line of text. */
  Optional<String> name(String key) {
    Optional<Node> value = value(key);
    if (value.isPresent() && value.get() instanceof Node.Text text && Words.isName(text.text())) {
      return Optional.of(text.text().strip());
    }
    value.ifPresent(v -> wrong(key, v, "a name of one line, at most 60 letters"));
    return Optional.empty();
  }

  /** One of a few things, by the word for it. */
  <T> Optional<T> choice(String key, List<T> things, Function<T, String> wordFor) {
    Optional<Node> value = value(key);
    String word =
        value.isPresent() && value.get() instanceof Node.Text text ? text.text().strip() : "";
    for (T thing : things) {
      if (wordFor.apply(thing).equals(word)) {
        return Optional.of(thing);
      }
    }
    List<String> words = things.stream().map(wordFor).toList();
    value.ifPresent(v -> wrong(key, v, Words.oneOf(word, words)));
    return Optional.empty();
  }

  @Nullable LocalDate date(String key) {
    Optional<Node> value = value(key);
    if (value.isPresent() && value.get() instanceof Node.Text text) {
      Optional<LocalDate> date = date(text);
      if (date.isPresent()) {
        return date.get();
      }
    }
    value.ifPresent(v -> wrong(key, v, "a date such as 2027-03-28"));
    return null;
  }

  static Optional<LocalDate> date(Node.Text text) {
    String written = text.text().strip();
    try {
      return DATE.matcher(written).matches()
          ? Optional.of(LocalDate.parse(written))
          : Optional.empty();
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** Whether nothing is written there: no key, or nothing after it. */
  boolean isBlank(String key) {
    return map.entry(key)
        .map(e -> e.value() instanceof Node.Text text && text.text().isBlank())
        .orElse(true);
  }

  /** A map within this one. */
  Optional<Node.Keyed> keyed(String key, String right) {
    Optional<Node> value = value(key);
    if (value.isPresent() && value.get() instanceof Node.Keyed keyed) {
      return Optional.of(keyed);
    }
    value.ifPresent(v -> wrong(key, v, right));
    return Optional.empty();
  }

  /** The fields of a map within this one. */
  Optional<Fields> map(String key, String itsOwner, List<String> known) {
    return keyed(key, "a map such as {" + known.get(0) + ": ...}")
        .map(keyed -> new Fields(itsOwner, spot(key), keyed, known, faults));
  }

  /** The texts of a list, each where it was written. */
  Optional<List<Node.Text>> list(String key, String example) {
    Optional<Node> value = value(key);
    if (value.isPresent() && value.get() instanceof Node.Items list) {
      List<Node.Text> texts = new ArrayList<>();
      for (Node item : list.items()) {
        if (item instanceof Node.Text text) {
          texts.add(text);
        } else {
          wrong(key, item, "a list of words such as " + example);
        }
      }
      return Optional.of(texts);
    }
    value.ifPresent(v -> wrong(key, v, "a list such as " + example));
    return Optional.empty();
  }

  /**
   * The record that all these values make, if they were right.
   *
   * @param maker may refuse them for a reason that nothing above had thought of
   */
  <T> Optional<T> made(Supplier<T> maker) {
    if (!sound) {
      return Optional.empty();
    }
    try {
      return Optional.of(maker.get());
    } catch (IllegalArgumentException e) {
      fault(at, String.valueOf(e.getMessage()), "values that go together");
      return Optional.empty();
    }
  }

  private String of(String key) {
    return owner.isEmpty() ? key : key + " of " + owner;
  }
}
