package propcap.files;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import propcap.files.edit.YamlText.Step;

/** A file as growers might write it: maps and lists in braces or lines, with comments about. */
public final class RandomYaml {
  private final SplittableRandom luck;
  private final StringBuilder out = new StringBuilder();
  private int comments;
  private int names;

  public RandomYaml(SplittableRandom luck) {
    this.luck = luck;
    out.append("keep: this").append(lineEnd());
    map(0, 3, "");
  }

  /** With either sign for a line's end, and with or without one at the end of the file. */
  public String text() {
    String text = out.toString();
    if (luck.nextInt(4) == 0) {
      text = text.stripTrailing();
    }
    if (luck.nextInt(4) == 0) {
      text = text.replace("\n", "\r\n");
    }
    return luck.nextInt(8) == 0 ? "\uFEFF" + text : text;
  }

  private String lineEnd() {
    return (luck.nextInt(4) == 0 ? "  # c" + ++comments + ", and {more}" : "") + "\n";
  }

  private void comment(int indent) {
    if (luck.nextInt(4) == 0) {
      out.append(" ".repeat(indent)).append("# c").append(++comments).append(": [so]\n");
    }
    if (luck.nextInt(6) == 0) {
      out.append("\n");
    }
  }

  private String scalar() {
    return switch (luck.nextInt(6)) {
      case 0 -> "\"08:0" + luck.nextInt(10) + ", #" + luck.nextInt(5) + "\"";
      case 1 -> "'it''s " + luck.nextInt(9) + "'";
      case 2 -> luck.nextInt(40) + " %/day";
      case 3 -> "-" + luck.nextInt(9) + " days";
      default -> "v" + luck.nextInt(99);
    };
  }

  /** The lines of a map; the first one may stand behind a dash. */
  private void map(int indent, int depth, String dash) {
    int keys = 1 + luck.nextInt(4);
    for (int k = 0; k < keys; k++) {
      if (k > 0 || dash.isEmpty()) {
        comment(indent);
        out.append(" ".repeat(indent));
      } else {
        out.append(" ".repeat(indent - 2)).append(dash).append("name: n").append(++names);
        out.append(lineEnd()).append(" ".repeat(indent));
      }
      out.append("k").append(++names).append(":");
      value(indent, depth);
    }
  }

  private void value(int indent, int depth) {
    int kind = luck.nextInt(depth > 0 ? 7 : 4);
    switch (kind) {
      case 4 -> {
        out.append(lineEnd());
        map(indent + 2, depth - 1, "");
      }
      case 5 -> {
        out.append(lineEnd());
        for (int i = 0; i <= luck.nextInt(3); i++) {
          comment(indent + 2);
          map(indent + 4, depth - 1, "- ");
        }
      }
      case 6 -> {
        out.append(lineEnd());
        for (int i = 0; i <= luck.nextInt(3); i++) {
          comment(indent + 2);
          out.append(" ".repeat(indent + 2)).append("- ").append(named(indent)).append(lineEnd());
        }
      }
      case 3 -> out.append(" ").append(braces(indent, 2)).append(lineEnd());
      case 2 ->
          out.append(" [")
              .append(scalar())
              .append(", ")
              .append(scalar())
              .append("]")
              .append(lineEnd());
      default -> out.append(" ").append(scalar()).append(lineEnd());
    }
  }

  private String named(int indent) {
    return "{name: n" + ++names + ", k" + ++names + ": " + braces(indent + 4, 1) + "}";
  }

  private String braces(int indent, int depth) {
    StringBuilder in = new StringBuilder("{");
    int keys = 1 + luck.nextInt(3);
    for (int k = 0; k < keys; k++) {
      if (k > 0) {
        in.append(
            switch (luck.nextInt(4)) {
              case 0 -> ", # c" + ++comments + ", so\n" + " ".repeat(indent + 3);
              case 1 -> ",\n" + " ".repeat(indent + 3);
              default -> ", ";
            });
      }
      in.append("k").append(++names).append(": ");
      in.append(depth > 0 && luck.nextInt(3) == 0 ? braces(indent + 3, depth - 1) : scalar());
    }
    return in.append("}").toString();
  }

