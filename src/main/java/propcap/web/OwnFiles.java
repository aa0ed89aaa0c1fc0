package propcap.web;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Set;
import propcap.web.request.Reply;

/** The program's own files that make the page, and no others. */
final class OwnFiles {
  private static final String PAGE = "page.html";

  private static final Set<String> FILES =
      Set.of(
          "page.css",
          "page.js",
          "server.js",
          "fields.js",
          "places.js",
          "sowings.js",
          "paste.js",
          "timeline.js",
          "rows.js",
          "outcome.js",
          "crops.js",
          "cropbook.js",
          "money.js",
          "weather.js",
          "sofar.js",
          "tabs.js",
          "beside.js",
          "outlook.js",
          "saving.js",
          "questions.js");

  private OwnFiles() {}

  /** Whether there is one of a name; the page itself has none. */
  static boolean has(String name) {
    return name.isEmpty() || FILES.contains(name);
  }

  static Reply reply(String name) throws IOException {
    String file = name.isEmpty() ? PAGE : name;
    try (InputStream in = OwnFiles.class.getResourceAsStream(file)) {
      if (in == null) {
        throw new IOException("the program lacks its file " + file);
      }
      return Reply.file(file, new String(in.readAllBytes(), StandardCharsets.UTF_8));
    }
  }
}
