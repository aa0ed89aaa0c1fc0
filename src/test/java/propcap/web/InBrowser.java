package propcap.web;

import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;

/** A small farm and its page for each test, in one window for all classes of a process. */
abstract class InBrowser extends Served {
  static final int WIDE = 1400;
  static final int LAPTOP = 1280;
  static final int PHONE = 360;

  private static @Nullable Chromium window;

  @Override
  int springs() {
    return Chromium.SPRINGS;
  }

  /** Skipped with a word where there is none. */
  @BeforeAll
  static void aBrowser() {
    if (window == null) {
      Chromium started = Chromium.start(WIDE, 1000);
      Runtime.getRuntime().addShutdownHook(new Thread(started::close, "closing the browser"));
      window = started;
    }
  }

  @AfterEach
  void leavePage() {
    if (window != null) {
      window.offline(false);
      // A page that is left open goes on to look for its server.
      window.driver().get("about:blank");
    }
  }

  /** The page of the farm, opened in a window of a width. */
  Chromium open(int width) {
    Chromium page = window;
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
    serveAnew();
    return open(width);
  }

  /** One that changes nothing yet, under the name that it is given. */
  static void putWhatIfBeside(Chromium page) {
    page.click("#what-if");
    page.awaitValue("#d-title", "What if 1");
    page.click("#dialog button[type='submit']");
    page.find("[data-file='what-if-1.yaml'][aria-pressed='true']");
  }

  /** What the plan says in a column of a row, whatever the page shows. */
  String cell(int row, String column) {
    return browser
        .state()
        .getAsJsonArray("sowings")
        .get(row)
        .getAsJsonObject()
        .getAsJsonObject("cells")
        .get(column)
        .getAsString();
  }
}
