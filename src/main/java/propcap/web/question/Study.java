package propcap.web.question;

import java.util.function.DoubleConsumer;
import org.jspecify.annotations.Nullable;
import propcap.farm.Worded;
import propcap.study.BadQuestionException;
import propcap.study.TooLargeException;

/** Something to be simulated: it waits, runs, and is done, stopped or failed. */
public final class Study {
  /** How far it is. */
  public enum Stage implements Worded {
    WAITING,
    RUNNING,
    DONE,
    STOPPED,
    FAILED
  }

  /** What it does; it ends by an interrupt when it is stopped. */
  @FunctionalInterface
  interface Work {
    void run(DoubleConsumer progress) throws BadQuestionException, InterruptedException;
  }

  private final long id;
  private final String name;
  private final boolean isForecast;
  private final Work work;
  private volatile Stage stage = Stage.WAITING;
  private volatile double share;
  private volatile String trouble = "";
  private @Nullable Thread thread;

  /**
   * A study that waits.
   *
   * @param isForecast whether it goes before the questions that wait
   */
  Study(long id, String name, boolean isForecast, Work work) {
    this.id = id;
    this.name = name;
    this.isForecast = isForecast;
    this.work = work;
  }

  public long id() {
    return id;
  }

  public String name() {
    return name;
  }

  boolean isForecast() {
    return isForecast;
  }

  public Stage stage() {
    return stage;
  }

  public double share() {
    return share;
  }

  /** Why it failed; empty where it did not. */
  public String trouble() {
    return trouble;
  }

  boolean isOver() {
    return stage != Stage.WAITING && stage != Stage.RUNNING;
  }

  /** Runs on this thread, until it is done or stopped. */
  void run(Runnable told) {
    synchronized (this) {
      if (stage != Stage.WAITING) {
        return;
      }
      stage = Stage.RUNNING;
      thread = Thread.currentThread();
    }
    told.run();
    Stage end = Stage.FAILED;
    try {
      work.run(
          done -> {
            // Each percent is told once.
            boolean isNews = Math.floor(100 * done) > Math.floor(100 * share);
            share = done;
            if (isNews) {
              told.run();
            }
          });
      end = Stage.DONE;
    } catch (InterruptedException e) {
      end = Stage.STOPPED;
    } catch (BadQuestionException | TooLargeException e) {
      trouble = String.valueOf(e.getMessage());
    } catch (OutOfMemoryError e) {
      trouble = String.valueOf(TooLargeException.outOfMemory().getMessage());
    } catch (RuntimeException | Error e) {
      // Whatever it is, the next study must find its turn.
      trouble = "Propcap has failed, and it is not your files' fault: " + e;
    } finally {
      synchronized (this) {
        thread = null;
        stage = end;
      }
      // A stop that came too late must not stop the next one.
      var unused = Thread.interrupted();
    }
    told.run();
  }

  synchronized void stop() {
    if (stage == Stage.WAITING) {
      stage = Stage.STOPPED;
    } else if (thread != null) {
      thread.interrupt();
    }
  }
}
