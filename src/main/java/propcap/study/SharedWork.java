package propcap.study;

import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;

/** Seasons that the threads of a pool share. */
public final class SharedWork {
  private SharedWork() {}

  /**
   * Runs all shares to their end.
   *
   * @throws InterruptedException if the thread is interrupted; the shares are then called off
   * @throws TooLargeException where what is kept does not fit in memory
   * @throws IllegalStateException where a season failed
   */
  public static void run(ExecutorService pool, List<Callable<Void>> shares)
      throws InterruptedException {
    for (Future<Void> share : pool.invokeAll(shares)) {
      try {
        share.get();
      } catch (ExecutionException e) {
        if (e.getCause() instanceof TooLargeException tooLarge) {
          throw tooLarge;
        }
        if (e.getCause() instanceof OutOfMemoryError) {
          throw TooLargeException.outOfMemory();
        }
        throw new IllegalStateException("a season failed", e.getCause());
      }
    }
  }
}
