package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.InetAddress;
import java.net.Socket;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Tried;

/** Requests that are begun and never ended: the grower's own are answered all the same. */
class HalfRequestsTest {
  private static final int MANY = 200;

  @TempDir Path folder;
  private Server server;
  private Browser browser;
  private final List<Socket> sockets = new ArrayList<>();

  @BeforeEach
  void aPage() throws Exception {
    server = Server.start(Farm.in(folder), 0, "test");
    browser = new Browser(server.newLink());
  }

  @AfterEach
  void close() throws IOException {
    for (Socket socket : sockets) {
      socket.close();
    }
    server.close();
  }

  private void send(String text) throws IOException {
    for (int i = 0; i < MANY; i++) {
      Socket socket = new Socket(InetAddress.getLoopbackAddress(), browser.port());
      socket.getOutputStream().write(text.getBytes(StandardCharsets.US_ASCII));
      socket.getOutputStream().flush();
      sockets.add(socket);
    }
  }

  /** With two dozen threads for all, this waited until the first of them was given up. */
  private void theGrowerIsAnswered() {
    for (int i = 0; i < 5; i++) {
      HttpResponse<String> state = browser.get("/api/state");
      assertThat(state.statusCode()).isEqualTo(200);
    }
    assertThat(sockets).as("all still half sent").allMatch(HalfRequestsTest::isOpen);
  }

  /** Whether the server still waits for the rest: it has neither answered nor closed. */
  private static boolean isOpen(Socket socket) {
    try {
      return socket.getInputStream().available() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  @Test
  void halfHeadersHoldUpNoGrower() throws IOException {
    send("GET /api/state HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Half: ");
    theGrowerIsAnswered();
  }

  @Test
  void halfBodiesOfRefusedRequestsHoldUpNoGrower() throws IOException {
    send(
        "POST /api/save HTTP/1.1\r\nHost: 127.0.0.1\r\nContent-Type: application/json\r\n"
            + "Content-Length: 1000\r\n\r\n{");
    for (int i = 0; i < 5; i++) {
      assertThat(browser.get("/api/state").statusCode()).isEqualTo(200);
    }
  }

  /** Whole requests, strangers' ones among them, of which no more comes than the first bytes. */
  @Tag("attack")
  @Test
  void requestsThatEndAnywhereHoldUpNoGrower() throws IOException {
    String body = "{\"over\": \"false\"}";
    String head = "Host: 127.0.0.1:" + browser.port() + "\r\nX-Some: thing\r\n";
    int cut = 0;
    for (String whole :
        List.of(
            "GET /api/state?file=small.yaml HTTP/1.1\r\n" + head + "\r\n",
            "GET /api/events HTTP/1.1\r\n" + head + "\r\n",
            "POST /api/save HTTP/1.1\r\n"
                + head
                + "Content-Type: application/json\r\nContent-Length: "
                + body.length()
                + "\r\n\r\n"
                + body,
            "POST /api/edit HTTP/1.1\r\n"
                + head
                + "Transfer-Encoding: chunked\r\n\r\nffff\r\n{\r\n0\r\n\r\n")) {
      for (int end = 1; end < whole.length(); end++) {
        Socket socket = new Socket(InetAddress.getLoopbackAddress(), browser.port());
        socket.getOutputStream().write(whole.substring(0, end).getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().flush();
        sockets.add(socket);
        cut++;
        if (end % 20 == 0) {
          assertThat(browser.get("/api/state").statusCode()).isEqualTo(200);
        }
      }
    }
    assertThat(browser.spaces("House", 7).statusCode()).isEqualTo(200);
    assertThat(folder.resolve("small.yaml")).hasContent(Farm.SCENARIO);
    Tried.row(
        "attack",
        "requests to the page that end after any of their bytes hold up no grower",
        cut + " of them, all left open",
        "the grower's own, one for each 20 of them, were answered; no file changed");
  }

  /** The seconds pass in truth: not in each build. */
  @Tag("attack")
  @Test
  void whatIsHalfSentIsGivenUpAfterSeconds() throws IOException {
    send("GET /api/state HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Half: ");
    // Reading ends when the server closes: for ever, if it never did.
    for (Socket socket : sockets) {
      assertThat(socket.getInputStream().read()).isEqualTo(-1);
    }
  }
}
