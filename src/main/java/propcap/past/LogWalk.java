package propcap.past;

import java.time.LocalDate;
import java.util.List;
import propcap.farm.Scenario;
import propcap.farm.TrayPast;

/** Walks through a log, round by round, as far as it goes. */
public final class LogWalk {
  private LogWalk() {}

  /**
   * What a walk came to.
   *
   * @param trays in the order in which they were given
   * @param overfull places that had more trays than spaces, each once, on the first such day
   */
  public record Walked(List<TrayPast> trays, List<Overfull> overfull) {}

  /**
   * A place with more trays than spaces.
   *
   * @param line of the file, the row by which it became so
   * @param trays those that stood in it, by sowing and name
   */
  public record Overfull(String place, LocalDate date, int spaces, List<String> trays, int line) {}

  /**
   * Walks through a log.
   *
   * @param trays whose events come in an order that can be, each before today
   */
  public static Walked walk(Scenario scenario, LocalDate today, List<WrittenTray> trays) {
    throw new UnsupportedOperationException("not yet");
  }
}
