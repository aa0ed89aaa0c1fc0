package propcap.files.edit;

import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.snakeyaml.engine.v2.common.ScalarStyle;
import org.snakeyaml.engine.v2.nodes.ScalarNode;

/** Values as YAML writes them: plain where that is safe anywhere, else in double quotes. */
final class YamlWords {
  /** No sign that means something to YAML, in a map's braces or out of them. */
  private static final Pattern PLAIN =
      Pattern.compile(
          "(?:[\\p{L}\\p{N}_.(\\p{Sc}]|[-+](?=[0-9]))(?:[\\p{L}\\p{N}\\p{Sc} _.;()/+%°'-]*[\\p{L}\\p{N}\\p{Sc}_.)%])?");

  private YamlWords() {}

  static String scalar(String word) {
    return PLAIN.matcher(word).matches() ? word : quoted(word);
  }

  /** A word as it is written in another's place: in quotes where that stood in some. */
  static String like(ScalarNode old, String word) {
    boolean isQuoted =
        old.getScalarStyle() == ScalarStyle.DOUBLE_QUOTED
            || old.getScalarStyle() == ScalarStyle.SINGLE_QUOTED;
    return isQuoted ? quoted(word) : scalar(word);
  }

  static String quoted(String word) {
    StringBuilder quoted = new StringBuilder("\"");
    word.codePoints()
        .forEach(
            c -> {
              if (c == '"' || c == '\\') {
                quoted.append('\\').append((char) c);
              } else if (isOpen(c)) {
                quoted.appendCodePoint(c);
              } else if (c <= 0xFFFF) {
                quoted.append(String.format("\\u%04X", c));
              } else {
                quoted.append(String.format("\\U%08X", c));
              }
            });
    return quoted.append('"').toString();
  }

  /** Whether a character may stand in a text as it is. */
  private static boolean isOpen(int c) {
    return switch (Character.getType(c)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          false;
      default -> true;
    };
  }

  /** A value on one line. */
  static String flow(Object value) {
    if (value instanceof Map<?, ?> map) {
      return map.entrySet().stream()
          .map(e -> scalar(e.getKey().toString()) + ": " + flow(e.getValue()))
          .collect(Collectors.joining(", ", "{", "}"));
    }
    if (value instanceof List<?> list) {
      return list.stream().map(YamlWords::flow).collect(Collectors.joining(", ", "[", "]"));
    }
    return scalar(value.toString());
  }

  /** A value behind a key's colon; a list of maps has a line for each, as growers write it. */
  static String block(Object value, int column, String newLine) {
    if (value instanceof List<?> list
        && !list.isEmpty()
        && list.stream().allMatch(i -> i instanceof Map)) {
      String start = newLine + " ".repeat(column + 2) + "- ";
      return list.stream().map(i -> start + flow(i)).collect(Collectors.joining());
    }
    return " " + flow(value);
  }
}
