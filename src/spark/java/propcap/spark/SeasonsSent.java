package propcap.spark;

import java.io.Serializable;
import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;
import propcap.study.SeasonsAsked;

/**
 * What seasons are asked of, as an executor has it: worked out once, for all its tasks. Runners are
 * kept from one block to the next, since streams go forwards fast.
 */
final class SeasonsSent implements Serializable {
  private static final long serialVersionUID = 1;

  private final SeasonsAsked asked;
  private transient SeasonsAsked.@Nullable Ready ready;
  private transient @Nullable Deque<SeasonsAsked.Runner> idle;

  SeasonsSent(SeasonsAsked asked) {
    this.asked = asked;
  }

  /** A runner that nobody else uses. */
  synchronized SeasonsAsked.Runner take() {
    SeasonsAsked.Ready made = ready;
    if (made == null) {
      made = asked.ready();
      ready = made;
    }
    SeasonsAsked.Runner waiting = idle == null ? null : idle.poll();
    return waiting == null ? made.runner() : waiting;
  }

  synchronized void giveBack(SeasonsAsked.Runner runner) {
    if (idle == null) {
      idle = new ArrayDeque<>();
    }
    idle.add(runner);
  }
}
