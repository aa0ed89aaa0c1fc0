package propcap.files.edit;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * The pieces of a YAML file's text that are named alike, or stand in one list, changed together,
 * and whole entries put in as lines; all else stays as it was, to the byte.
 */
final class YamlItems {
  private final String text;
  private final YamlSpans spans;
  private final MappingNode root;

  private YamlItems(String text) {
    this.text = text;
    this.spans = new YamlSpans(text);
    this.root = YamlText.root(text.substring(spans.start()));
  }

  /**
   * The text with another word wherever a way leads to one.
   *
   * @param ways such as {@code places.*.name}, where the star is any key, or any item of a list
   * @throws IllegalArgumentException where the text is no YAML map
   */
  static String renamed(String text, List<String> ways, String from, String to) {
    YamlItems items = new YamlItems(text);
    List<ScalarNode> named = new ArrayList<>();
    ways.forEach(way -> items.find(items.root, Arrays.asList(way.split("\\.")), named));
    String changed = text;
    // From the end, so that what comes before stays where it is.
    named.sort(Comparator.comparingInt((ScalarNode node) -> items.spans.start(node)).reversed());
    for (ScalarNode node : named) {
      if (YamlText.word(node).equals(from)) {
        changed =
            changed.substring(0, items.spans.start(node))
                + YamlWords.like(node, to)
                + changed.substring(items.spans.end(node));
      }
    }
    return changed;
  }

  private void find(Node node, List<String> way, List<ScalarNode> found) {
    if (way.isEmpty()) {
      if (node instanceof ScalarNode scalar) {
        found.add(scalar);
      }
      return;
    }
    String key = way.get(0);
    List<String> rest = way.subList(1, way.size());
    if (node instanceof MappingNode map) {
      map.getValue().stream()
          .filter(t -> key.equals("*") || YamlText.word(t.getKeyNode()).equals(key))
          .forEach(t -> find(t.getValueNode(), rest, found));
    } else if (node instanceof SequenceNode list && key.equals("*")) {
      list.getValue().forEach(item -> find(item, rest, found));
    }
  }

  /** The names of the items of a list, in their order; empty where there is no such list. */
  static List<String> names(String text, String list) {
    return new YamlItems(text).items(list).map(YamlItems::name).toList();
  }

  private Stream<Node> items(String list) {
    return YamlText.tuple(root, list).map(NodeTuple::getValueNode).stream()
        .flatMap(n -> n instanceof SequenceNode s ? s.getValue().stream() : Stream.empty());
  }

  private static String name(Node item) {
    return item instanceof MappingNode map
        ? YamlText.tuple(map, "name").map(t -> YamlText.word(t.getValueNode())).orElse("")
        : "";
  }

  /**
   * The text with an item of a list and the next in each other's place, each with the comments
   * right above it and behind it.
   */
  static String swapped(String text, String list, int first) {
    return new YamlItems(text).swapped(list, first);
  }

  private String swapped(String list, int first) {
    Optional<Node> all = YamlText.tuple(root, list).map(NodeTuple::getValueNode);
    if (!(all.orElse(root) instanceof SequenceNode items)) {
      throw new IllegalArgumentException("there is no list of " + list);
    }
    Node one = items.getValue().get(first);
    Node two = items.getValue().get(first + 1);
    if (items.getFlowStyle() == FlowStyle.FLOW) {
      return swapped(spans.start(one), spans.end(one), spans.start(two), spans.end(two));
    }
    return swapped(
        above(one), spans.lineEnd(spans.end(one)), above(two), spans.lineEnd(spans.end(two)));
  }

  private String swapped(int from, int to, int nextFrom, int nextTo) {
    return text.substring(0, from)
        + text.substring(nextFrom, nextTo)
        + text.substring(to, nextFrom)
        + text.substring(from, to)
        + text.substring(nextTo);
  }

  /**
   * The text with an entry at the end of a map, in lines as they are given, below an empty one.
   *
   * @param key of the map; it is begun where there is none
   * @param lines indented by two
   * @return empty where the map stands in braces, in which no lines can be put
   */
  static Optional<String> withLines(String text, String key, List<String> lines) {
    return new YamlItems(text).withLines(key, lines);
  }

  private Optional<String> withLines(String key, List<String> lines) {
    if (root.getFlowStyle() == FlowStyle.FLOW) {
      return Optional.empty();
    }
    Optional<NodeTuple> tuple = YamlText.tuple(root, key);
    if (tuple.isEmpty()) {
      return Optional.of(spans.putLine(spans.end(root), key + ":" + joined(2, lines)));
    }
    Node value = tuple.get().getValueNode();
    if (value instanceof MappingNode map && !map.getValue().isEmpty()) {
      return map.getFlowStyle() == FlowStyle.FLOW
          ? Optional.empty()
          : Optional.of(spans.putLine(spans.end(map), joined(spans.column(map), lines)));
    }
    int colon = spans.afterColon(tuple.get().getKeyNode(), value);
    String emptied = spans.put(colon, Math.max(colon, spans.end(value)), "");
    return Optional.of(new YamlSpans(emptied).putLine(colon, joined(2, lines)));
  }

  private String joined(int column, List<String> lines) {
    StringBuilder joined = new StringBuilder();
    for (String line : lines) {
      joined.append(spans.newLine());
      joined.append(line.isBlank() ? "" : " ".repeat(column) + line.substring(2));
    }
    return joined.toString();
  }

  /** Where the lines of an item begin, with the comments right above it. */
  private int above(Node item) {
    int at = spans.lineStart(spans.dash(item));
    while (at > spans.start()) {
      int before = spans.lineStart(at - 1);
      if (!text.substring(before, at).strip().startsWith("#")) {
        break;
      }
      at = before;
    }
    return at;
  }
}
