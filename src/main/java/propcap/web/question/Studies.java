package propcap.web.question;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.Stream;
import propcap.web.request.RefusedException;

/** The studies of the page: one runs, the others wait in line, forecasts before questions. */
public final class Studies implements AutoCloseable {
  /** More that wait than this are no grower's. */
  private static final int MOST_WAITING = 8;

  private final List<Study> line = new ArrayList<>();
  private final Consumer<Study> told;
  private final Thread worker;
  private Optional<Study> running = Optional.empty();
  private long last;

  /**
   * An empty line.
   *
   * @param told of each change of a study, from any thread
   */
  public Studies(Consumer<Study> told) {
    this.told = told;
    this.worker = new Thread(this::work, "studies");
    worker.setDaemon(true);
    worker.start();
  }

  private void work() {
    try {
      while (true) {
        Study next = next();
        next.run(() -> told.accept(next));
        over();
      }
    } catch (InterruptedException e) {
      // The server is closed.
    }
  }

  private synchronized Study next() throws InterruptedException {
    while (line.isEmpty()) {
      wait();
    }
    Study next = line.stream().filter(Study::isForecast).findFirst().orElse(line.get(0));
    line.remove(next);
    running = Optional.of(next);
    return next;
  }

  private synchronized void over() {
    running = Optional.empty();
  }

  /**
   * Puts a study in the line.
   *
   * @throws RefusedException where too many wait
   */
  Study add(String name, boolean isForecast, Study.Work work) throws RefusedException {
    Study study;
    synchronized (this) {
      line.removeIf(Study::isOver);
      if (line.size() >= MOST_WAITING) {
        throw new RefusedException(429, "too many questions wait; stop one first");
      }
      study = new Study(++last, name, isForecast, work);
      line.add(study);
      notifyAll();
    }
    told.accept(study);
    return study;
  }

  /** The study that runs, and those that wait. */
  public synchronized List<Study> all() {
    // One that has been told to be over may not have left yet.
    return Stream.concat(running.stream(), line.stream()).filter(s -> !s.isOver()).toList();
  }

  public void stop(long id) {
    for (Study study : all()) {
      if (study.id() == id) {
        study.stop();
        told.accept(study);
      }
    }
  }

  @Override
  public void close() {
    all().forEach(Study::stop);
    worker.interrupt();
  }
}
