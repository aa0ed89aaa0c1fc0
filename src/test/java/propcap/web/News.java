package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.net.http.HttpClient;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.function.Predicate;

/** What the server tells a page that listens. */
final class News implements AutoCloseable {
  private final Browser browser;
  private final InputStream stream;
  private final BufferedReader lines;

  News(Browser browser) throws IOException, InterruptedException {
    this.browser = browser;
    HttpResponse<InputStream> events =
        HttpClient.newHttpClient()
            .send(
                browser.request("/api/events").header("Cookie", browser.cookie()).build(),
                HttpResponse.BodyHandlers.ofInputStream());
    stream = events.body();
    lines = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8));
    assertThat(lines.readLine()).startsWith("retry");
  }

  /** Waits for the first piece of news of a kind that fits. */
  JsonObject await(String what, Predicate<JsonObject> fits) throws IOException {
    String line = lines.readLine();
    while (line != null) {
      if (line.equals("event: " + what)) {
        JsonObject told =
            JsonParser.parseString(lines.readLine().substring("data: ".length())).getAsJsonObject();
        if (fits.test(told)) {
          return told;
        }
      }
      line = lines.readLine();
    }
    throw new AssertionError("the news ended without " + what);
  }

  /** Waits until a study has come to a stage. */
  JsonObject study(long id, String stage) throws IOException {
    return await(
        "study",
        told -> told.get("id").getAsLong() == id && told.get("stage").getAsString().equals(stage));
  }

  /** The forecast from all springs of the scenario that was opened, as it is now. */
  JsonObject forecast() throws IOException {
    // What is to be mended has no forecast, and would be waited for without end.
    assertThat(browser.state().getAsJsonArray("faults")).isEmpty();
    browser.post("/api/outlook", Map.of("file", ""));
    while (true) {
      await("forecast", told -> true);
      HttpResponse<String> reply = browser.get("/api/forecast");
      assertThat(reply.statusCode()).as(reply.body()).isEqualTo(200);
      JsonObject forecast = JsonParser.parseString(reply.body()).getAsJsonObject();
      if (forecast.get("isWhole").getAsBoolean()
          && forecast.get("version").equals(browser.state().get("version"))) {
        return forecast;
      }
    }
  }

  @Override
  public void close() throws IOException {
    stream.close();
  }
}
