package propcap;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Words that nobody says today stand in no line that a grower reads. */
class PlainWordsTest {
  private static final Pattern OLD =
      Pattern.compile(
          "\\bwant of\\b|\\bdoor of\\b|all luck|\\b(whence|thence|lest|thereof|hitherto|whilst)\\b");

  private static final Pattern LITERAL = Pattern.compile("\"(?:[^\"\\\\\\n]|\\\\.)*\"");

  /** What is printed or shown: all of a template, and of Java what stands in quotation marks. */
  private static List<String> old(String file, String text) {
    List<String> shown =
        file.endsWith(".java")
            ? LITERAL.matcher(text).results().map(m -> m.group()).toList()
            : List.of(text);
    List<String> found = new ArrayList<>();
    for (String words : shown) {
      Matcher matcher = OLD.matcher(words);
      while (matcher.find()) {
        found.add(file + ": " + matcher.group());
      }
    }
    return found;
  }

  @Test
  void noLineThatAGrowerReadsHasThem() throws IOException {
    List<String> found = new ArrayList<>();
    for (String folder : List.of("src/main/java", "src/main/jte", "src/main/resources")) {
      try (Stream<Path> files = Files.walk(Path.of(folder))) {
        for (Path file :
            files.filter(f -> f.toString().matches(".*\\.(java|jte|js|html)")).toList()) {
          found.addAll(old(file.toString(), Files.readString(file)));
        }
      }
    }
    assertThat(found).isEmpty();
  }

  @Test
  void theyAreFoundWhereTheyAre() {
    assertThat(old("A.java", "/* want of room */ say(\"late: \" + \"for want of room\");"))
        .containsExactly("A.java: want of");
    assertThat(old("a.jte", "<p>laid at the door of the tables</p>"))
        .containsExactly("a.jte: door of");
  }
}
