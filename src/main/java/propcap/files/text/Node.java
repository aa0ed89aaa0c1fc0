package propcap.files.text;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A piece of a grower's file that knows where it was written. Scenarios that extend others are put
 * together from such pieces, so that each fault still points at the file and line it comes from.
 */
public sealed interface Node {
  FilePosition spot();

  /** What it is, in the words of a fault. */
  String kind();

  /** A node that is text. */
  static Optional<Text> text(Node node) {
    return node instanceof Text text ? Optional.of(text) : Optional.empty();
  }

  /** A word, a number, a quantity or a date, not yet understood. */
  record Text(FilePosition spot, String text) implements Node {
    private static final Pattern DATE = Pattern.compile("[0-9]{4}-[0-9]{2}-[0-9]{2}");
    private static final DateTimeFormatter WITH_DOTS =
        DateTimeFormatter.ofPattern("d.M.uuuu").withResolverStyle(ResolverStyle.STRICT);
    private static final Pattern WHOLE = Pattern.compile("[-+]?[0-9]{1,18}");

    public Optional<LocalDate> date() {
      String written = text.strip();
      try {
        return DATE.matcher(written).matches()
            ? Optional.of(LocalDate.parse(written))
            : Optional.empty();
      } catch (DateTimeException e) {
        return Optional.empty();
      }
    }

    /** With dots a date is day, month and year; with slashes it may be either of two. */
    Optional<LocalDate> dateWithDots() {
      try {
        return Optional.of(LocalDate.parse(text.strip(), WITH_DOTS));
      } catch (DateTimeException e) {
        return Optional.empty();
      }
    }

    public Optional<Long> wholeNumber() {
      String written = text.strip();
      return WHOLE.matcher(written).matches()
          ? Optional.of(Long.valueOf(written))
          : Optional.empty();
    }

    @Override
    public String kind() {
      return FaultWords.shown(text);
    }
  }

  /**
   * A list.
   *
   * @param open whether there is more of it that could not be read
   */
  record Items(FilePosition spot, List<Node> items, boolean open) implements Node {
    @Override
    public String kind() {
      return "a list";
    }
  }

  /** What could not be read; its fault is reported already. */
  record Unread(FilePosition spot) implements Node {
    @Override
    public String kind() {
      return "something unread";
    }
  }

  /** A key's place and its value. */
  record Entry(FilePosition spot, Node value) {}

  /**
   * A map from keys to values; what was written later comes later.
   *
   * @param open whether there may be keys that could not be read
   */
  record Keyed(FilePosition spot, Map<String, Entry> entries, boolean open) implements Node {
    public Keyed {
      entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
    }

    public static Keyed unread(FilePosition spot) {
      return new Keyed(spot, Map.of(), true);
    }

    @Override
    public String kind() {
      return "a map";
    }

    public Optional<Entry> entry(String key) {
      return Optional.ofNullable(entries.get(key));
    }

    /** The word that a key holds; empty where there is none. */
    public String word(String key) {
      return entry(key).flatMap(e -> text(e.value())).map(t -> t.text().strip()).orElse("");
    }

    public boolean has(String key) {
      return entries.containsKey(key);
    }

    public Keyed with(String key, Entry entry) {
      Map<String, Entry> changed = new LinkedHashMap<>(entries);
      changed.remove(key);
      changed.put(key, entry);
      return new Keyed(spot, changed, open);
    }

    public Keyed without(String... keys) {
      Map<String, Entry> fewer = new LinkedHashMap<>(entries);
      for (String key : keys) {
        fewer.remove(key);
      }
      return new Keyed(spot, fewer, open);
    }

    /** This map with the keys of the change in place of its own. */
    public Keyed replacing(Keyed change) {
      Map<String, Entry> merged = new LinkedHashMap<>(entries);
      change.entries.forEach(
          (key, entry) -> {
            merged.remove(key);
            merged.put(key, entry);
          });
      return new Keyed(spot, merged, open || change.open);
    }

    /**
     * This map with the keys of a change; a map in both is changed key by key, however deep. Where
     * this map could not be read whole, a map that it lacks may be a change to one that it has.
     */
    public Keyed overlay(Keyed change) {
      Map<String, Entry> merged = new LinkedHashMap<>(replacing(change).entries);
      change.entries.forEach(
          (key, now) -> {
            Entry old = entries.get(key);
            if (now.value() instanceof Keyed after) {
              if (old != null && old.value() instanceof Keyed before) {
                merged.put(key, new Entry(old.spot(), before.overlay(after)));
              } else if (old == null && open) {
                merged.put(key, new Entry(now.spot(), unread(after.spot).overlay(after)));
              }
            }
          });
      return new Keyed(spot, merged, open || change.open);
    }
  }
}
