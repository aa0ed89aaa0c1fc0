package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** What a phone in the same network may read, and that it can do nothing else. */
class SharedTest extends Served {
  private final HttpClient phone = HttpClient.newHttpClient();
  private String link;

  @BeforeEach
  void aPageThatIsShared() throws IOException {
    link = server.share(InetAddress.getLoopbackAddress());
  }

  private HttpResponse<String> get(String at) throws Exception {
    return phone.send(
        HttpRequest.newBuilder(URI.create(at)).build(), HttpResponse.BodyHandlers.ofString());
  }

  private int status(String at) throws Exception {
    return get(at).statusCode();
  }

  @Test
  void theForecastAndTheAnswersAreThereToRead() throws Exception {
    assertThat(get(link).body()).contains("There is no forecast yet");
    try (News news = new News(browser)) {
      news.forecast();
      long id =
          browser.ask(
              Map.of(
                  "question",
                  "calendar",
                  "from",
                  "",
                  "to",
                  "",
                  "label",
                  "70x37mm",
                  "columns",
                  3,
                  "rows",
                  8));
      news.study(id, "done");
      String list = get(link).body();
      assertThat(list)
          .contains("Small spring", "The forecast", "What is to be done on which day?")
          .contains("answer/forecast/report.html", "answer/" + id + "/weeks.html");
      assertThat(get(link + "answer/forecast/report.html").body()).contains("Small spring");
      HttpResponse<String> weeks = get(link + "answer/" + id + "/weeks.html");
      assertThat(weeks.body()).contains("<h1>Week");
      assertThat(weeks.headers().firstValue("Content-Security-Policy").orElseThrow())
          .startsWith("default-src 'none'");
      assertThat(get(link + "answer/" + id + "/calendar.ics").headers().firstValue("Content-Type"))
          .hasValue("text/calendar; charset=utf-8");
      // The page itself has the same files.
      assertThat(browser.get("/answer/" + id + "/labels.html").body()).contains("tray labels");
    }
  }

  @Test
  void whoHasNoLinkReadsNothingAndWhoHasChangesNothing() throws Exception {
    String root = link.substring(0, link.indexOf('/', 8));
    assertThat(status(root + "/")).isEqualTo(404);
    assertThat(status(root + "/api/state")).isEqualTo(404);
    assertThat(status(root + "/open?token=x")).isEqualTo(404);
    assertThat(status(link.substring(0, link.length() - 2) + "/")).isEqualTo(404);
    assertThat(status(link + "api/state")).isEqualTo(404);
    assertThat(status(link + "../api/state")).isEqualTo(404);
    assertThat(status(link + "answer/forecast/report.html")).isEqualTo(404);
    HttpResponse<String> written =
        phone.send(
            HttpRequest.newBuilder(URI.create(link + "api/undo"))
                .POST(HttpRequest.BodyPublishers.ofString("{}"))
                .build(),
            HttpResponse.BodyHandlers.ofString());
    assertThat(written.statusCode()).isEqualTo(405);
  }
}
