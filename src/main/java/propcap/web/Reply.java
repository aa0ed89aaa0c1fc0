package propcap.web;

import com.google.gson.Gson;
import com.google.gson.JsonElement;
import java.util.Map;

/** What is sent back. */
record Reply(int status, String type, String body, Map<String, String> headers) {
  private static final String PLAIN = "text/plain; charset=utf-8";

  static Reply json(JsonElement json) {
    return json(200, json);
  }

  private static Reply json(int status, JsonElement json) {
    return of(status, "application/json; charset=utf-8", json.toString());
  }

  static Reply html(String html) {
    return of(200, "text/html; charset=utf-8", html);
  }

  /** A file of an answer as it stands in the results: a page with its own style, or a table. */
  static Reply document(String name, String text) {
    String ending = name.substring(name.lastIndexOf('.') + 1);
    String type =
        switch (ending) {
          case "html" -> "text/html";
          case "csv" -> "text/csv";
          case "json" -> "application/json";
          case "ics" -> "text/calendar";
          case "svg" -> "image/svg+xml";
          default -> "text/plain";
        };
    return new Reply(
        200,
        type + "; charset=utf-8",
        text,
        Map.of(
            "Content-Security-Policy",
            "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none';"
                + " form-action 'none'; frame-ancestors 'none'"));
  }

  static Reply of(int status, String type, String text) {
    return new Reply(status, type, text, Map.of());
  }

  /** A refusal of the page's own requests, with a word that the page can show. */
  static Reply refusal(int status, String message) {
    return refusal(status, new RefusedException(status, message).refusal());
  }

  /** The same with all that is known of it. */
  static Reply refusal(int status, RefusedException.Refusal refusal) {
    return json(status, new Gson().toJsonTree(refusal));
  }

  static Reply plain(int status, String message) {
    return of(status, PLAIN, message + "\n");
  }

  static Reply redirect(String to, String cookie) {
    return new Reply(303, PLAIN, "", Map.of("Location", to, "Set-Cookie", cookie));
  }
}
