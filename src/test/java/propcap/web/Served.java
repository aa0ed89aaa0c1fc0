package propcap.web;

import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import propcap.study.RunSettings;

/** A small farm in a folder of its own and its server for each test, asked as a page asks it. */
abstract class Served {
  @TempDir Path folder;
  Path scenario;
  Server server;
  Browser browser;

  /** Of a whole forecast. */
  int springs() {
    return RunSettings.DEFAULT_SEASONS;
  }

  @BeforeEach
  void serve() throws IOException {
    serve(Farm.in(folder));
  }

  private void serve(Path file) throws IOException {
    scenario = file;
    server = Server.start(file, 0, "test", springs());
    browser = new Browser(server.newLink());
  }

  /** The server is killed, and started again on what the folder holds by now. */
  final void serveAnew() throws IOException {
    serveAnew(scenario);
  }

  /** Another scenario is served in the place of the first. */
  final void serveAnew(Path other) throws IOException {
    server.close();
    serve(other);
  }

  @AfterEach
  void endServing() {
    server.close();
  }
}
