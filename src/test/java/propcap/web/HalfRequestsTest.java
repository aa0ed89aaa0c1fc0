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
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

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

  @Test
  void whatIsHalfSentIsGivenUpAfterSeconds() throws IOException {
    send("GET /api/state HTTP/1.1\r\nHost: 127.0.0.1\r\nX-Half: ");
    // Reading ends when the server closes: for ever, if it never did.
    for (Socket socket : sockets) {
      assertThat(socket.getInputStream().read()).isEqualTo(-1);
    }
  }
}
