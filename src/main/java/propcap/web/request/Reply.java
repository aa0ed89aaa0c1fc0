package propcap.web.request;

import com.google.gson.JsonArray;
import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import java.util.List;
import java.util.Map;

/** What is sent back. */
public record Reply(int status, String type, String body, Map<String, String> headers) {
  private static final String PLAIN = "text/plain; charset=utf-8";

  public static Reply json(JsonElement json) {
    return of(200, "application/json; charset=utf-8", json.toString());
  }

  public static Reply html(String html) {
    return of(200, "text/html; charset=utf-8", html);
  }

  /** A file of an answer as it stands in the results: a page with its own style, or a table. */
  public static Reply document(String name, String text) {
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

  public static Reply of(int status, String type, String text) {
    return new Reply(status, type, text, Map.of());
  }

  /** A refusal of the page's own requests, with a word that the page can show. */
  public static Reply refusal(int status, String message) {
    return refusal(status, message, List.of());
  }

  /** The same, with what may be meant where that is not clear. */
  public static Reply refusal(int status, String message, List<String> readings) {
    JsonObject json = new JsonObject();
    json.addProperty("refused", message);
    JsonArray all = new JsonArray();
    readings.forEach(all::add);
    json.add("readings", all);
    return of(status, "application/json; charset=utf-8", json.toString());
  }

  public static Reply plain(int status, String message) {
    return of(status, PLAIN, message + "\n");
  }

  public static Reply redirect(String to, String cookie) {
    return new Reply(303, PLAIN, "", Map.of("Location", to, "Set-Cookie", cookie));
  }
}
