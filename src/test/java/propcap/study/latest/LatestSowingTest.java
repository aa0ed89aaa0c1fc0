package propcap.study.latest;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.LoggedEvent;
import propcap.farm.RandomScenarios;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.Sowings;
import propcap.farm.TrayPast;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.SeasonTotals;
import propcap.study.Seasons;
import propcap.study.latest.Latest.Course;
import propcap.study.latest.Latest.Day;
import propcap.study.latest.Latest.ForSowing;
import propcap.study.latest.Latest.LastDay;

/**
 * The last day to sow: by hand, against a formula, and against every day on every spring. On the
 * small farm a tray sown on day d leaves the heat on d+5, is ready on d+15 and in the bed on d+19.
 */
class LatestSowingTest {
  private static final RunSettings SETTINGS = new RunSettings(9, 60, null, 1);

  private final Farms farm = new Farms();
  private final Crops crop = new Crops();

  private Scenario sown(Sowing... sowings) {
    farm.crops = List.of(crop.make());
    farm.sowings = List.of(sowings);
    return farm.make();
  }

  private static Latest latest(Scenario scenario, double goal, RunSettings settings, String match)
      throws BadQuestionException, InterruptedException {
    return LatestSowing.latest(
        scenario,
        new LatestQuestion(goal, List.of(match), scenario.season().start()),
        settings,
        share -> {});
  }

  private static ForSowing answer(Scenario scenario, String id)
      throws BadQuestionException, InterruptedException {
    return latest(scenario, 0.9, SETTINGS, id).sowings().get(0);
  }

  private static LocalDate last(Course course, double chance) {
    return course.last(chance).orElseThrow().day().sow();
  }

  /** Out on d+19, by day 45: 26 is the last. */
  @Test
  void withoutLuckItIsTheBedsDayLessTheDaysThatTheCropTakes() throws Exception {
    ForSowing a = answer(sown(Farms.sowing("a", 2, 1, 0, 45)), "a");
    for (Course course : List.of(a.alone(), a.inHouse())) {
      LastDay last = course.last(0.9).orElseThrow();
      assertThat(last.day().sow()).isEqualTo(Farms.day(26));
      assertThat(last.surely()).isEqualTo(Farms.day(26));
      assertThat(last.perhaps()).isEqualTo(Farms.day(26));
      assertThat(last.holes()).isEmpty();
      assertThat(last(course, Latest.TOO_LATE)).isEqualTo(Farms.day(26));
    }
    assertThat(a.alone().last(0.9).orElseThrow().since()).isEqualTo(Farms.START);
  }

  /** Day 27 is a Sunday, 28 March, and so is 20: what is due on it is sown on the day after. */
  @Test
  void aRestDayIsNoDayToSowOn() throws Exception {
    farm.rounds = new Rounds(Rounds.DEFAULT_AT, Set.of(DayOfWeek.SUNDAY));
    ForSowing a = answer(sown(Farms.sowing("a", 2, 1, 0, 46)), "a");
    // From 26, a Saturday: found on 31, ready on 41 (Sunday, so 42), out on 46.
    assertThat(last(a.inHouse(), 0.9)).isEqualTo(Farms.day(26));
    assertThat(a.alone().days())
        .extracting(d -> d.sow().getDayOfWeek())
        .doesNotContain(DayOfWeek.SUNDAY);
  }

  /**
   * One table space: b, whose bed comes first, is due for it on 25 and stays until 35. Sown by 19 a
   * has it before b; later it waits for it until 35, and is out on 49.
   */
  @Test
  void inAFullHouseTheDayIsEarlierThanAlone() throws Exception {
    farm.house = 1;
    Scenario scenario = sown(Farms.sowing("a", 2, 1, 0, 45), Farms.sowing("b", 20, 1, 0, 40));
    ForSowing a = answer(scenario, "a");
    assertThat(last(a.alone(), 0.9)).isEqualTo(Farms.day(26));
    assertThat(last(a.inHouse(), 0.9)).isEqualTo(Farms.day(19));
  }

