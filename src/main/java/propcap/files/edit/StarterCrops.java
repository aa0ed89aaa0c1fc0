package propcap.files.edit;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import propcap.files.scenario.CropBook;

/**
 * The crop list of a first set of files: notes in which each line {@code # entry of NAME} gives way
 * to that crop as the list that Propcap brings has it, and the line {@code # sources} to the
 * sources of all of them.
 */
final class StarterCrops {
  private static final Pattern ENTRY = Pattern.compile("\\s*# entry of (\\S+)");
  private static final String SOURCES = "# sources";
  private static final int WIDTH = 118;

  private StarterCrops() {}

  static String text(String notes) {
    CropBook book = CropBook.ofPropcap();
    Set<CropBook.Source> sources = new LinkedHashSet<>();
    List<String> lines = new ArrayList<>();
    for (String line : notes.lines().toList()) {
      Matcher named = ENTRY.matcher(line);
      if (named.matches()) {
        CropBook.Entry entry =
            book.named(named.group(1))
                .orElseThrow(() -> new IllegalStateException("no crop " + named.group(1)));
        lines.addAll(entry.text());
        sources.addAll(entry.sources());
      } else {
        lines.add(line);
      }
    }
    List<String> references = sources.stream().flatMap(s -> wrapped(s).stream()).toList();
    int at = lines.indexOf(SOURCES);
    if (at >= 0) {
      lines.remove(at);
      lines.addAll(at, references);
    }
    return String.join("\n", lines) + "\n";
  }

  /** A source as the key at a list's head has it. */
  static List<String> wrapped(CropBook.Source source) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder(String.format("#   %-8s", "[" + source.tag() + "]"));
    for (String word : source.reference().split(" ", -1)) {
      if (line.length() + 1 + word.length() > WIDTH) {
        lines.add(line.toString());
        line = new StringBuilder("#           ");
      }
      line.append(' ').append(word);
    }
    lines.add(line.toString());
    return lines;
  }
}