  /**
   * A change, and what the file should hold after it.
   *
   * @param value null: taken out
   */
  public record Edit(List<Step> path, @Nullable Object value, Object after) {}

  /** A change of something that is there, or something new. */
  public static Edit edit(Object model, SplittableRandom luck) {
    List<Step> path = new ArrayList<>();
    Object at = model;
    while (true) {
      if (at instanceof Map<?, ?> map) {
        List<String> keys =
            map.keySet().stream()
                .map(Object::toString)
                .filter(k -> !k.equals("keep") && !k.equals("name"))
                .toList();
        if (keys.isEmpty() || luck.nextInt(5) == 0) {
          path.add(Step.to("new" + luck.nextInt(1000)));
          return put(model, path, value(luck));
        }
        String key = keys.get(luck.nextInt(keys.size()));
        path.add(Step.to(key));
        at = get(map, key);
      } else if (at instanceof List<?> list && list.get(0) instanceof Map) {
        Object item = list.get(luck.nextInt(list.size()));
        path.add(Step.toItem("name", get((Map<?, ?>) item, "name").toString()));
        at = item;
      }
      boolean isEnd =
          !(at instanceof Map) && !(at instanceof List<?> list && list.get(0) instanceof Map);
      if (isEnd || luck.nextInt(6) == 0) {
        return luck.nextInt(3) == 0
            ? new Edit(path, null, removed(model, path))
            : put(
                model,
                path,
                path.get(path.size() - 1).named().isPresent() ? named(path, luck) : value(luck));
      }
    }
  }

  private static Object named(List<Step> path, SplittableRandom luck) {
    Map<String, Object> item = new LinkedHashMap<>();
    item.put("name", path.get(path.size() - 1).named().orElseThrow());
    item.put("x", "y" + luck.nextInt(9));
    return item;
  }

  private static Object value(SplittableRandom luck) {
    return switch (luck.nextInt(4)) {
      case 0 -> Map.of("a", "1 C", "b", List.of("x", "y z"));
      case 1 -> List.of("p, q", "r");
      default -> List.of("7 days", "a: b", "*", "-3 C", "").get(luck.nextInt(5));
    };
  }

  private static Edit put(Object model, List<Step> path, Object value) {
    return new Edit(List.copyOf(path), value, with(model, path, value));
  }

  private static Object with(Object at, List<Step> path, Object value) {
    if (path.isEmpty()) {
      return value;
    }
    Step step = path.get(0);
    List<Step> rest = path.subList(1, path.size());
    if (at instanceof List<?> list) {
      return list.stream()
          .map(i -> isNamed(i, step) ? with(i, rest, value) : i)
          .collect(Collectors.toList());
    }
    Map<Object, Object> map = new LinkedHashMap<>((Map<?, ?>) at);
    map.put(step.key(), rest.isEmpty() ? value : with(get(map, step.key()), rest, value));
    return map;
  }

  private static Object get(Map<?, ?> map, String key) {
    return Objects.requireNonNull(map.get(key));
  }

  private static boolean isNamed(Object item, Step step) {
    return item instanceof Map<?, ?> map && step.named().orElse("").equals(map.get(step.key()));
  }

  /** What is left empty goes too. */
  private static Object removed(Object at, List<Step> path) {
    Step step = path.get(0);
    List<Step> rest = path.subList(1, path.size());
    if (at instanceof List<?> list) {
      List<Object> left = new ArrayList<>();
      for (Object item : list) {
        Object now = !isNamed(item, step) ? item : rest.isEmpty() ? List.of() : removed(item, rest);
        if (!isEmpty(now)) {
          left.add(now);
        }
      }
      return left;
    }
    Map<Object, Object> map = new LinkedHashMap<>((Map<?, ?>) at);
    Object now = rest.isEmpty() ? List.of() : removed(get(map, step.key()), rest);
    if (isEmpty(now)) {
      map.remove(step.key());
    } else {
      map.put(step.key(), now);
    }
    return map;
  }

  private static boolean isEmpty(Object value) {
    return value instanceof Map<?, ?> map
        ? map.isEmpty()
        : value instanceof List<?> list && list.isEmpty();
  }
}
