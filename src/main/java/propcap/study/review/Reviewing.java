package propcap.study.review;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleConsumer;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;
import propcap.past.EarlierDay;
import propcap.season.PretendedLog;
import propcap.season.SeasonPlan;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.Seasons;

/**
 * Looks back: what was forecast in winter and on later days, held against what came by the log.
 *
 * <p>The sowings of one spring share its weather, so how many of them should come within their
 * ranges of 8 springs of 10 is not a matter of as many throws of a coin. What one spring can tell
 * is had from the forecast itself: each of its simulated springs is taken for the one that came.
 */
public final class Reviewing {
  public static final int DEFAULT_SEASONS = 200;

  /** Share of the work, for the bar. */
  private static final double FORECASTS = 0.8;

  private final Scenario scenario;
  private final SoFar soFar;
  private final RunSettings settings;
  private final List<LocalDate> days;

  /** By forecast, season and sowing: plants on time. The last is made on the log's own day. */
  private List<List<int[]>> onTime = List.of();

  private Reviewing(Scenario scenario, SoFar soFar, RunSettings settings) {
    this.scenario = scenario;
    this.soFar = soFar;
    this.settings = settings;
    days = days(scenario.season(), soFar.today());
  }

  /**
   * Looks back upon a season.
   *
   * @param scenario with a season so far that has trays
   * @throws BadQuestionException where no tray is in the log, or of one spring alone
   */
  public static Review review(Scenario scenario, RunSettings settings, DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    SoFar soFar = scenario.soFar();
    if (soFar == null || soFar.trays().isEmpty()) {
      throw new BadQuestionException(
          "nothing is known of the season so far: name its log with --log, or in the scenario as"
              + " so-far");
    }
    settings.forDifferences();
    return new Reviewing(scenario, soFar, settings).review(progress);
  }

  /** Winter, and the first of each month before today. */
  private static List<LocalDate> days(Season season, LocalDate today) {
    List<LocalDate> days = new ArrayList<>(List.of(season.start()));
    for (LocalDate first = season.start().plusMonths(1).withDayOfMonth(1);
        first.isBefore(today);
        first = first.plusMonths(1)) {
      days.add(first);
    }
    return days;
  }

  private Review review(DoubleConsumer progress) throws InterruptedException {
    List<Scenario> made = new ArrayList<>(List.of(scenario.asPlanned()));
    days.stream().skip(1).forEach(day -> made.add(EarlierDay.of(scenario, day)));
    made.add(scenario);
    try (Seasons seasons = new Seasons(made, settings)) {
      onTime =
          seasons.run(
              settings.seasons(),
              (s, outcome) -> outcome.onTime(),
              share -> progress.accept(FORECASTS * share));
    }
    LogFigures.Against figures = figures(progress);
    List<Integer> over = over(soFar.today());
    return new Review(
        scenario,
        settings,
        settings.seasons(),
        IntStream.range(0, days.size()).mapToObj(d -> look(d, over)).toList(),
        over.stream().map(this::came).toList(),
        scenario.sowings().stream()
            .filter(s -> !over.contains(scenario.sowings().indexOf(s)))
            .toList(),
        figures.figures(),
        figures.byChance());
  }

  // Forecasts.

  /** Sowings of which nothing more can come in time on a day, and of which plants are asked for. */
  private List<Integer> over(LocalDate day) {
    IntPredicate isOver = s -> isOver(scenario.sowings().get(s), day);
    return IntStream.range(0, scenario.sowings().size()).filter(isOver).boxed().toList();
  }

  private boolean isOver(Sowing sowing, LocalDate day) {
    List<TrayPast> its = soFar.of(sowing);
    int before = scenario.season().dayOf(day);
    return day.isAfter(sowing.bedBy())
        || (its.stream().filter(t -> t.attempt() == 0).count() >= sowing.trays()
            && its.stream().allMatch(t -> isGone(t, before))
            && its.stream().noneMatch(TrayPast::failed));
  }

  private static boolean isGone(TrayPast tray, int before) {
    return tray.moves().stream().anyMatch(m -> m.event().isLast() && m.day() < before);
  }

  private int[] plants(int forecast, int sowing) {
    return onTime.get(forecast).stream().mapToInt(season -> season[sowing]).toArray();
  }

  private Review.Range range(int forecast, int sowing) {
    int[] sorted = plants(forecast, sowing);
    Arrays.sort(sorted);
    int tenth = sorted.length / 10;
    return new Review.Range(
        Arrays.stream(sorted).average().orElseThrow(),
        sorted[tenth],
        sorted[sorted.length - 1 - tenth]);
  }

  private int[] byTheLog(int sowing) {
    return plants(onTime.size() - 1, sowing);
  }

  private Review.ForecastCheck look(int forecast, List<Integer> over) {
    LocalDate day = days.get(forecast);
    List<Integer> open =
        over.stream().filter(s -> !isOver(scenario.sowings().get(s), day)).toList();
    List<Review.Range> ranges = open.stream().map(s -> range(forecast, s)).toList();
    double inside = 0;
    for (int i = 0; i < open.size(); i++) {
      Review.Range range = ranges.get(i);
      inside +=
          Arrays.stream(byTheLog(open.get(i))).map(n -> range.holds(n) ? 1 : 0).average().orElse(0);
    }
    int[] ofSpring =
        onTime.get(forecast).stream()
            .mapToInt(
                spring ->
                    (int)
                        IntStream.range(0, open.size())
                            .filter(i -> ranges.get(i).holds(spring[open.get(i)]))
                            .count())
            .sorted()
            .toArray();
    int rare = ofSpring.length / 40;
    return new Review.ForecastCheck(
        day,
        open.size(),
        inside,
        Arrays.stream(ofSpring).average().orElse(0),
        ofSpring[rare],
        ofSpring[ofSpring.length - 1 - rare]);
  }

  private Review.Came came(int sowing) {
    int[] likely = byTheLog(sowing);
    return new Review.Came(
        scenario.sowings().get(sowing),
        Arrays.stream(likely).average().orElseThrow(),
        Arrays.stream(likely).allMatch(n -> n == likely[0]),
        IntStream.range(0, days.size()).mapToObj(d -> range(d, sowing)).toList());
  }

  // Figures.

  private LogFigures.Against figures(DoubleConsumer progress) throws InterruptedException {
    Season season = scenario.season();
    LogFigures figures =
        new LogFigures(
            scenario, soFar.trays().stream().map(t -> EarlierDay.written(t, season)).toList());
    // The whole season anew, in the weather that there was.
    Scenario anew = scenario.withSoFar(new SoFar(season.start(), List.of(), soFar.weather()));
    SeasonPlan plan = new SeasonPlan(anew);
    try (Seasons seasons = Seasons.withDiaries(List.of(anew), settings)) {
      List<double[]> simulated =
          seasons.run(
              0,
              settings.seasons(),
              outcome -> figures.of(PretendedLog.of(plan, outcome.diary(), season.days())),
              done -> progress.accept(FORECASTS + (1 - FORECASTS) * done / settings.seasons()));
      return figures.against(simulated);
    }
  }
}