  /**
   * With time for that wait, but half of the seedlings lost for each day of it: sown from 20 to 29
   * they are, on 30 and 31 the space is free in time, and by 19 it is too.
   */
  @Test
  void daysBetweenThatWillNotDoAreSeen() throws Exception {
    farm.house = 1;
    farm.stretchLossPerDay = 0.5;
    Scenario scenario = sown(Farms.sowing("a", 2, 1, 0, 50), Farms.sowing("b", 20, 1, 0, 40));
    LastDay last = answer(scenario, "a").inHouse().last(0.9).orElseThrow();
    assertThat(last.day().sow()).isEqualTo(Farms.day(31));
    assertThat(last.since()).isEqualTo(Farms.day(30));
    assertThat(last.isSinceFirst()).isFalse();
    assertThat(last.holes()).containsExactlyElementsOf(days(20, 29));
    assertThat(answer(scenario, "a").alone().last(0.9).orElseThrow().since())
        .isEqualTo(Farms.START);
  }

  private static List<LocalDate> days(int from, int to) {
    return IntStream.rangeClosed(from, to).mapToObj(Farms::day).toList();
  }

  /**
   * Sown on 2 they are held for weeks; the fortnight before the last day shows where that begins.
   */
  @Test
  void sownTooEarlyTheyAreHeldTooLong() throws Exception {
    crop.overheldLossPerDay = 0.5;
    LastDay last =
        answer(sown(Farms.sowing("a", 2, 1, 40, 45)), "a").alone().last(0.9).orElseThrow();
    // Out on 40 and ready on d+15.33, it keeps to d+22.33: the round of 40 is at 40.33.
    assertThat(last.since()).isEqualTo(Farms.day(18));
    assertThat(last.isSinceFirst()).isFalse();
    assertThat(last.day().sow()).isEqualTo(Farms.day(26));
  }

  @Test
  void noDayBeforeTheEarliestIsLookedAt() throws Exception {
    Scenario scenario = sown(Farms.sowing("a", 2, 1, 0, 45));
    for (int earliest : List.of(20, 27, 46)) {
      Latest latest =
          LatestSowing.latest(
              scenario,
              new LatestQuestion(0.9, List.of("*"), Farms.day(earliest)),
              SETTINGS,
              share -> {});
      ForSowing a = latest.sowings().get(0);
      assertThat(a.alone().days().stream().map(Day::sow))
          .allMatch(d -> !d.isBefore(Farms.day(earliest)));
      assertThat(latest.never().isEmpty()).isEqualTo(earliest <= 26);
      assertThat(a.inHouse().best().isPresent()).isEqualTo(earliest <= 45);
    }
  }

  @Test
  void whereNoDayReachesTheGoalTheBestIsTold() throws Exception {
    crop.loss = 0.05;
    ForSowing a = answer(sown(Farms.sowing("a", 2, 1, 0, 45)), "a");
    assertThat(a.inHouse().last(0.9)).isEmpty();
    assertThat(a.inHouse().isWhole()).isTrue();
    // Ten plants, each kept with .95: all are in .599 of springs.
    Day best = a.inHouse().best().orElseThrow();
    assertThat(best.springs()).isEqualTo(60);
    assertThat(best.low()).isLessThan(0.599);
    assertThat(best.high()).isGreaterThan(0.599);
  }

