package propcap.files.text;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The keys of a map or the cells of a row, read as what they should be. What is wrong is reported
 * and reading goes on; a record may be made of the values only where all was {@link #sound()}.
 */
public final class Fields {
  /**
   * The oldest station records are of the eighteenth century; nobody plans for the next but one.
   */
  public static final int FIRST_YEAR = 1700;

  public static final int LAST_YEAR = 2199;

  private final String owner;

  /** Keys under which the map stands, parted by points. */
  private final String path;

  private final FilePosition at;
  private final Node.Keyed map;
  private final Faults faults;
  private boolean sound = true;

  /**
   * Looks at a map whose keys should be among the known ones.
   *
   * @param owner whose keys they are, as in "tomato's emergence"; may be empty
   * @param at where a missing key is reported
   */
  public Fields(String owner, FilePosition at, Node.Keyed map, List<String> known, Faults faults) {
    this(owner, "", at, map, known, faults);
  }

  private Fields(
      String owner,
      String path,
      FilePosition at,
      Node.Keyed map,
      List<String> known,
      Faults faults) {
    this.owner = owner;
    this.path = path;
    this.at = at;
    this.map = KnownKeys.of(map, known, faults);
    this.faults = faults;
    if (map.open()) {
      sound = false;
    }
  }

  /** Whether all that was asked for was there and right. */
  public boolean sound() {
    return sound;
  }

  public boolean has(String key) {
    return map.has(key);
  }

  /** The keys that are known, with their values. */
  public Node.Keyed known() {
    return map;
  }

  /** Where a key is written; the map itself where it is not. */
  public FilePosition spot(String key) {
    return map.entry(key).map(Node.Entry::spot).orElse(at);
  }

  /** Where the map itself is named. */
  public FilePosition at() {
    return at;
  }

  /** The value as it was written, for a fault's words. */
  public String written(String key) {
    return map.entry(key).map(e -> e.value().kind()).orElse("not given");
  }

  /** A fault of a value, told in words of its own. */
  public void fault(String key, String found, String right) {
    fault(key, found, Right.of(right));
  }

  public void fault(String key, String found, Right right) {
    fault(spot(key), found, right, about(key));
  }

  public void fault(FilePosition spot, String found, String right) {
    fault(spot, found, Right.of(right));
  }

  public void fault(FilePosition spot, String found, Right right) {
    fault(spot, found, right, Fault.About.NO_VALUE);
  }

  private void fault(FilePosition spot, String found, Right right, Fault.About about) {
    sound = false;
    faults.add(spot, found, right.words(), about.with(right.slip()));
  }

  private Fault.About about(String key) {
    return about(key, false, false);
  }

  private Fault.About about(String key, boolean isMissing, boolean isToFind) {
    return new Fault.About(owner, path, key, isMissing, isToFind, null);
  }

  /** A key's value is wrong in itself. */
  public void wrong(String key, Node value, String right) {
    wrong(key, value, Right.of(right));
  }

  private void wrong(String key, Node value, Right right) {
    if (value instanceof Node.Unread) {
      sound = false;
    } else {
      fault(value.spot(), of(key) + " is " + value.kind(), right, about(key));
    }
  }

  /** A key's value does not fit what is written elsewhere. */
  public void wrong(String key, String why, String right) {
    wrong(key, why, Right.of(right));
  }

  public void wrong(String key, String why, Right right) {
    fault(spot(key), of(key) + " is " + written(key) + ", " + why, right, about(key));
  }

  /**
   * Two keys that do not go together: the fault lies with the first, unless the second was written
   * by a scenario that changes it.
   */
  public void wrongPair(String first, String second, String relation, String right) {
    List<String> order = new ArrayList<>(map.entries().keySet());
    boolean secondChanged =
        map.has(second)
            && !spot(first).file().equals(spot(second).file())
            && order.indexOf(second) > order.indexOf(first);
    fault(
        spot(map.has(first) && !secondChanged ? first : second),
        "%s is %s, %s %s %s"
            .formatted(of(first), written(first), relation, second, written(second)),
        Right.of(right),
        about(first));
  }

  /** A value that can be meant but seldom is. */
  public void doubt(String key, String why, String meant) {
    faults.warn(spot(key), of(key) + " is " + written(key) + ", " + why, meant, about(key));
  }

  /** A cell is empty that some questions fill in, and all others need. */
  public void toFind(String key, String right) {
    map.entry(key)
        .ifPresent(
            e ->
                faults.toFind(
                    e.value().spot(), of(key) + " is empty", right, about(key, false, true)));
  }

  public Optional<Node> value(String key) {
    Optional<Node> value = map.entry(key).map(Node.Entry::value);
    if (value.isEmpty()) {
      sound = false;
      if (!map.open()) {
        faults.add(at, of(key) + " is missing", "the key " + key, about(key, true, false));
      }
    }
    return value;
  }

  /** A value that a reader makes something of; where it does not, what would be right. */
  private <T> Optional<T> read(
      String key, Function<Node, Optional<? extends T>> reader, Right right) {
    Optional<Node> value = value(key);
    Optional<T> read = value.flatMap(reader);
    if (read.isEmpty()) {
      value.ifPresent(v -> wrong(key, v, right));
    }
    return read;
  }

  /** The same of a text. */
  public <T> Optional<T> text(String key, Function<Node.Text, Optional<T>> reader, String right) {
    return text(key, reader, Right.of(right));
  }

  private <T> Optional<T> text(String key, Function<Node.Text, Optional<T>> reader, Right right) {
    return read(key, v -> Node.text(v).flatMap(reader), right);
  }

  /** NaN where it is missing or wrong, so that comparisons with it do not hold. */
  public double number(String key, Quantity quantity) {
    return number(key, quantity, "", null);
  }

  /** A number whose unit the header of its table has said. */
  public double number(String key, Quantity quantity, String unit) {
    String right = "a plain number, such as 6 or 6.5; its unit is in the header";
    return number(key, quantity, " " + unit, right);
  }

  private double number(String key, Quantity quantity, String unit, @Nullable String right) {
    Optional<Node.Text> text = text(key, Optional::of, quantity.what());
    if (text.isEmpty()) {
      return Double.NaN;
    }
    Quantity.Reading reading = quantity.read(text.get().text() + unit);
    String itsRight = reading.right();
    if (itsRight != null) {
      wrong(key, text.get(), right == null ? itsRight : right);
    }
    quantity
        .unlikely(reading.value())
        .ifPresent(meant -> doubt(key, "where no plant is raised", meant));
    return reading.value();
  }

  public double number(String key, Quantity quantity, double otherwise) {
    return has(key) ? number(key, quantity) : otherwise;
  }

  /** A number that must be more than 0. */
  public double positive(String key, Quantity quantity) {
    double number = number(key, quantity);
    if (number <= 0) {
      map.entry(key).ifPresent(e -> wrong(key, e.value(), "more than 0"));
    }
    return number;
  }

  /** A whole number without a unit; {@code least - 1} where it is missing or wrong. */
  public int count(String key, int least, int most) {
    return text(
            key,
            text -> text.wholeNumber().filter(n -> n >= least && n <= most),
            "a whole number from " + least + " to " + most)
        .map(Math::toIntExact)
        .orElse(least - 1);
  }

  public int count(String key, int least, int most, int otherwise) {
    return has(key) ? count(key, least, most) : otherwise;
  }

  /** A name: one line of text. */
  public Optional<String> name(String key) {
    return text(
        key,
        text -> Optional.of(text.text().strip()).filter(FaultWords::isName),
        "a name of one line, at most 60 letters");
  }

  public @Nullable LocalDate date(String key) {
    Optional<Node> value = value(key);
    Optional<LocalDate> date =
        value.flatMap(Node::text).flatMap(Node.Text::date).filter(Fields::isOfOurTimes);
    if (date.isEmpty()) {
      value.ifPresent(v -> wrong(key, v, rightDate(v)));
    }
    return date.orElse(null);
  }

  /** A date that may be left empty; null where it is, or is wrong. */
  public @Nullable LocalDate dateOrNone(String key) {
    return isBlank(key) ? null : date(key);
  }

  private static String rightDate(Node wrong) {
    return Node.text(wrong)
        .flatMap(Node.Text::dateWithDots)
        .map(d -> d + ", in a spreadsheet by cells of the form YYYY-MM-DD")
        .orElse("a date such as 2027-03-28");
  }

  /** Whether a grower can mean a date, of a record or of a plan. */
  public static boolean isOfOurTimes(LocalDate date) {
    return date.getYear() >= FIRST_YEAR && date.getYear() <= LAST_YEAR;
  }

  /** One of a few things, by the word for it. */
  public <T> Optional<T> choice(String key, List<T> things, Function<T, String> wordFor) {
    Optional<Node.Text> text = map.entry(key).flatMap(e -> Node.text(e.value()));
    String word = text.map(t -> t.text().strip()).orElse("");
    return text(
        key,
        t -> things.stream().filter(thing -> wordFor.apply(thing).equals(word)).findFirst(),
        FaultWords.oneOf(word, things.stream().map(wordFor).toList()));
  }

  /** Whether nothing is written there: no key, or nothing after it. */
  public boolean isBlank(String key) {
    return map.entry(key)
        .map(e -> e.value() instanceof Node.Text text && text.text().isBlank())
        .orElse(true);
  }

  /** Whether a list is written there, with nothing in it. */
  public boolean isEmptyList(String key) {
    return map.entry(key)
        .map(e -> e.value() instanceof Node.Items list && list.items().isEmpty())
        .orElse(false);
  }

  /** A map within this one. */
  public Optional<Node.Keyed> keyed(String key, String right) {
    return read(
        key,
        v -> v instanceof Node.Keyed keyed ? Optional.of(keyed) : Optional.empty(),
        Right.of(right));
  }

  /** The fields of a map within this one. */
  public Optional<Fields> map(String key, String itsOwner, List<String> known) {
    return keyed(key, "a map such as {" + known.get(0) + ": ...}")
        .map(keyed -> new Fields(itsOwner, pathOf(key), spot(key), keyed, known, faults));
  }

  /** What is made of the fields of a map within this one, or what holds where there is none. */
  public <T> Optional<T> part(
      String key,
      String itsOwner,
      List<String> known,
      Function<Fields, Optional<T>> reader,
      T otherwise) {
    return has(key) ? map(key, itsOwner, known).flatMap(reader) : Optional.of(otherwise);
  }

  private String pathOf(String key) {
    return path.isEmpty() ? key : path + "." + key;
  }

  /** The texts of a list, each where it was written; none where there is no such list. */
  public List<Node.Text> list(String key, String example) {
    Optional<Node.Items> list = items(key, "a list such as " + example);
    List<Node.Text> texts = new ArrayList<>();
    for (Node item : list.map(Node.Items::items).orElse(List.of())) {
      Node.text(item)
          .ifPresentOrElse(
              texts::add, () -> wrong(key, item, "a list of words such as " + example));
    }
    return texts;
  }

  private Optional<Node.Items> items(String key, String right) {
    return read(
        key,
        v -> v instanceof Node.Items items ? Optional.of(items) : Optional.empty(),
        Right.of(right));
  }

  /** The fields of the maps of a list, each where it was written; none where there is no list. */
  public List<Fields> maps(String key, String itsOwner, List<String> known, String example) {
    String right = "a list such as [" + example + "]";
    Optional<Node.Items> list = items(key, right);
    if (list.map(Node.Items::open).orElse(false)) {
      sound = false;
    }
    List<Fields> maps = new ArrayList<>();
    for (Node item : list.map(Node.Items::items).orElse(List.of())) {
      if (item instanceof Node.Keyed keyed) {
        maps.add(new Fields(itsOwner, pathOf(key), keyed.spot(), keyed, known, faults));
      } else {
        wrong(key, item, right);
      }
    }
    return maps;
  }

  /**
   * The record that all these values make, if they were right.
   *
   * @param maker may refuse them for a reason that nothing above had thought of
   */
  public <T> Optional<T> made(Supplier<T> maker) {
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
