package propcap.season;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.SplittableRandom;
import java.util.function.DoubleSupplier;
import umontreal.ssj.simevents.Event;
import umontreal.ssj.simevents.Simulator;
import umontreal.ssj.simevents.eventlist.Henriksen;

/**
 * Trays that come to one {@link Room} at random, in continuous time, and stay in it for a while.
 */
final class QueueInRoom {
  private final Simulator clock = new Simulator(new Henriksen());
  private final Room room;
  private final double ratePerDay;
  private final boolean waits;
  private final double countedFrom;
  private final double until;
  private final SplittableRandom random;
  private final DoubleSupplier stay;
  private final Deque<Double> waiting = new ArrayDeque<>();

  private long came;
  private long turnedAway;
  private long startedToStay;
  private double sumOfWaits;

  /**
   * A room that is empty at first.
   *
   * @param ratePerDay of the Poisson arrivals
   * @param meanStay days
   * @param sure whether each stays just so long; else stays are exponential
   * @param waits whether trays wait their turn; else they are turned away
   * @param countedFrom day from which arrivals are counted
   */
  QueueInRoom(
      long seed,
      int spaces,
      double ratePerDay,
      double meanStay,
      boolean sure,
      boolean waits,
      double countedFrom,
      double until) {
    random = new SplittableRandom(seed);
    room = new Room("room", spaces);
    this.ratePerDay = ratePerDay;
    this.waits = waits;
    this.countedFrom = countedFrom;
    this.until = until;
    stay = sure ? () -> meanStay : () -> exponential(meanStay);
  }

  private double exponential(double mean) {
    return -mean * Math.log(1 - random.nextDouble());
  }

  QueueInRoom run() {
    clock.init();
    new Arrival().schedule(exponential(1 / ratePerDay));
    new End().schedule(until);
    clock.start();
    return this;
  }

  /** Share of the trays that came that found no room. */
  double turnedAway() {
    return turnedAway / (double) came;
  }

  /** Mean days that a tray waited that came in time to be counted. */
  double meanWait() {
    return sumOfWaits / startedToStay;
  }

  private void begin(double cameAt) {
    room.take(1);
    if (cameAt >= countedFrom) {
      startedToStay++;
      sumOfWaits += clock.time() - cameAt;
    }
    new Departure().schedule(stay.getAsDouble());
  }

  private final class Arrival extends Event {
    Arrival() {
      super(clock);
    }

    @Override
    public void actions() {
      boolean counted = clock.time() >= countedFrom;
      came += counted ? 1 : 0;
      if (room.free() > 0) {
        begin(clock.time());
      } else if (waits) {
        waiting.add(clock.time());
      } else {
        turnedAway += counted ? 1 : 0;
      }
      schedule(exponential(1 / ratePerDay));
    }
  }

  private final class Departure extends Event {
    Departure() {
      super(clock);
    }

    @Override
    public void actions() {
      room.leave(1);
      Double next = waiting.poll();
      if (next != null) {
        begin(next);
      }
    }
  }

  private final class End extends Event {
    End() {
      super(clock);
    }

    @Override
    public void actions() {
      clock.stop();
    }
  }
}
