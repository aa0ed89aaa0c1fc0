package propcap.web;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import com.sun.management.OperatingSystemMXBean;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.lang.management.ManagementFactory;
import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Map;

/** How long after a change the page has its first forecast, and the one of all springs. */
public final class Redraw {
  private static final int WARMING = 5;
  private static final int CHANGES = 9;

  private static final OperatingSystemMXBean MACHINE =
      ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);

  private Redraw() {}

  /**
   * Changes the demonstration's glasshouse, over HTTP as the page does.
   *
   * @param folder an empty one
   * @return medians, seconds: to the first forecast, and to the whole one; then what both took of a
   *     processor, all threads and the pictures in it
   */
  public static double[] medians(Path folder) throws IOException, InterruptedException {
    for (String name : new String[] {"scenarios", "demo-data"}) {
      Files.createDirectories(folder.resolve(name));
      try (var files = Files.newDirectoryStream(Path.of(name))) {
        for (Path file : files) {
          Files.copy(file, folder.resolve(file));
        }
      }
    }
    double[][] took = new double[4][CHANGES];
    try (Server server = Server.start(folder.resolve("scenarios/spring.yaml"), 0, "bench")) {
      Browser browser = new Browser(server.newLink());
      try (BufferedReader news = news(browser)) {
        for (int i = -WARMING; i < CHANGES; i++) {
          int n = Math.max(0, i);
          long begun = System.nanoTime();
          long worked = MACHINE.getProcessCpuTime();
          browser.spaces("Glasshouse", 260 + i);
          browser.post("/api/outlook", Map.of("file", ""));
          long version = browser.state().get("version").getAsLong();
          JsonObject forecast = next(browser, news, version);
          took[0][n] = (System.nanoTime() - begun) / 1e9;
          took[2][n] = (MACHINE.getProcessCpuTime() - worked) / 1e9;
          while (!forecast.get("isWhole").getAsBoolean()) {
            forecast = next(browser, news, version);
          }
          took[1][n] = (System.nanoTime() - begun) / 1e9;
          took[3][n] = (MACHINE.getProcessCpuTime() - worked) / 1e9;
        }
      }
    }
    return Arrays.stream(took)
        .mapToDouble(all -> Arrays.stream(all).sorted().toArray()[CHANGES / 2])
        .toArray();
  }

  private static BufferedReader news(Browser browser) throws IOException, InterruptedException {
    return new BufferedReader(
        new InputStreamReader(
            HttpClient.newHttpClient()
                .send(
                    browser.request("/api/events").header("Cookie", browser.cookie()).build(),
                    HttpResponse.BodyHandlers.ofInputStream())
                .body(),
            StandardCharsets.UTF_8));
  }

  /** The next forecast of a version. */
  private static JsonObject next(Browser browser, BufferedReader news, long version)
      throws IOException {
    while (true) {
      String line = news.readLine();
      if (line == null) {
        throw new IllegalStateException("the news ended");
      }
      if (line.equals("event: forecast")) {
        JsonObject told =
            JsonParser.parseString(browser.get("/api/forecast").body()).getAsJsonObject();
        if (told.get("version").getAsLong() == version) {
          return told;
        }
      }
    }
  }
}
