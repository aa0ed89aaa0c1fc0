package propcap;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Random;
import umontreal.ssj.simevents.Accumulate;
import umontreal.ssj.simevents.Event;
import umontreal.ssj.simevents.Sim;

/** Classes that do what {@link ArchitectureTest} bans, each one thing. */
final class Offenders {
  private Offenders() {}

  static final class Printer {
    void print() {
      System.out.println();
    }
  }

  static final class Dice {
    double roll() {
      return new Random(1).nextDouble();
    }
  }

  static final class Millis {
    long read() {
      return System.currentTimeMillis();
    }
  }

  static final class Today {
    LocalDate read() {
      return LocalDate.now(ZoneOffset.UTC);
    }
  }

  static final class RightNow {
    Instant read() {
      return Instant.now();
    }
  }

  static final class EventOfNoSimulator extends Event {
    @Override
    public void actions() {}
  }

  static final class AreaOfNoSimulator {
    Accumulate make() {
      return new Accumulate("area");
    }
  }

  static final class StaticTime {
    double read() {
      return Sim.time();
    }
  }

  static final class TrayManager {}

  static final class TrayInfo {}
}
