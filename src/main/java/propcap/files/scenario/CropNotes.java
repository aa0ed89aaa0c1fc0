package propcap.files.scenario;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What a crop list's comments tell: a key of sources at the head, {@code # [CP] common practice},
 * headings such as {@code # ---- herbs ----}, and tags beside the numbers.
 */
public final class CropNotes {
  private static final Pattern TAG = Pattern.compile("\\[([A-Z][A-Z0-9]*)\\]");
  private static final Pattern REFERENCE =
      Pattern.compile("\\s*#\\s+((?:\\[[A-Z][A-Z0-9]*\\]\\s*)+)(.*)");
  private static final Pattern CONTINUED = Pattern.compile("\\s*#\\s{5,}(.+)");
  private static final Pattern HEADING = Pattern.compile("\\s*# -{2,} (\\p{L}+?)s? -{2,}");

  private static final String ALSO = "# also called ";

  private final List<String> lines;
  private final Map<String, String> references = new LinkedHashMap<>();
  private final int keyEnd;

  /** Looks through a list's text. */
  public CropNotes(String text) {
    lines = text.lines().toList();
    List<String> tags = List.of();
    int end = 0;
    for (int at = 0; at < lines.size(); at++) {
      String line = lines.get(at);
      Matcher reference = REFERENCE.matcher(line);
      Matcher continued = CONTINUED.matcher(line);
      if (reference.matches()) {
        tags = tags(List.of(reference.group(1)));
        for (String tag : tags) {
          references.putIfAbsent(tag, reference.group(2));
        }
        end = at + 1;
      } else if (continued.matches()) {
        for (String tag : tags) {
          references.merge(tag, continued.group(1), (a, b) -> a + " " + b);
        }
        end = tags.isEmpty() ? end : at + 1;
      } else if (!line.isBlank() && !line.strip().startsWith("#")) {
        // The key stands above the crops: a tag further down refers to it.
        break;
      } else {
        tags = List.of();
      }
    }
    keyEnd = end;
  }

  /** Other everyday names in an entry's lines, such as those of {@code # also called aubergine}. */
  static List<String> also(List<String> entry) {
    return entry.stream()
        .map(String::strip)
        .filter(line -> line.startsWith(ALSO))
        .flatMap(line -> Stream.of(line.substring(ALSO.length()).split(",")))
        .map(String::strip)
        .toList();
  }

  /** How many lines there are up to the key's last; 0 where the list has no key of sources. */
  public int keyEnd() {
    return keyEnd;
  }

  /** The sources by their tags, in the key's order. */
  public Map<String, String> references() {
    return references;
  }

  /** The tags that stand in some lines, each once. */
  static List<String> tags(List<String> lines) {
    LinkedHashSet<String> tags = new LinkedHashSet<>();
    lines.forEach(line -> TAG.matcher(line).results().forEach(t -> tags.add(t.group(1))));
    return List.copyOf(tags);
  }

  /**
   * An entry with its comments, as it is written.
   *
   * @param line that its name stands on, counted from 1
   */
  List<String> entry(int line) {
    List<String> entry = new ArrayList<>(List.of(lines.get(line - 1)));
    int indent = indent(lines.get(line - 1));
    for (String next : lines.subList(line, lines.size())) {
      if (!next.isBlank() && indent(next) <= indent) {
        break;
      }
      entry.add(next);
    }
    while (entry.get(entry.size() - 1).isBlank()) {
      entry.remove(entry.size() - 1);
    }
    return List.copyOf(entry);
  }

  /** The last heading above a line, such as {@code flower}; empty where there is none. */
  String kind(int line) {
    for (int above = line - 2; above >= 0; above--) {
      Matcher heading = HEADING.matcher(lines.get(above));
      if (heading.matches()) {
        return heading.group(1);
      }
    }
    return "";
  }

  private static int indent(String line) {
    return line.length() - line.stripLeading().length();
  }
}
