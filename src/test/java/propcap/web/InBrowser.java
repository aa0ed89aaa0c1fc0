package propcap.web;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;

/** A small farm and its page for each test, in one browser for all of a class. */
abstract class InBrowser {
  static final int WIDE = 1400;
  static final int PHONE = 360;

  private static @Nullable Chromium browser;

  @TempDir Path folder;
  Server server;
  Path scenario;

  /** Skipped with a word where there is none. */
  @BeforeAll
  static void aBrowser() {
    browser = Chromium.start(WIDE, 1000);
  }

  @AfterAll
  static void closeBrowser() {
    if (browser != null) {
      browser.close();
      browser = null;
    }
  }

  @BeforeEach
  void aServer() throws IOException {
    scenario = Farm.in(folder);
    server = Server.start(scenario, 0, "test");
  }

  @AfterEach
  void closeServer() {
    if (browser != null) {
      // A page that is left open goes on to look for its server.
      browser.driver().get("about:blank");
    }
    server.close();
  }

  /** The page of the farm, opened in a window of a width. */
  Chromium open(int width) {
    Chromium page = browser;
    if (page == null) {
      throw new IllegalStateException("no browser was started");
    }
    page.resize(width, 1000);
    var unused = page.complaints();
    page.open(server.newLink());
    return page;
  }

  /** The server is killed and started again. */
  Chromium openAnew(int width) throws IOException {
    server.close();
    server = Server.start(scenario, 0, "test");
    return open(width);
  }

  /** What the plan says in a column of a row, whatever the page shows. */
  String cell(int row, String column) {
    return new Browser(server.newLink())
        .state()
        .getAsJsonArray("sowings")
        .get(row)
        .getAsJsonObject()
        .getAsJsonObject("cells")
        .get(column)
        .getAsString();
  }
}
