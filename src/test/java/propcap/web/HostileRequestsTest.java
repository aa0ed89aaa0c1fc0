package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What must be refused is refused, and nothing is changed by it. */
class HostileRequestsTest {
  private static final String SAVE = "{\"over\": \"true\"}";

  @TempDir Path folder;
  private Server server;
  private Browser browser;
  private Map<String, String> before;

  @BeforeEach
  void aPageWithSomethingUnsaved() throws IOException {
    Files.createDirectory(folder.resolve("farm"));
    server = Server.start(Farm.in(folder.resolve("farm")), 0, "test");
    browser = new Browser(server.newLink());
    assertThat(browser.spaces("Chamber", 7).statusCode()).isEqualTo(200);
    before = Farm.files(folder);
  }

  @AfterEach
  void nothingWasChanged() throws IOException {
    server.close();
    assertThat(Farm.files(folder)).isEqualTo(before);
  }

  /** Sends lines as they are, which no well-behaved client would. */
  private String raw(String... lines) throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), browser.port())) {
      OutputStream out = socket.getOutputStream();
      out.write((String.join("\r\n", lines) + "\r\n\r\n").getBytes(StandardCharsets.UTF_8));
      out.flush();
      socket.setSoTimeout(20_000);
      byte[] reply = socket.getInputStream().readNBytes(12);
      return new String(reply, StandardCharsets.UTF_8);
    }
  }

  private HttpResponse<String> postFrom(String origin) {
    return browser.send(
        browser
            .request("/api/save")
            .header("Cookie", browser.cookie())
            .header("Content-Type", "application/json")
            .header("Origin", origin)
            .POST(HttpRequest.BodyPublishers.ofString(SAVE)));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"farm.example", "127.0.0.1", "127.0.0.1:1", "localhost.farm.example", "[::1]"})
  void aForeignHostIsRefused(String host) throws IOException {
    assertThat(raw("GET /api/state HTTP/1.1", "Host: " + host, "Cookie: " + browser.cookie()))
        .isEqualTo("HTTP/1.1 403");
  }

  @Test
  void twoHostsOrNoneAreRefused() throws IOException {
    String host = "Host: 127.0.0.1:" + browser.port();
    assertThat(raw("GET / HTTP/1.1", host, host, "Cookie: " + browser.cookie())).contains(" 40");
    assertThat(raw("GET / HTTP/1.0", "Cookie: " + browser.cookie())).contains(" 40");
  }

  @ParameterizedTest
  @ValueSource(strings = {"http://farm.example", "null", "https://127.0.0.1", "http://127.0.0.1:1"})
  void aForeignOriginIsRefused(String origin) {
    assertThat(postFrom(origin).statusCode()).isEqualTo(403);
    assertThat(
            browser
                .send(
                    browser
                        .request("/api/state")
                        .header("Cookie", browser.cookie())
                        .header("Origin", origin)
                        .GET())
                .statusCode())
        .isEqualTo(403);
  }

  @Test
  void aPostWithoutAnOriginIsRefused() {
    assertThat(
            browser
                .send(
                    browser
                        .request("/api/save")
                        .header("Cookie", browser.cookie())
                        .header("Content-Type", "application/json")
                        .POST(HttpRequest.BodyPublishers.ofString(SAVE)))
                .statusCode())
        .isEqualTo(403);
  }

  @Test
  void aRequestThatAnotherSiteCausedIsRefused() {
    assertThat(
            browser
                .send(
                    browser
                        .request("/api/state")
                        .header("Cookie", browser.cookie())
                        .header("Sec-Fetch-Site", "cross-site")
                        .GET())
                .statusCode())
        .isEqualTo(403);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "propcap=x", "propcap-1=x"})
  void aBadCookieIsRefused(String cookie) {
    String mine = cookie.replace("propcap-1", browser.cookie().split("=", 2)[0]);
    for (String path :
        List.of("/", "/api/state", "/page.js", "/api/events", "/api/section?id=room")) {
      assertThat(browser.send(browser.request(path).header("Cookie", mine).GET()).statusCode())
          .isEqualTo(403);
    }
  }

  @Test
  void aLinkOpensOnceAndAWrongOneNever() {
    String link = server.newLink();
    String path = link.substring(link.indexOf("/open"));
    assertThat(new Browser(link).cookie()).isEqualTo(browser.cookie());
    assertThat(browser.send(browser.request(path).GET()).statusCode()).as("again").isEqualTo(403);
    for (String wrong :
        List.of("/open", "/open?token=", "/open?token=x", path + "x", path.replace("token", "t"))) {
      assertThat(browser.send(browser.request(wrong).GET()).statusCode()).isEqualTo(403);
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/small.yaml",
        "/crops.yaml",
        "/../small.yaml",
        "/..%2f..%2fetc/passwd",
        "/%2e%2e/small.yaml",
        "//etc/passwd",
        "/api/../small.yaml",
        "/page.js/../../small.yaml",
        "/.small.draft.json",
        "/package-info.class"
      })
  void noFileIsServedByItsPath(String path) throws IOException {
    assertThat(
            raw(
                "GET " + path + " HTTP/1.1",
                "Host: 127.0.0.1:" + browser.port(),
                "Cookie: " + browser.cookie()))
        .isIn("HTTP/1.1 404", "HTTP/1.1 400");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "../out.yaml",
        "/etc/out.yaml",
        "a/../../out.yaml",
        "..\\out.yaml",
        ".hidden.yaml",
        "out.sh",
        "out.yaml/",
        "C:out.yaml",
        "small.yaml",
        ""
      })
  void nothingIsSavedUnderANameThatLeadsElsewhere(String name) {
    assertThat(browser.post("/api/save-as", Map.of("name", name)).statusCode()).isEqualTo(400);
    assertThat(browser.post("/api/open-beside", Map.of("name", name)).statusCode()).isEqualTo(400);
    assertThat(
            browser
                .edit(Map.of("do", "head", "key", "weather", "value", "../" + name))
                .statusCode())
        .isEqualTo(400);
  }

  @Test
  void aLinkThatLeadsOutOfTheFolderIsNotFollowed() throws IOException {
    Path outside = Files.writeString(folder.resolve("outside.yaml"), "name: x\nplaces: []\n");
    Path link = Files.createSymbolicLink(folder.resolve("farm").resolve("link.yaml"), outside);
    Files.createSymbolicLink(folder.resolve("farm").resolve("results"), folder);
    assertThat(browser.post("/api/save-as", Map.of("name", "link.yaml")).statusCode())
        .isEqualTo(400);
    assertThat(browser.post("/api/open-beside", Map.of("name", "link.yaml")).statusCode())
        .isEqualTo(400);
    Files.delete(link);
    Files.delete(folder.resolve("farm").resolve("results"));
    Files.delete(outside);
  }

  @Test
  void aBodyOf100MegabytesIsRefusedUnread() throws IOException {
    assertThat(
            raw(
                "POST /api/edit HTTP/1.1",
                "Host: 127.0.0.1:" + browser.port(),
                "Origin: http://127.0.0.1:" + browser.port(),
                "Content-Type: application/json",
                "Cookie: " + browser.cookie(),
                "Content-Length: 104857600"))
        .isEqualTo("HTTP/1.1 413");
  }

  @Test
  void aBodyThatDoesNotSayItsLengthIsReadNoFurtherThanItMayBe() throws IOException {
    try (Socket socket = new Socket(InetAddress.getLoopbackAddress(), browser.port())) {
      OutputStream out = socket.getOutputStream();
      String head =
          String.join(
              "\r\n",
              "POST /api/edit HTTP/1.1",
              "Host: 127.0.0.1:" + browser.port(),
              "Origin: http://127.0.0.1:" + browser.port(),
              "Content-Type: application/json",
              "Cookie: " + browser.cookie(),
              "Transfer-Encoding: chunked",
              "",
              "");
      out.write(head.getBytes(StandardCharsets.UTF_8));
      byte[] chunk = ("10000\r\n" + "x".repeat(0x10000) + "\r\n").getBytes(StandardCharsets.UTF_8);
      for (int i = 0; i < 17; i++) {
        out.write(chunk);
      }
      out.flush();
      socket.setSoTimeout(20_000);
      assertThat(new String(socket.getInputStream().readNBytes(12), StandardCharsets.UTF_8))
          .isEqualTo("HTTP/1.1 413");
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "[]",
        "{",
        "nonsense",
        "{\"version\": {}}",
        "{\"version\": \"x\", \"edits\": []}",
        "{\"version\": 2}",
        "{\"version\": 2, \"edits\": {}}",
        "{\"version\": 2, \"edits\": [1]}",
        "{\"version\": 2, \"edits\": [{\"do\": \"rm\"}]}",
        "{\"version\": 2, \"edits\": [{\"do\": \"place\", \"name\": \"Chamber\", \"key\": \"a b\", \"value\": \"x\"}]}",
        "{\"version\": 2, \"edits\": [{\"do\": \"place\", \"name\": \"Chamber\", \"key\": \"spaces\", \"value\": \"1\\n2\"}]}",
        "{\"version\": 2, \"edits\": [{\"do\": \"sowing\", \"row\": 99, \"keys\": {\"trays\": \"1\"}}]}",
        "{\"version\": 2, \"edits\": [{\"do\": \"sowing\", \"row\": -1, \"keys\": {\"trays\": \"1\"}}]}",
        "{\"version\": 2, \"edits\": [{\"do\": \"head\", \"key\": \"crops\", \"value\": \"/etc/passwd\"}]}",
        "{\"version\": 2, \"edits\": [{\"do\": \"head\", \"key\": \"extends\", \"value\": \"/etc/passwd\"}]}",
        "{\"version\": 2, \"edits\": [{\"do\": \"head\", \"key\": \"weather\", \"value\": \"/etc/passwd\"}]}",
        "{\"version\": 2, \"edits\": [{\"do\": \"record\", \"name\": \"../x.csv\", \"text\": \"x\"}]}",
        "{\"version\": 2, \"edits\": [{\"do\": \"record\", \"name\": \"sowings.csv\", \"text\": \"x\"}]}"
      })
  void aRequestThatMakesNoSenseIsABadOne(String body) {
    assertThat(
            browser
                .send(browser.asPage("/api/edit").POST(HttpRequest.BodyPublishers.ofString(body)))
                .statusCode())
        .isEqualTo(400);
  }

  @Test
  void bracketsWithoutEndAreABadRequest() {
    String deep = "{\"a\":".repeat(50_000);
    assertThat(
            browser
                .send(browser.asPage("/api/edit").POST(HttpRequest.BodyPublishers.ofString(deep)))
                .statusCode())
        .isEqualTo(400);
  }

  @Test
  void otherMethodsAndOtherTypesAreRefused() {
    assertThat(
            browser
                .send(
                    browser
                        .asPage("/api/save")
                        .method("PUT", HttpRequest.BodyPublishers.ofString(SAVE)))
                .statusCode())
        .isEqualTo(405);
    assertThat(browser.send(browser.asPage("/api/save").DELETE()).statusCode()).isEqualTo(405);
    assertThat(
            browser
                .send(
                    browser
                        .request("/api/save")
                        .header("Cookie", browser.cookie())
                        .header("Origin", "http://127.0.0.1:" + browser.port())
                        .header("Content-Type", "text/plain")
                        .POST(HttpRequest.BodyPublishers.ofString(SAVE)))
                .statusCode())
        .isEqualTo(415);
  }

  @Test
  void fiftyRequestsOfAStrangerAtOnceAreAllRefused() throws Exception {
    assertThat(atOnce(() -> browser.send(browser.request("/api/state").GET()).statusCode()))
        .hasSize(50)
        .containsOnly(403);
  }

  @Test
  void ofFiftyQuestionsAtOnceOneRunsAFewWaitAndTheRestAreRefused() throws Exception {
    List<Integer> replies =
        atOnce(
            () ->
                browser
                    .post("/api/ask", Map.of("question", "bottleneck", "steps", 20))
                    .statusCode());
    assertThat(replies).hasSize(50).containsOnly(200, 429);
    assertThat(Collections.frequency(replies, 200)).isBetween(8, 20);
    assertThat(browser.get("/api/state").statusCode()).as("still there").isEqualTo(200);
  }

  private static List<Integer> atOnce(Callable<Integer> request) throws Exception {
    ExecutorService threads = Executors.newFixedThreadPool(50);
    try {
      List<Integer> replies = new ArrayList<>();
      for (Future<Integer> reply : threads.invokeAll(Collections.nCopies(50, request))) {
        replies.add(reply.get());
      }
      return replies;
    } finally {
      threads.shutdownNow();
    }
  }

  @Test
  void noOtherMachineCanReachIt() throws IOException {
    for (NetworkInterface each : Collections.list(NetworkInterface.getNetworkInterfaces())) {
      for (InetAddress address : Collections.list(each.getInetAddresses())) {
        if (!address.isLoopbackAddress()) {
          assertThat(isOpen(address)).as("%s", address).isFalse();
        }
      }
    }
  }

  private boolean isOpen(InetAddress address) {
    try (Socket socket = new Socket(address, browser.port())) {
      return socket.isConnected();
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void everyReplyForbidsWhatAPageCouldBeMisusedFor() {
    for (String path : List.of("/", "/page.js", "/api/state", "/nothing")) {
      var headers = browser.get(path).headers();
      assertThat(headers.firstValue("Content-Security-Policy").orElse(""))
          .contains("default-src 'none'")
          .contains("frame-ancestors 'none'")
          .doesNotContain("unsafe")
          .doesNotContain("http:");
      assertThat(headers.firstValue("X-Content-Type-Options")).contains("nosniff");
      assertThat(headers.firstValue("Cache-Control")).contains("no-store");
      assertThat(headers.firstValue("Access-Control-Allow-Origin")).isEmpty();
    }
  }
}
