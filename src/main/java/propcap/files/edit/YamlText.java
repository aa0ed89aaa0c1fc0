package propcap.files.edit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;
import org.snakeyaml.engine.v2.nodes.CollectionNode;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/**
 * A YAML file's text in which single values are changed: all that is not about the changed key, and
 * every comment beside it, stays as it was, to the byte.
 *
 * <p>Values are text, or maps and lists of values.
 */
public final class YamlText {
  /**
   * A way into a file: by a key, or to the item of a list that has a key of some value, or that has
   * a number in it, from 0; less than 0 where it has none.
   */
  public record Step(String key, Optional<String> named, int row) {
    public static Step to(String key) {
      return new Step(key, Optional.empty(), -1);
    }

    public static Step toItem(String key, String named) {
      return new Step(key, Optional.of(named), -1);
    }

    static Step toRow(int row) {
      return new Step("", Optional.empty(), row);
    }

    /** A way that goes on where another ends. */
    static List<Step> below(List<Step> above, Step last) {
      return Stream.concat(above.stream(), Stream.of(last)).toList();
    }

    private boolean isToItem() {
      return named.isPresent() || row >= 0;
    }
  }

  private final String text;
  private final YamlSpans spans;
  private final MappingNode root;

  private YamlText(String text) {
    this.text = text;
    this.spans = new YamlSpans(text);
    this.root = root(text.substring(spans.start()));
  }

  /**
   * The map that a text without a byte-order mark holds.
   *
   * @throws IllegalArgumentException where the text is no YAML map
   */
  static MappingNode root(String text) {
    try {
      Node node =
          new Compose(LoadSettings.builder().setCodePointLimit(Integer.MAX_VALUE).build())
              .composeString(text)
              .orElseThrow(() -> new IllegalArgumentException("the file is empty"));
      if (node instanceof MappingNode map) {
        return map;
      }
    } catch (YamlEngineException e) {
      throw new IllegalArgumentException("this cannot be read as YAML", e);
    }
    throw new IllegalArgumentException("the file holds no map of 'key: value' lines");
  }

  /**
   * The text with a value put at the end of a path; what the path lacks is added.
   *
   * @throws IllegalArgumentException where the text is no YAML map
   */
  public static String set(String text, List<Step> path, Object value) {
    return new YamlText(text).with(path, value);
  }

  /** The text with a value put; an empty one takes out what stands there. */
  static String put(String text, List<Step> path, Object value) {
    return value.equals("") ? remove(text, path) : set(text, path, value);
  }

  /** The text without what is at the end of a path, and without what is then left empty. */
  static String remove(String text, List<Step> path) {
    return new YamlText(text).without(path);
  }

  /** Whether there is something at the end of a path. */
  static boolean has(String text, List<Step> path) {
    return new YamlText(text).find(path).isPresent();
  }

  private Optional<Node> find(List<Step> path) {
    Optional<Node> node = Optional.of(root);
    for (Step step : path) {
      node = node.flatMap(n -> child(n, step));
    }
    return node;
  }

  private static Optional<Node> child(Node parent, Step step) {
    if (parent instanceof MappingNode map && !step.isToItem()) {
      return tuple(map, step.key()).map(NodeTuple::getValueNode);
    }
    if (parent instanceof SequenceNode list && step.row() >= 0) {
      return list.getValue().stream().skip(step.row()).findFirst();
    }
    if (parent instanceof SequenceNode list && step.named().isPresent()) {
      return list.getValue().stream()
          .filter(item -> item instanceof MappingNode map && has(map, step))
          .findFirst();
    }
    return Optional.empty();
  }

  private static boolean has(MappingNode item, Step step) {
    return tuple(item, step.key())
        .map(t -> word(t.getValueNode()).equals(step.named().orElse("")))
        .orElse(false);
  }

  static Optional<NodeTuple> tuple(MappingNode map, String key) {
    return map.getValue().stream().filter(t -> word(t.getKeyNode()).equals(key)).findFirst();
  }

  /** What a piece of text says; empty for what is none. */
  static String word(Node node) {
    return node instanceof ScalarNode scalar ? scalar.getValue().strip() : "";
  }

  private String with(List<Step> path, Object value) {
    Node node = root;
    Optional<Node> key = Optional.empty();
    for (int i = 0; i < path.size(); i++) {
      Step step = path.get(i);
      List<Step> rest = path.subList(i + 1, path.size());
      if (node instanceof MappingNode map && !step.isToItem()) {
        Optional<NodeTuple> tuple = tuple(map, step.key());
        if (tuple.isEmpty()) {
          return inserted(map, step.key(), nested(rest, value));
        }
        key = Optional.of(tuple.get().getKeyNode());
        node = tuple.get().getValueNode();
      } else if (node instanceof SequenceNode list && step.isToItem()) {
        Optional<Node> item = child(list, step);
        if (item.isEmpty()) {
          return inserted(list, nestedItem(step, rest, value));
        }
        key = Optional.empty();
        node = item.get();
      } else {
        return replaced(node, key, nested(path.subList(i, path.size()), value));
      }
    }
    return replaced(node, key, value);
  }

