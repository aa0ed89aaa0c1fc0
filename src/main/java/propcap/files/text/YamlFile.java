package propcap.files.text;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.ReaderException;

/**
 * A YAML file as a tree of located pieces. Only maps, lists and text are read: anchors, aliases and
 * tags are refused, and so are files that nest deeper or hold more than a grower's file does.
 */
public final class YamlFile {
  private static final int DEEPEST = 20;
  private static final int MOST_NODES = 500_000;
  private static final int MOST_ENTRIES = 5_000;
  private static final int LONGEST_LINE = 200_000;

  private final SourceText source;
  private final Faults faults;
  private final Iterator<Event> events;
  private FilePosition last;
  private int nodes;

  private YamlFile(SourceText source, Faults faults) {
    this.source = source;
    this.faults = faults;
    this.last = new FilePosition(source.file(), 1, 1);
    LoadSettings settings =
        LoadSettings.builder()
            .setLabel(source.file().toString())
            .setCodePointLimit(Integer.MAX_VALUE)
            .build();
    this.events = new Parse(settings).parseString(source.text()).iterator();
  }

  /**
   * The map that a file holds.
   *
   * @param named where the file is named
   * @return empty where there is none, which is reported
   */
  public static Optional<Node.Keyed> read(
      Path file, FilePosition named, UnsavedTexts unsaved, Faults faults) {
    return SourceText.read(file, named, unsaved, faults).flatMap(source -> read(source, faults));
  }

  /** The map that a text holds; empty where there is none, which is reported. */
  public static Optional<Node.Keyed> read(SourceText source, Faults faults) {
    return new YamlFile(source, faults).root();
  }

  private Optional<Node.Keyed> root() {
    try {
      refuseLongLines();
      while (events.hasNext()) {
        Event event = next();
        if (event instanceof NodeEvent) {
          Node root = node(event, 0);
          refuseMoreDocuments();
          if (root instanceof Node.Keyed keyed) {
            return Optional.of(keyed);
          }
          faults.wrong(root, "the file holds " + root.kind(), "a map of 'key: value' lines");
          return Optional.empty();
        }
      }
      faults.add(
          FilePosition.whole(source.file()), "the file is empty", "a map of 'key: value' lines");
    } catch (Refused e) {
      faults.add(e.spot, e.found, e.right);
    } catch (MarkedYamlEngineException e) {
      FilePosition spot = e.getProblemMark().or(e::getContextMark).map(this::spot).orElse(last);
      broken(spot, e.getProblem());
    } catch (ReaderException e) {
      broken(spotOf(e.getPosition()), "a character that no text has");
    } catch (RuntimeException e) {
      // Whatever else the parser makes of garbage: the place is where it had come to.
      broken(last, "no YAML");
    }
    return Optional.empty();
  }

  /** The parser takes a time that grows with the square of a line's length. */
  private void refuseLongLines() {
    String text = source.text();
    int line = 1;
    for (int start = 0; start < text.length(); line++) {
      int end = text.indexOf('\n', start);
      end = end < 0 ? text.length() : end;
      if (end - start > LONGEST_LINE) {
        FilePosition spot = new FilePosition(source.file(), line, 1);
        throw new Refused(spot, "a line of " + (end - start) + " characters", "shorter lines");
      }
      start = end + 1;
    }
  }

  private void refuseMoreDocuments() {
    while (events.hasNext()) {
      if (next().getEventId() == Event.ID.DocumentStart) {
        faults.add(last, "a second document", "one document in a file");
        return;
      }
    }
  }

  private void broken(FilePosition spot, String problem) {
    String oneLine = problem.lines().findFirst().orElse("");
    faults.add(
        spot,
        "this cannot be read as YAML: " + oneLine,
        "'key: value' lines, indented with spaces, every bracket and quote closed");
  }

  private Event next() {
    Event event = events.next();
    last = event.getStartMark().map(this::spot).orElse(last);
    return event;
  }

  private Node node(Event event, int depth) {
    FilePosition spot = last;
    if (depth > DEEPEST) {
      throw new Refused(spot, "nested deeper than " + DEEPEST, "maps and lists less deep");
    }
    nodes++;
    refuseMoreThan(MOST_NODES, nodes, spot);
    if (event instanceof AliasEvent alias) {
      faults.add(spot, "an alias *" + alias.getAlias(), "the values written out");
      return new Node.Unread(spot);
    }
    if (event instanceof NodeEvent anchored && anchored.getAnchor().isPresent()) {
      faults.add(spot, "an anchor &" + anchored.getAnchor().get(), "no anchors");
    }
    Optional<String> tag = Optional.empty();
    Node node;
    if (event instanceof ScalarEvent scalar) {
      tag = scalar.getTag();
      node = new Node.Text(spot, scalar.getValue());
    } else if (event instanceof CollectionStartEvent start) {
      tag = start.getTag();
      node = event.getEventId() == Event.ID.MappingStart ? map(spot, depth) : list(spot, depth);
    } else {
      throw new Refused(spot, "this cannot be read as YAML", "'key: value' lines");
    }
    tag.ifPresent(t -> faults.add(spot, "a tag " + FaultWords.shown(t), "no tags"));
    return node;
  }

  private Node list(FilePosition spot, int depth) {
    List<Node> items = new ArrayList<>();
    Event event = next();
    while (event.getEventId() != Event.ID.SequenceEnd) {
      items.add(node(event, depth + 1));
      refuseMoreThan(MOST_ENTRIES, items.size(), spot);
      event = next();
    }
    return new Node.Items(spot, List.copyOf(items), false);
  }

  private Node map(FilePosition spot, int depth) {
    Map<String, Node.Entry> entries = new LinkedHashMap<>();
    boolean open = false;
    Event event = next();
    while (event.getEventId() != Event.ID.MappingEnd) {
      Node key = node(event, depth + 1);
      Node value = node(next(), depth + 1);
      if (key instanceof Node.Text word) {
        Node.Entry entry = new Node.Entry(key.spot(), value);
        Node.Entry first = entries.putIfAbsent(word.text().strip(), entry);
        if (first != null) {
          faults.add(
              key.spot(),
              "key "
                  + FaultWords.shown(word.text())
                  + " again, first on line "
                  + first.spot().line(),
              "each key once");
        }
      } else {
        open = true;
        faults.wrong(key, key.kind() + " as a key", "a word as a key");
      }
      refuseMoreThan(MOST_ENTRIES, entries.size(), spot);
      event = next();
    }
    return new Node.Keyed(spot, entries, open);
  }

  private static void refuseMoreThan(int most, int values, FilePosition spot) {
    if (values > most) {
      throw new Refused(spot, "more than " + most + " values", "a shorter list or file");
    }
  }

  private FilePosition spot(Mark mark) {
    return new FilePosition(source.file(), mark.getLine() + 1, mark.getColumn() + 1);
  }

  /** Where a character stands that the parser only counts. */
  private FilePosition spotOf(int codePoints) {
    String text = source.text();
    int index = 0;
    int line = 1;
    int column = 1;
    for (int i = 0; i < codePoints && index < text.length(); i++) {
      int c = text.codePointAt(index);
      index += Character.charCount(c);
      column = c == '\n' ? 1 : column + 1;
      line += c == '\n' ? 1 : 0;
    }
    return new FilePosition(source.file(), line, column);
  }

  /** Ends the reading of a file that is none of a grower's. */
  private static final class Refused extends RuntimeException {
    private final transient FilePosition spot;
    private final String found;
    private final String right;

    Refused(FilePosition spot, String found, String right) {
      super(found);
      this.spot = spot;
      this.found = found;
      this.right = right;
    }
  }
}
