package propcap.study;

import java.time.LocalDate;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.past.LogWalk;
import propcap.season.PretendedLog.Counting;
import propcap.study.pretend.Pretending;

/** A simulated spring taken for one that was lived through, with its log. */
public final class Lived {
  private Lived() {}

  /** What one who plans with a scenario knows on a day of a spring that another scenario made. */
  public static Scenario until(
      LocalDate today, Scenario truth, Scenario planned, long seed, int season, Counting counting) {
    try {
      Pretending.Pretended spring = Pretending.pretend(truth, seed, season, null, today, counting);
      return planned.withSoFar(
          new SoFar(today, LogWalk.walk(planned, today, spring.trays()).trays(), spring.weather()));
    } catch (BadQuestionException e) {
      throw new IllegalArgumentException(e);
    }
  }
}
