package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.Gson;
import com.google.gson.JsonObject;
import com.google.gson.JsonParser;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What a browser sends, and what a hostile program might: single requests to the server. */
final class Browser {
  private static final Pattern LINK = Pattern.compile("http://127\\.0\\.0\\.1:(\\d+)(/.*)");

  private final HttpClient http = HttpClient.newHttpClient();
  private final int port;
  private final String cookie;

  /** Opens a link, as a browser does. */
  Browser(String link) {
    Matcher matcher = LINK.matcher(link);
    if (!matcher.matches()) {
      throw new IllegalArgumentException(link);
    }
    port = Integer.parseInt(matcher.group(1));
    HttpResponse<String> opened = send(request(matcher.group(2)).GET());
    cookie = opened.headers().firstValue("Set-Cookie").orElse("").split(";", 2)[0];
  }

  int port() {
    return port;
  }

  String cookie() {
    return cookie;
  }

  HttpRequest.Builder request(String path) {
    return HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + path));
  }

  HttpResponse<String> send(HttpRequest.Builder request) {
    try {
      return http.send(request.build(), HttpResponse.BodyHandlers.ofString(StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      throw new IllegalStateException(e);
    }
  }

  HttpResponse<String> get(String path) {
    return send(request(path).header("Cookie", cookie).GET());
  }

  /** Posts as the page does. */
  HttpResponse<String> post(String path, Object body) {
    return send(asPage(path).POST(HttpRequest.BodyPublishers.ofString(new Gson().toJson(body))));
  }

  HttpRequest.Builder asPage(String path) {
    return request(path)
        .header("Cookie", cookie)
        .header("Origin", "http://127.0.0.1:" + port)
        .header("Content-Type", "application/json");
  }

  JsonObject state() {
    return JsonParser.parseString(get("/api/state").body()).getAsJsonObject();
  }

  /** One change of the scenario that was opened. */
  HttpResponse<String> edit(Map<String, ?> edit) {
    return post(
        "/api/edit", Map.of("version", state().get("version").getAsLong(), "edits", List.of(edit)));
  }

  /** Asks a question, whose number is returned. */
  long ask(Map<String, ?> question) {
    HttpResponse<String> asked = post("/api/ask", question);
    assertThat(asked.statusCode()).as(asked.body()).isEqualTo(200);
    return JsonParser.parseString(asked.body()).getAsJsonObject().get("id").getAsLong();
  }

  HttpResponse<String> spaces(String place, int spaces) {
    return edit(Map.of("do", "place", "name", place, "key", "spaces", "value", "" + spaces));
  }
}
