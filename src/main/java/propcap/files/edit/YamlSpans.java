package propcap.files.edit;

import org.snakeyaml.engine.v2.common.FlowStyle;
import org.snakeyaml.engine.v2.nodes.CollectionNode;
import org.snakeyaml.engine.v2.nodes.MappingNode;
import org.snakeyaml.engine.v2.nodes.Node;
import org.snakeyaml.engine.v2.nodes.NodeTuple;
import org.snakeyaml.engine.v2.nodes.SequenceNode;

/** Where the pieces of a YAML file stand in its text, and the text with something put there. */
final class YamlSpans {
  private final String text;
  private final int start;

  YamlSpans(String text) {
    this.text = text;
    // A byte-order mark is no part of what the parser is given.
    this.start = text.startsWith("\uFEFF") ? 1 : 0;
  }

  /** Where the parser's text starts. */
  int start() {
    return start;
  }

  String newLine() {
    return text.contains("\r\n") ? "\r\n" : "\n";
  }

  int start(Node node) {
    return at(node.getStartMark().orElseThrow().getIndex());
  }

  int column(Node node) {
    return node.getStartMark().orElseThrow().getColumn();
  }

  /** Right after the last sign of a node; the parser's own end of a block lies after its blanks. */
  int end(Node node) {
    if (node instanceof CollectionNode<?> c && c.getFlowStyle() == FlowStyle.BLOCK) {
      if (node instanceof MappingNode map && !map.getValue().isEmpty()) {
        NodeTuple last = map.getValue().get(map.getValue().size() - 1);
        return Math.max(
            end(last.getValueNode()), afterColon(last.getKeyNode(), last.getValueNode()));
      }
      if (node instanceof SequenceNode list && !list.getValue().isEmpty()) {
        return end(list.getValue().get(list.getValue().size() - 1));
      }
    }
    int end = at(node.getEndMark().orElseThrow().getIndex());
    int from = start(node);
    // A block of text ends with the line before the next key.
    while (end > from && Character.isWhitespace(text.charAt(end - 1))) {
      end--;
    }
    return end;
  }

  /** Right after the colon of a key; after the key where it has none. */
  int afterColon(Node key, Node value) {
    int keyEnd = at(key.getEndMark().orElseThrow().getIndex());
    int colon = text.indexOf(':', keyEnd);
    return colon >= 0 && colon < start(value) ? colon + 1 : keyEnd;
  }

  /** The dash of a list's item. */
  int dash(Node item) {
    return text.lastIndexOf('-', start(item) - 1);
  }

  /** The parser counts each character once; a Java string counts those past U+FFFF twice. */
  private int at(int index) {
    return text.offsetByCodePoints(start, index);
  }

  boolean isFirstOnLine(int at) {
    return text.substring(lineStart(at), at).isBlank();
  }

  int lineStart(int at) {
    return Math.max(start, text.lastIndexOf('\n', at - 1) + 1);
  }

  int lineEnd(int at) {
    int end = text.indexOf('\n', at);
    end = end < 0 ? text.length() : end;
    return end > at && text.charAt(end - 1) == '\r' ? end - 1 : end;
  }

  String put(int from, int to, String piece) {
    return text.substring(0, from) + piece + text.substring(to);
  }

  /** A line after the one that a piece ends on. */
  String putLine(int end, String line) {
    int at = lineEnd(end);
    return put(at, at, newLine() + line);
  }

  /** Without the lines from one piece's start to another's end. */
  String cutLines(int from, int end) {
    int to = text.indexOf('\n', end);
    if (to >= 0) {
      return put(lineStart(from), to + 1, "");
    }
    int before = lineStart(from);
    return put(before, text.length(), "");
  }

  /**
   * Without a piece in braces or brackets and one of the commas beside it.
   *
   * @param before end of the piece before it; less than 0 where it is the first
   */
  String cutFromFlow(int from, int end, int before) {
    int comma = comma(before < 0 ? end : before);
    if (before < 0) {
      int to = comma < 0 ? end : comma + 1;
      while (comma >= 0 && text.charAt(to) == ' ') {
        to++;
      }
      return text.substring(end, to).contains("#") ? put(from, end, "") : put(from, to, "");
    }
    return text.substring(comma, from).contains("#")
        ? text.substring(0, comma) + text.substring(comma + 1, from) + text.substring(end)
        : put(comma, end, "");
  }

  /** The next comma that is not in a comment, with nothing else before it; -1: none. */
  private int comma(int from) {
    for (int i = from; i < text.length(); i++) {
      char c = text.charAt(i);
      if (c == ',') {
        return i;
      }
      if (c == '#') {
        i = Math.max(i, lineEnd(i) - 1);
      } else if (!Character.isWhitespace(c)) {
        return -1;
      }
    }
    return -1;
  }
}
