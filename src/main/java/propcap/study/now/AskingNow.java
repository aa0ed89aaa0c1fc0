package propcap.study.now;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleConsumer;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;
import propcap.study.now.SeasonNow.SowingNow;
import propcap.study.now.SeasonNow.Trays;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkPlanning;

/** What now? How a season that has begun will go on, and what can still be done. */
public final class AskingNow {
  /** Shares of the work, for the bar. */
  private static final double NOW = 0.3;

  private static final double WINTER = 0.6;

  private static final int FEW = 100;

  private AskingNow() {}

  /**
   * Runs a season on from its day, beside the winter's forecast, and tries what could help.
   *
   * @param scenario with a season so far
   * @param goal chance, 0 to 1, for sowings without one of their own
   * @param advise whether to look for advice
   * @throws BadQuestionException where nothing is known of the season, or of one spring alone
   */
  public static SeasonNow ask(
      Scenario scenario, RunSettings settings, double goal, boolean advise, DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    SoFar soFar = scenario.soFar();
    if (soFar == null) {
      throw new BadQuestionException("nothing is known of the season so far");
    }
    if (!(goal > 0 && goal < 1)) {
      throw new BadQuestionException("the goal must be a chance such as 90 %");
    }
    settings.forDifferences();
    Forecast now = Forecasting.forecast(scenario, settings, done -> progress.accept(NOW * done));
    Forecast winter =
        Forecasting.forecast(
            scenario.asPlanned(), settings, done -> progress.accept(NOW + (WINTER - NOW) * done));
    List<SowingNow> sowings = new ArrayList<>();
    for (int s = 0; s < scenario.sowings().size(); s++) {
      Sowing sowing = scenario.sowings().get(s);
      sowings.add(
          new SowingNow(
              sowing,
              sowing.leeway().goalOr(goal),
              trays(scenario, sowing, soFar),
              now.sowings().get(s),
              winter.sowings().get(s)));
    }
    List<SowingNow> isShort = sowings.stream().filter(SowingNow::isShort).toList();
    if (!advise || isShort.isEmpty()) {
      return new SeasonNow(now, winter, goal, sowings, List.of(), List.of(), 0);
    }
    Advising advising = new Advising(scenario, soFar, settings, sowings);
    List<SeasonNow.Advice> advice =
        advising.advise(done -> progress.accept(WINTER + (1 - WINTER) * done));
    return new SeasonNow(
        now, winter, goal, sowings, advice, advising.notHelped(advice), advising.springs());
  }

  /**
   * The work that is likely from the season's day on; from few springs, since it is told in whole
   * trays.
   */
  public static WorkCalendar fortnight(Scenario scenario, RunSettings settings)
      throws InterruptedException {
    int few = Math.min(settings.seasons(), RunSettings.whole(FEW, scenario.weather().size()));
    return WorkPlanning.calendar(scenario, settings.withSeasons(few), done -> {});
  }

  private static Trays trays(Scenario scenario, Sowing sowing, SoFar soFar) {
    List<TrayPast> of = soFar.of(sowing);
    long sown = of.stream().filter(t -> t.attempt() == 0).count();
    int toSow = (int) Math.max(0, sowing.trays() - sown);
    boolean isDue = sowing.sow().isBefore(scenario.today());
    return new Trays(
        toSow,
        isDue ? toSow : 0,
        count(of, LoggedEvent.SOWN),
        count(of, LoggedEvent.OFF_HEAT),
        count(of, LoggedEvent.POTTED_ON),
        count(of, LoggedEvent.MOVED_OUT),
        count(of, LoggedEvent.PLANTED_OUT),
        count(of, LoggedEvent.THROWN_OUT));
  }

  private static int count(List<TrayPast> trays, LoggedEvent lastMove) {
    return (int) trays.stream().filter(t -> t.lastMove() == lastMove).count();
  }
}
