package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * A page that is read as it is rendered hides its comments: the command whose output it prints must
 * stand before it, to be copied.
 */
class CommandsSeenInDocsTest {
  private static final Pattern COMMENT =
      Pattern.compile("<!-- (output: )?(.+?) -->", Pattern.DOTALL);

  private static List<String> hidden(String page) {
    StringBuilder seen = new StringBuilder();
    Matcher comments = COMMENT.matcher(page);
    List<String> hidden = new ArrayList<>();
    while (comments.find()) {
      comments.appendReplacement(seen, "");
      String command = "    ./propcap " + comments.group(2) + "\n";
      if (comments.group(1) != null && !seen.toString().contains(command)) {
        hidden.add(comments.group(2));
      }
    }
    return hidden;
  }

  static List<Path> pages() throws IOException {
    try (Stream<Path> docs = Files.list(Path.of("docs"))) {
      return Stream.concat(Stream.of(Path.of("README.md")), docs)
          .filter(page -> page.toString().endsWith(".md"))
          .sorted()
          .toList();
    }
  }

  @ParameterizedTest
  @MethodSource("pages")
  void everyCommandWhoseOutputIsPrintedIsSeen(Path page) throws IOException {
    assertThat(hidden(Files.readString(page))).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"<!-- output: run it -->", "    ./propcap run\n<!-- output: run it -->"})
  void aHiddenOneIsNoticed(String text) {
    assertThat(hidden(text)).containsExactly("run it");
  }
}
