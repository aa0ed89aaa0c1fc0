package propcap.web;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.web.request.Reply;

/**
 * Who is let in: a browser on this machine that came by the link that was printed, and pages of
 * this server alone. The link's token opens once; the browser then keeps a cookie of its own.
 */
final class Gate {
  private static final SecureRandom RANDOM = new SecureRandom();
  private static final int TOKEN_BYTES = 32;

  /** A day: longer than a browser that was killed stays closed. */
  private static final int COOKIE_SECONDS = 86_400;

  private final int port;
  private final String cookie = token();
  private @Nullable String link;

  Gate(int port) {
    this.port = port;
  }

  /** What nobody can guess. */
  static String token() {
    byte[] token = new byte[TOKEN_BYTES];
    RANDOM.nextBytes(token);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(token);
  }

  /** A new link that opens the page once; older ones open nothing any more. */
  synchronized String newLink() {
    String fresh = token();
    link = fresh;
    return "http://127.0.0.1:" + port + "/open?token=" + fresh;
  }

  /** Why a request is not even looked at; empty where it may be. */
  Optional<Reply> refusal(HttpExchange request) {
    Headers headers = request.getRequestHeaders();
    String method = request.getRequestMethod();
    boolean isPost = method.equals("POST");
    if (!isPost && !method.equals("GET")) {
      return Optional.of(Reply.plain(405, "only GET and POST"));
    }
    List<String> host = headers.getOrDefault("Host", List.of());
    if (host.size() != 1 || !isOurs(host.get(0))) {
      return Optional.of(Reply.plain(403, "this server answers to this machine alone"));
    }
    List<String> origin = headers.getOrDefault("Origin", List.of());
    boolean isOwnPage = origin.size() == 1 && origin.get(0).equals("http://" + host.get(0));
    if (!isOwnPage && (isPost || !origin.isEmpty())) {
      return Optional.of(Reply.plain(403, "this server answers to its own page alone"));
    }
    String site = headers.getFirst("Sec-Fetch-Site");
    if (site != null && !site.equals("same-origin") && !site.equals("none")) {
      return Optional.of(Reply.plain(403, "this server answers to its own page alone"));
    }
    return Optional.empty();
  }

  private boolean isOurs(String host) {
    return host.equals("127.0.0.1:" + port) || host.equals("localhost:" + port);
  }

  /** Whether the browser has the cookie that the link gave it. */
  boolean knows(HttpExchange request) {
    return request.getRequestHeaders().getOrDefault("Cookie", List.of()).stream()
        .flatMap(line -> Arrays.stream(line.split(";", -1)))
        .map(String::strip)
        .filter(each -> each.startsWith(cookieName() + "="))
        .anyMatch(each -> isSame(each.substring(cookieName().length() + 1), cookie));
  }

  /** Takes a link's token for the cookie, once. */
  synchronized Reply open(HttpExchange request) {
    String query = request.getRequestURI().getRawQuery();
    String token = query != null && query.startsWith("token=") ? query.substring(6) : "";
    boolean isRight = link != null && isSame(token, link);
    if (isRight) {
      link = null;
    }
    return isRight || knows(request)
        ? Reply.redirect(
            "/",
            "%s=%s; Path=/; HttpOnly; SameSite=Strict; Max-Age=%s"
                .formatted(cookieName(), cookie, COOKIE_SECONDS))
        : unknownBrowser();
  }

  static Reply unknownBrowser() {
    return Reply.plain(
        403, "This link has been used, or is none. Press Enter where Propcap runs for a new one.");
  }

  /** Cookies are not kept apart by port, so the name is. */
  private String cookieName() {
    return "propcap-" + port;
  }

  /** In a time that does not tell how much of it was right. */
  private static boolean isSame(String given, String right) {
    return MessageDigest.isEqual(
        given.getBytes(StandardCharsets.UTF_8), right.getBytes(StandardCharsets.UTF_8));
  }
}