  private static Object nested(List<Step> path, Object value) {
    if (path.isEmpty()) {
      return value;
    }
    Step step = path.get(0);
    List<Step> rest = path.subList(1, path.size());
    return step.isToItem()
        ? List.of(nestedItem(step, rest, value))
        : Map.of(step.key(), nested(rest, value));
  }

  private static Map<String, Object> nestedItem(Step step, List<Step> rest, Object value) {
    Map<String, Object> item = new LinkedHashMap<>();
    step.named().ifPresent(name -> item.put(step.key(), name));
    if (nested(rest, value) instanceof Map<?, ?> more) {
      more.forEach((k, v) -> item.put(k.toString(), v));
    }
    return item;
  }

  private String replaced(Node node, Optional<Node> key, Object value) {
    if (node instanceof ScalarNode scalar && value instanceof String word) {
      return word.equals(scalar.getValue())
          ? text
          : spans.put(
              spans.start(node),
              spans.end(node),
              spacedAt(spans.start(node), YamlWords.like(scalar, word)));
    }
    boolean isBlock = node instanceof CollectionNode<?> c && c.getFlowStyle() == FlowStyle.BLOCK;
    int from = isBlock && key.isPresent() ? spans.afterColon(key.get(), node) : spans.start(node);
    return spans.put(from, spans.end(node), spacedAt(from, YamlWords.flow(value)));
  }

  /** A value that stands right behind its colon takes a space between. */
  private String spacedAt(int at, String written) {
    return at > 0 && text.charAt(at - 1) == ':' ? " " + written : written;
  }

  private String inserted(MappingNode map, String key, Object value) {
    List<NodeTuple> tuples = map.getValue();
    String word = YamlWords.scalar(key);
    if (map.getFlowStyle() == FlowStyle.FLOW) {
      String entry = word + ": " + YamlWords.flow(value);
      return insertedInFlow(
          map, tuples.isEmpty() ? null : tuples.get(tuples.size() - 1).getValueNode(), entry);
    }
    int column = spans.column(map);
    String entry = word + ":" + YamlWords.block(value, column, spans.newLine());
    return spans.putLine(spans.end(map), " ".repeat(column) + entry);
  }

  private String inserted(SequenceNode list, Object value) {
    List<Node> items = list.getValue();
    if (list.getFlowStyle() == FlowStyle.FLOW) {
      return insertedInFlow(
          list, items.isEmpty() ? null : items.get(items.size() - 1), YamlWords.flow(value));
    }
    String line = " ".repeat(spans.column(list)) + "- " + YamlWords.flow(value);
    return spans.putLine(spans.end(list), line);
  }

  private String insertedInFlow(Node collection, @Nullable Node last, String entry) {
    int at = last == null ? spans.start(collection) + 1 : spans.end(last);
    return spans.put(at, at, last == null ? entry : ", " + entry);
  }

  private String without(List<Step> path) {
    if (path.isEmpty() || find(path).isEmpty()) {
      return text;
    }
    List<Step> above = path.subList(0, path.size() - 1);
    Node parent = find(above).orElse(root);
    Node gone = find(path).orElse(root);
    if (parent instanceof MappingNode map) {
      return map.getValue().size() == 1 && !above.isEmpty()
          ? without(above)
          : cut(map, tuple(map, path.get(path.size() - 1).key()).orElseThrow());
    }
    SequenceNode list = (SequenceNode) parent;
    if (list.getValue().size() == 1) {
      return without(above);
    }
    int at = list.getValue().indexOf(gone);
    return list.getFlowStyle() == FlowStyle.FLOW
        ? spans.cutFromFlow(
            spans.start(gone),
            spans.end(gone),
            at == 0 ? -1 : spans.end(list.getValue().get(at - 1)))
        : spans.cutLines(spans.dash(gone), spans.end(gone));
  }

  private String cut(MappingNode map, NodeTuple gone) {
    int at = map.getValue().indexOf(gone);
    int start = spans.start(gone.getKeyNode());
    int end =
        Math.max(
            spans.end(gone.getValueNode()),
            spans.afterColon(gone.getKeyNode(), gone.getValueNode()));
    if (map.getFlowStyle() == FlowStyle.FLOW) {
      int before = at == 0 ? -1 : spans.end(map.getValue().get(at - 1).getValueNode());
      return spans.cutFromFlow(start, end, before);
    }
    // The first key of an item stands behind its dash, which stays.
    return spans.isFirstOnLine(start) ? spans.cutLines(start, end) : spans.put(start, end, "");
  }
}
