package propcap.web.request;

import com.google.gson.Gson;
import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import java.util.Collection;
import java.util.Map;

/** What is sent back. */
public record Reply(int status, String type, String body, Map<String, String> headers) {
  private static final String PLAIN = "text/plain; charset=utf-8";

  public static Reply json(JsonElement json) {
    return file("reply.json", json.toString());
  }

  public static Reply html(String html) {
    return file("reply.html", html);
  }

  /** A file of an answer as it stands in the results: a page with its own style, or a table. */
  public static Reply document(String name, String text) {
    return new Reply(
        200,
        type(name),
        text,
        Map.of(
            "Content-Security-Policy",
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none';"
                + " form-action 'none'; frame-ancestors 'none'"));
  }

  /** A file of the page's own. */
  public static Reply file(String name, String text) {
    return of(200, type(name), text);
  }

  private static String type(String name) {
    String type =
        switch (name.substring(name.lastIndexOf('.') + 1)) {
          case "html" -> "text/html";
          case "js" -> "text/javascript";
          case "css" -> "text/css";
          case "csv" -> "text/csv";
          case "json" -> "application/json";
          case "ics" -> "text/calendar";
          case "svg" -> "image/svg+xml";
          default -> "text/plain";
        };
    return type + "; charset=utf-8";
  }

  /** Words in a list. */
  public static JsonArray words(Collection<String> words) {
    JsonArray list = new JsonArray();
    words.forEach(list::add);
    return list;
  }

  private static Reply of(int status, String type, String text) {
    return new Reply(status, type, text, Map.of());
  }

  /** A refusal of the page's own requests, with a word that the page can show. */
  public static Reply refusal(int status, String message) {
    return refusal(status, new RefusedException(status, message).refusal());
  }

  /** The same with all that is known of it. */
  public static Reply refusal(int status, RefusedException.Refusal refusal) {
    return of(status, type("reply.json"), new Gson().toJsonTree(refusal).toString());
  }

  public static Reply plain(int status, String message) {
    return of(status, PLAIN, message + "\n");
  }

  public static Reply redirect(String to, String cookie) {
    return new Reply(303, PLAIN, "", Map.of("Location", to, "Set-Cookie", cookie));
  }
}
