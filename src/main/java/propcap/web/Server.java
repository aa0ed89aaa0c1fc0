package propcap.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import propcap.disk.CannotWriteException;
import propcap.study.RunSettings;
import propcap.web.desk.Desk;
import propcap.web.request.RefusedException;
import propcap.web.request.Reply;
import propcap.web.request.RequestFields;

/**
 * The page's server, on this machine's loopback address alone, but for what is shared to be read.
 * It answers one scenario's page and knows no file by its path: what is sent is the program's own
 * or made of the scenario.
 */
public final class Server implements AutoCloseable {
  private static final int MOST_BYTES = 1 << 20;

  /** What is half sent holds a thread for these seconds at most, and its own: never a grower's. */
  private static final int SECONDS_TO_SEND = 5;

  private static final int MOST_THREADS = 1000;
  private static final int BACKLOG = 100;

  static {
    // Else each reply waits for the other side's delayed acknowledgement, some 40 ms.
    System.setProperty("sun.net.httpserver.nodelay", "true");
    System.setProperty("sun.net.httpserver.maxReqTime", String.valueOf(SECONDS_TO_SEND));
    // The rest of a request that is refused is not waited for: a byte is enough to see that there
    // is no rest, and the connection can be used again.
    System.setProperty("sun.net.httpserver.drainAmount", "1");
  }

  private final HttpServer http;
  private final ExecutorService threads;
  private final Gate gate;
  private final Page page;
  private @Nullable HttpServer shared;

  private Server(HttpServer http, Page page) {
    this.http = http;
    this.page = page;
    this.gate = new Gate(http.getAddress().getPort());
    this.threads =
        new ThreadPoolExecutor(
            0,
            MOST_THREADS,
            2L * SECONDS_TO_SEND,
            TimeUnit.SECONDS,
            new SynchronousQueue<>(),
            work -> {
              Thread thread = new Thread(work, "page");
              thread.setDaemon(true);
              return thread;
            });
  }

  /**
   * Opens a scenario's page.
   *
   * @param port 0: any that is free
   * @param version of this program, shown in what it saves
   * @throws IOException where the port is taken or the scenario's folder cannot be read
   */
  public static Server start(Path scenario, int port, String version) throws IOException {
    return start(scenario, port, version, RunSettings.DEFAULT_SEASONS);
  }

  /** With a forecast of so many springs. */
  static Server start(Path scenario, int port, String version, int springs) throws IOException {
    Page page = new Page(new Desk(scenario), version, springs);
    InetAddress here = InetAddress.getByAddress("localhost", new byte[] {127, 0, 0, 1});
    Server server = new Server(HttpServer.create(new InetSocketAddress(here, port), BACKLOG), page);
    server.http.setExecutor(server.threads);
    server.http.createContext("/", server::answer);
    server.http.start();
    return server;
  }

  /** A new link to the page, which opens it once; older links open nothing any more. */
  public String newLink() {
    return gate.newLink();
  }

  /**
   * Lets the answers be read in the network, by whoever has the link.
   *
   * @param at an address of this machine in that network
   * @return the link
   * @throws IOException where nothing can be served there
   */
  public String share(InetAddress at) throws IOException {
    Shared reading = new Shared(page);
    HttpServer server = HttpServer.create(new InetSocketAddress(at, 0), BACKLOG);
    server.setExecutor(threads);
    server.createContext("/", request -> read(request, reading));
    server.start();
    shared = server;
    return "http://" + at.getHostAddress() + ":" + server.getAddress().getPort() + reading.path();
  }

  private static void read(HttpExchange request, Shared reading) {
    try (request) {
      send(request, reading.reply(request));
    } catch (IOException e) {
      // The phone is gone.
    }
  }

  private void answer(HttpExchange request) {
    try (request) {
      Reply refusal = gate.refusal(request).orElse(null);
      String path = request.getRequestURI().getRawPath();
      if (refusal != null) {
        send(request, refusal);
      } else if (path.equals("/open")) {
        send(request, gate.open(request));
      } else if (!gate.knows(request)) {
        send(request, Gate.unknownBrowser());
      } else if (path.equals("/api/events")) {
        secure(request.getResponseHeaders());
        page.listen(request);
      } else {
        send(request, reply(request, path));
      }
    } catch (IOException e) {
      // The browser is gone; what it asked for is done or not, and it will ask for the state.
    }
  }

  private Reply reply(HttpExchange request, String path) throws IOException {
    try {
      return request.getRequestMethod().equals("POST")
          ? page.post(path, RequestFields.of(body(request)))
          : page.get(path, request.getRequestURI().getRawQuery());
    } catch (RefusedException e) {
      return refusal(e);
    } catch (CannotWriteException e) {
      return refusal(RefusedException.of(e));
    } catch (IOException e) {
      return Reply.refusal(500, "this could not be read or written: " + e.getMessage());
    } catch (RuntimeException e) {
      return Reply.refusal(500, "Propcap has failed, and it is not your files' fault: " + e);
    }
  }

  private static Reply refusal(RefusedException e) {
    return Reply.refusal(e.status(), e.refusal());
  }

  /** A request's text, of which not a byte too many is read. */
  private static String body(HttpExchange request) throws IOException, RefusedException {
    String length = request.getRequestHeaders().getFirst("Content-Length");
    boolean isLong = length != null && (length.length() > 9 || Long.parseLong(length) > MOST_BYTES);
    String type = request.getRequestHeaders().getFirst("Content-Type");
    if (type == null || !type.startsWith("application/json")) {
      throw new RefusedException(415, "requests are JSON");
    }
    if (!isLong) {
      InputStream in = request.getRequestBody();
      byte[] bytes = in.readNBytes(MOST_BYTES + 1);
      if (bytes.length <= MOST_BYTES) {
        return new String(bytes, StandardCharsets.UTF_8);
      }
    }
    throw new RefusedException(413, "a request of more than 1 MiB");
  }

  static void send(HttpExchange request, Reply reply) throws IOException {
    Headers headers = request.getResponseHeaders();
    secure(headers);
    headers.set("Content-Type", reply.type());
    reply.headers().forEach(headers::set);
    if (reply.status() >= 400) {
      // What was not read of the request is not waited for.
      headers.set("Connection", "close");
    }
    byte[] body = reply.body().getBytes(StandardCharsets.UTF_8);
    request.sendResponseHeaders(reply.status(), body.length == 0 ? -1 : body.length);
    if (body.length > 0) {
      request.getResponseBody().write(body);
    }
  }

  private static void secure(Headers headers) {
    headers.set(
        "Content-Security-Policy",
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src"
            + " 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'");
    headers.set("X-Content-Type-Options", "nosniff");
    headers.set("X-Frame-Options", "DENY");
    headers.set("Referrer-Policy", "no-referrer");
    headers.set("Cross-Origin-Opener-Policy", "same-origin");
    headers.set("Cross-Origin-Resource-Policy", "same-origin");
    headers.set("Cache-Control", "no-store");
  }

  @Override
  public void close() {
    page.close();
    http.stop(0);
    HttpServer other = shared;
    if (other != null) {
      other.stop(0);
    }
    threads.shutdownNow();
  }
}
