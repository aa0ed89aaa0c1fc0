package propcap.study;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.Stream;

/** Seasons on this machine's threads, each taken by whichever is free. */
enum ThreadsEngine implements SeasonEngine {
  HERE;

  @Override
  public Opened open(SeasonsAsked asked, int threads) {
    SeasonsAsked.Ready ready = asked.ready();
    return new Threads(Stream.generate(ready::runner).limit(threads).toList());
  }

  @Override
  public void close() {
    // Each pool ends with what it was opened for.
  }

  private static final class Threads implements Opened {
    private final List<SeasonsAsked.Runner> runners;
    private final ExecutorService pool;

    Threads(List<SeasonsAsked.Runner> runners) {
      this.runners = runners;
      pool = Executors.newFixedThreadPool(runners.size());
    }

    @Override
    public void run(List<Integer> which, int from, int to, Taking taking)
        throws InterruptedException {
      AtomicInteger next = new AtomicInteger(from);
      List<Callable<Void>> shares = new ArrayList<>();
      for (SeasonsAsked.Runner runner : runners) {
        shares.add(
            () -> {
              try {
                for (int n = next.getAndIncrement(); n < to; n = next.getAndIncrement()) {
                  if (Thread.currentThread().isInterrupted()) {
                    throw new InterruptedException();
                  }
                  taking.take(n, runner.season(which, n));
                }
                return null;
              } finally {
                // Where one thread has failed, the others have nothing left to do.
                next.set(to);
              }
            });
      }
      SharedWork.run(pool, shares);
    }

    @Override
    public void close() {
      pool.shutdownNow();
    }
  }
}
