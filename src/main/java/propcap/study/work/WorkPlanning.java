package propcap.study.work;

import java.util.List;
import java.util.function.DoubleConsumer;
import propcap.farm.Scenario;
import propcap.study.RunSettings;
import propcap.study.Seasons;

/** The question of every Monday: what is there to do this week? */
public final class WorkPlanning {
  /** Seasons whose diaries are held at one time: each takes about 0.2 MB. */
  private static final int BATCH = 50;

  private WorkPlanning() {}

  /**
   * Runs a scenario's seasons and gathers who does what when.
   *
   * @param progress told, from any thread, the share done, 0 to 1
   * @throws InterruptedException if the thread is interrupted; nothing is left behind
   */
  public static WorkCalendar calendar(
      Scenario scenario, RunSettings settings, DoubleConsumer progress)
      throws InterruptedException {
    WorkTally tally = new WorkTally(scenario);
    int n = settings.seasons();
    try (Seasons seasons = Seasons.withDiaries(List.of(scenario), settings)) {
      for (int from = 0; from < n; from += BATCH) {
        int first = from;
        seasons
            .run(
                first,
                Math.min(n, first + BATCH),
                outcome -> outcome,
                done -> progress.accept((first + done) / (double) n))
            .forEach(tally::add);
      }
    }
    return new WorkCalendar(scenario, settings, n, tally.tasks(), tally.days());
  }
}
