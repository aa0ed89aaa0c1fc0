package propcap.web;

import com.sun.net.httpserver.HttpExchange;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import propcap.web.request.RefusedException;
import propcap.web.request.Reply;

/**
 * What phones in the same network may read, by a link that nobody can guess; nothing changes it.
 */
final class Shared {
  private final Page page;
  private final String token = Gate.token();

  Shared(Page page) {
    this.page = page;
  }

  /** The path that the link leads to. */
  String path() {
    return "/" + token + "/";
  }

  Reply reply(HttpExchange request) {
    if (!request.getRequestMethod().equals("GET")) {
      return Reply.plain(405, "this page is to be read only");
    }
    String path = request.getRequestURI().getRawPath();
    int end = path.indexOf('/', 1);
    boolean isKnown =
        end > 0
            && MessageDigest.isEqual(
                path.substring(1, end).getBytes(StandardCharsets.UTF_8),
                token.getBytes(StandardCharsets.UTF_8));
    try {
      return isKnown ? page.shared(path.substring(end + 1)) : Reply.plain(404, "nothing is here");
    } catch (RefusedException e) {
      return Reply.plain(e.status(), String.valueOf(e.getMessage()));
    } catch (RuntimeException e) {
      return Reply.plain(500, "Propcap has failed, and it is not your files' fault.");
    }
  }
}