  /**
   * One tray that takes 10 exp(s Z) days on the table from d+5 on must be ready by the round of 41:
   * P = Phi(ln((36 - d) / 10) / s). With s = .2 it is .819 on 24 and .683 on 25: 5.6 and 4.6
   * standard errors of 1,000 springs from three quarters.
   */
  @Test
  void aloneTheChanceIsTheNormalLawsOfTheDaysThatItTakesRefusedIfTheyDifferHalfMore()
      throws Exception {
    crop.spread = 0.2;
    RunSettings many = new RunSettings(5, 1000, null, 1);
    Scenario scenario = sown(Farms.sowing("a", 2, 1, 0, 45));
    Course alone = latest(scenario, 0.75, many, "a").sowings().get(0).alone();
    assertThat(last(alone, 0.75)).isEqualTo(Farms.day(24));
    assertThat(misfits(alone, 0.2)).isEmpty();
    assertThat(misfits(alone, 0.3)).isNotEmpty();
  }

  /** Days further than 4.5 standard errors from the law: once in 3,000 times over 46 days. */
  private static List<Day> misfits(Course course, double spread) {
    return course.days().stream()
        .filter(
            day -> {
              double truth = onTime((int) ChronoUnit.DAYS.between(Farms.START, day.sow()), spread);
              double se = Math.sqrt(truth * (1 - truth) / day.springs());
              return Math.abs(day.chance() - truth) > 4.5 * se + 1e-3;
            })
        .toList();
  }

  private static double onTime(int sow, double spread) {
    return sow >= 36
        ? 0
        : new NormalDistribution(null, 0, 1)
            .cumulativeProbability(Math.log((36 - sow) / 10.0) / spread);
  }

  /** The same, on many more farms, is in {@link LatestSowingGuaranteeTest}. */
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void everyDayOnEverySpringGivesTheSameLastDays(long seed) throws Exception {
    Scenario scenario = RandomScenarios.from(seed);
    Sowing sowing =
        scenario.sowings().stream().filter(s -> s.plantsNeeded() > 0).findFirst().orElseThrow();
    RunSettings settings = new RunSettings(seed, 80, null, 1);
    assertThat(disagreements(scenario, sowing, 0.8, settings)).isEmpty();
  }

  /** What the search says otherwise than every working day on every spring. */
  static List<String> disagreements(
      Scenario scenario, Sowing sowing, double goal, RunSettings settings)
      throws BadQuestionException, InterruptedException {
    ForSowing found = latest(scenario, goal, settings, sowing.id()).sowings().get(0);
    Course inHouse = byForce(scenario, sowing, settings);
    Course alone = byForce(scenario.withSowings(List.of(sowing)), sowing, settings);
    List<String> wrong = new ArrayList<>();
    for (double chance : List.of(goal, Latest.TOO_LATE)) {
      if (!day(found.inHouse(), chance).equals(day(inHouse, chance))) {
        wrong.add(sowing.id() + " in the house, " + chance + ": " + day(inHouse, chance));
      }
      if (!day(found.alone(), chance).equals(day(alone, chance))) {
        wrong.add(sowing.id() + " alone, " + chance + ": " + day(alone, chance));
      }
    }
    return wrong;
  }

  private static Optional<LocalDate> day(Course course, double chance) {
    return course.last(chance).map(l -> l.day().sow());
  }

  /** Every working day on every spring. */
  static Course byForce(Scenario scenario, Sowing sowing, RunSettings settings)
      throws InterruptedException {
    int number = scenario.sowings().indexOf(sowing);
    List<Integer> days = LatestSowing.days(scenario, sowing, scenario.season().start());
    List<Scenario> moved = new ArrayList<>();
    for (int d : days) {
      List<Sowing> sowings = new ArrayList<>(scenario.sowings());
      sowings.set(number, sowing.shifted(d - scenario.season().dayOf(sowing.sow())));
      moved.add(scenario.withSowings(sowings));
    }
    if (days.isEmpty()) {
      return new Course(List.of(), true);
    }
    int n = settings.seasons();
    try (Seasons seasons = new Seasons(moved, settings)) {
      List<List<Boolean>> met =
          seasons.run(
              IntStream.range(0, days.size()).boxed().toList(),
              0,
              n,
              (i, o) -> SeasonTotals.isMet(scenario, o, number),
              done -> {});
      return new Course(
          IntStream.range(0, days.size())
              .mapToObj(
                  i -> {
                    double share = met.get(i).stream().filter(m -> m).count() / (double) n;
                    return new Day(scenario.season().date(days.get(i)), n, share, share, share);
                  })
              .toList(),
          true);
    }
  }

