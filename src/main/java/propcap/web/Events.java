package propcap.web;

import com.google.gson.JsonObject;
import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.TimeUnit;
import propcap.web.request.Reply;

/** News for the open pages, as server-sent events. */
final class Events implements AutoCloseable {
  /** Pages open at once; each holds a thread. */
  private static final int MOST_LISTENERS = 8;

  /** A page that is so far behind asks again when it reconnects. */
  private static final int MOST_WAITING = 500;

  private static final int SILENCE_SECONDS = 10;

  private final List<BlockingQueue<String>> listeners = new ArrayList<>();
  private volatile boolean isClosed;

  /** Tells all pages. */
  synchronized void tell(String what, JsonObject news) {
    String event = "event: " + what + "\ndata: " + news + "\n\n";
    for (BlockingQueue<String> listener : listeners) {
      if (!listener.offer(event)) {
        listener.clear();
      }
    }
  }

  /** Keeps a page informed until it is closed. */
  void listen(HttpExchange page) throws IOException {
    BlockingQueue<String> queue = new ArrayBlockingQueue<>(MOST_WAITING);
    synchronized (this) {
      if (listeners.size() >= MOST_LISTENERS) {
        Server.send(page, Reply.plain(503, "too many pages are open"));
        return;
      }
      listeners.add(queue);
    }
    page.getResponseHeaders().set("Content-Type", "text/event-stream");
    try (OutputStream out = page.getResponseBody()) {
      page.sendResponseHeaders(200, 0);
      out.write("retry: 1000\n\n".getBytes(StandardCharsets.UTF_8));
      out.flush();
      while (!isClosed) {
        String event = queue.poll(SILENCE_SECONDS, TimeUnit.SECONDS);
        out.write((event == null ? ": still here\n\n" : event).getBytes(StandardCharsets.UTF_8));
        out.flush();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } finally {
      synchronized (this) {
        listeners.remove(queue);
      }
    }
  }

  @Override
  public void close() {
    isClosed = true;
    tell("closed", new JsonObject());
  }
}
