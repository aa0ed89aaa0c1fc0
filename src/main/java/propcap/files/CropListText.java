package propcap.files;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Compose;
import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/**
 * A crop list's text in which single values are changed and all else stays as it was written:
 * comments, order, spaces.
 */
final class CropListText {
  private final String text;
  private final List<Change> changes = new ArrayList<>();

  /** What stands between two places, counted in code points, and what shall. */
  private record Change(int from, int to, String now) {}

  private CropListText(String text) {
    this.text = text;
  }

  /**
   * The text with a crop's values changed.
   *
   * @param text a crop list that reads without a fault and has the crop
   * @param values by key of the crop, then by key within it; a key that is not there is added
   */
  static String changed(String text, String crop, Map<String, Map<String, String>> values) {
    CropListText changing = new CropListText(text);
    MappingNode root =
        (MappingNode)
            new Compose(LoadSettings.builder().setCodePointLimit(Integer.MAX_VALUE).build())
                .composeString(text)
                .orElseThrow();
    MappingNode entry = map(map(root, "crops"), crop);
    values.forEach((key, within) -> changing.change(map(entry, key), within));
    return changing.result();
  }

  private static MappingNode map(MappingNode map, String key) {
    return value(map, key)
        .filter(MappingNode.class::isInstance)
        .map(MappingNode.class::cast)
        .orElseThrow(() -> new IllegalArgumentException("the crop list has no map " + key));
  }

  private static Optional<Node> value(MappingNode map, String key) {
    return map.getValue().stream()
        .filter(
            t -> t.getKeyNode() instanceof ScalarNode name && name.getValue().strip().equals(key))
        .map(NodeTuple::getValueNode)
        .findFirst();
  }

  private void change(MappingNode map, Map<String, String> values) {
    StringBuilder added = new StringBuilder();
    boolean isFlow = map.getFlowStyle() == FlowStyle.FLOW;
    Mark first = start(map.getValue().get(0).getKeyNode());
    String between = isFlow ? ", " : "\n" + " ".repeat(first.getColumn());
    values.forEach(
        (key, now) -> {
          Optional<Node> old = value(map, key);
          if (old.isPresent()) {
            changes.add(new Change(start(old.get()).getIndex(), end(old.get()), now));
          } else if (isFlow) {
            added.append(between).append(key).append(": ").append(now);
          } else {
            added.append(key).append(": ").append(now).append(between);
          }
        });
    if (!added.isEmpty()) {
      // In a block the first key's place is one where no comment stands behind.
      int at = isFlow ? end(last(map)) : first.getIndex();
      changes.add(new Change(at, at, added.toString()));
    }
  }

  private static Node last(MappingNode map) {
    return map.getValue().get(map.getValue().size() - 1).getValueNode();
  }

  private static Mark start(Node node) {
    return node.getStartMark().orElseThrow();
  }

  private static int end(Node node) {
    // A block ends where the next key begins; what is meant is where its last value does.
    return node instanceof MappingNode map
            && map.getFlowStyle() == FlowStyle.BLOCK
            && !map.getValue().isEmpty()
        ? end(last(map))
        : node.getEndMark().orElseThrow().getIndex();
  }

  private String result() {
    StringBuilder result = new StringBuilder(text);
    changes.sort(Comparator.comparingInt(Change::to).thenComparingInt(Change::from).reversed());
    for (Change change : changes) {
      result.replace(
          text.offsetByCodePoints(0, change.from()),
          text.offsetByCodePoints(0, change.to()),
          change.now());
    }
    return result.toString();
  }
}