  @Test
  void aSowingsOwnGoalComesBeforeTheQuestions() throws Exception {
    crop.spread = 0.2;
    Sowing plain = Farms.sowing("a", 2, 1, 0, 45);
    Sowing own = Sowings.with(Farms.sowing("b", 2, 1, 0, 45), new Sowing.Leeway(null, null, 0.6));
    Latest latest = latest(sown(plain, own), 0.95, SETTINGS, "*");
    assertThat(latest.sowings()).extracting(ForSowing::goal).containsExactly(0.95, 0.6);
  }

  @Test
  void whatNeedsNoPlantsIsNeverTooLate() throws Exception {
    Sowing none = Sowings.needing(Farms.sowing("b", 2, 1, 0, 45), 0);
    Scenario scenario = sown(Farms.sowing("a", 2, 1, 0, 45), none);
    assertThat(latest(scenario, 0.9, SETTINGS, "*").withoutNeed()).containsExactly("b");
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> latest(scenario, 0.9, SETTINGS, "b"))
        .withMessageContaining("plants-needed");
  }

  /** A tray of a has been in the mats since day 0; it is day 3. */
  @Test
  void whatIsSownAlreadyIsNoQuestion() throws Exception {
    Scenario made = sown(Farms.sowing("a", 0, 1, 0, 40), Farms.sowing("b", 5, 1, 0, 40));
    TrayPast tray =
        new TrayPast(
            "a",
            "a 1",
            0,
            0,
            List.of(new TrayPast.Move(LoggedEvent.SOWN, 0, null, "Mats", 1)),
            -1,
            Double.NEGATIVE_INFINITY,
            Double.POSITIVE_INFINITY);
    Scenario scenario = made.withSoFar(new SoFar(Farms.day(3), List.of(tray), List.of()));
    Latest latest = latest(scenario, 0.9, SETTINGS, "*");
    assertThat(latest.begun()).containsExactly("a");
    assertThat(latest.sowings()).extracting(s -> s.sowing().id()).containsExactly("b");
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> latest(scenario, 0.9, SETTINGS, "a"))
        .withMessageContaining("sown already");
  }

  @Test
  void threadsChangeNoDigit() throws Exception {
    crop.spread = 0.2;
    Scenario scenario = sown(Farms.sowing("a", 2, 3, 0, 45), Farms.sowing("b", 5, 3, 0, 45));
    assertThat(latest(scenario, 0.9, new RunSettings(9, 60, null, 2), "*").sowings())
        .isEqualTo(latest(scenario, 0.9, SETTINGS, "*").sowings());
  }

  @Test
  void whatCannotBeAskedIsRefused() {
    Scenario scenario = sown(Farms.sowing("a", 2, 1, 0, 45));
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> latest(scenario, 1, SETTINGS, "a"))
        .withMessageContaining("such as 90%");
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> latest(scenario, 0.9, SETTINGS, "tulip*"))
        .withMessageContaining("no sowing's id matches 'tulip*'");
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> latest(scenario, 0.9, new RunSettings(9, 1, null, 1), "a"))
        .withMessageContaining("--seasons 2 or more");
  }

  @Test
  void progressEndsAtTheWhole() throws Exception {
    ConcurrentLinkedQueue<Double> told = new ConcurrentLinkedQueue<>();
    Scenario scenario = sown(Farms.sowing("a", 2, 1, 0, 45), Farms.sowing("b", 2, 1, 0, 45));
    LatestSowing.latest(
        scenario, new LatestQuestion(0.9, List.of("*"), Farms.START), SETTINGS, told::add);
    assertThat(told).contains(1.0).allMatch(share -> share > 0 && share <= 1);
  }
}
