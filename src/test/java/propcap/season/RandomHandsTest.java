package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.chance.Luck;
import propcap.farm.Labour;
import propcap.farm.Labour.Extra;
import propcap.farm.Labour.Minutes;
import propcap.farm.Loss;
import propcap.farm.RandomScenarios;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.TrayMove;
import propcap.farm.WorkKind;

/** What must hold of people's hours on every farm, tried on farms made up from printed seeds. */
class RandomHandsTest {
  private static final int SEASONS = 2;

  static LongStream seeds() {
    return LongStream.range(0, 150);
  }

  /** A farm with hours that seldom suffice. */
  private static Scenario farm(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Scenario scenario = RandomScenarios.from(seed);
    Minutes minutes =
        new Minutes(
            minutes(random, 20),
            minutes(random, 10),
            minutes(random, 20),
            minutes(random, 2),
            minutes(random, 2));
    LocalDate from = scenario.season().start().plusDays(random.nextInt(60));
    Extra extra = new Extra(from, from.plusDays(random.nextInt(20)), random.nextDouble(0, 2));
    List<Extra> all = random.nextBoolean() ? List.of(extra) : List.of();
    return scenario.withLabour(new Labour(hours(random), minutes, all));
  }

  private static double minutes(SplittableRandom random, double most) {
    return random.nextInt(5) == 0 ? 0 : random.nextDouble(0, most);
  }

  private static double hours(SplittableRandom random) {
    return switch (random.nextInt(6)) {
      case 0 -> 0;
      case 1, 2 -> random.nextDouble(0, 0.2);
      case 3, 4 -> random.nextDouble(0.2, 2);
      default -> 20;
    };
  }

  private static List<SeasonOutcome> run(Scenario scenario, long seed) {
    return Runs.of(scenario, new Luck(scenario, seed), SEASONS);
  }

  private static Scenario unlimited(Scenario scenario) {
    Minutes minutes = scenario.labour().minutes();
    return scenario.withLabour(new Labour(Double.POSITIVE_INFINITY, minutes, List.of()));
  }

  private static List<Double> hours(Scenario scenario, SeasonOutcome season) {
    return IntStream.range(0, scenario.season().days()).mapToObj(season::hours).toList();
  }

  private static int waited(SeasonOutcome season, WorkKind work) {
    int sum = 0;
    for (int s = 0; s < season.sowings(); s++) {
      for (int month = 0; month < season.months(); month++) {
        sum += season.waitedForHands(work, s, month);
      }
    }
    return sum;
  }

  /** Otherwise the tests below would promise less than they seem to. */
  @Test
  void onTheFarmsTogetherEveryWorkIsDoneAndWaits() {
    int[] waited = new int[WorkKind.values().length];
    double[] hours = new double[WorkKind.values().length];
    seeds()
        .forEach(
            seed -> {
              Scenario farm = farm(seed);
              for (SeasonOutcome season : run(farm, seed)) {
                for (WorkKind work : WorkKind.values()) {
                  waited[work.ordinal()] += waited(season, work);
                  hours[work.ordinal()] +=
                      IntStream.range(0, farm.season().days())
                          .mapToDouble(day -> season.hours(work, day))
                          .sum();
                }
              }
            });
    assertThat(waited).doesNotContain(0);
    assertThat(hours).doesNotContain(0);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void noDayHasMoreThanItsHoursAndARestDayNone(long seed) {
    Scenario farm = farm(seed);
    for (SeasonOutcome season : run(farm, seed)) {
      for (int day = 0; day < farm.season().days(); day++) {
        LocalDate date = farm.season().date(day);
        boolean works = farm.rounds().isWorkingDay(date);
        // Budgets are kept to a thousandth of a minute.
        double most = works ? farm.labour().hoursOn(date) + 0.5 / 60_000 + 1e-12 : 0;
        assertThat(season.hours(day)).isBetween(0.0, most);
        assertThat(season.isShortOfHands(day) && !works).isFalse();
      }
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void everyCellSownIsCountedOnceWhateverTheHands(long seed) {
    for (SeasonOutcome season : run(farm(seed), seed)) {
      for (int s = 0; s < season.sowings(); s++) {
        int counted = season.onTime(s) + season.late(s);
        for (Loss cause : Loss.values()) {
          assertThat(season.lost(s, cause)).isNotNegative();
          counted += season.lost(s, cause);
        }
        assertThat(counted).isEqualTo(season.cellsSown(s));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void noPlaceHoldsMoreThanItsSpacesWhateverTheHands(long seed) {
    Scenario farm = farm(seed);
    for (SeasonOutcome season : run(farm, seed)) {
      for (int p = 0; p < farm.places().size(); p++) {
        int spaces = farm.places().get(p).spaces();
        assertThat(Runs.use(farm, season, p)).allMatch(used -> used >= 0 && used <= spaces);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void aSeasonRunTwiceIsTheSame(long seed) {
    Scenario farm = farm(seed);
    List<SeasonOutcome> one = run(farm, seed);
    List<SeasonOutcome> other = run(farm, seed);
    for (int n = 0; n < SEASONS; n++) {
      assertThat(Runs.all(farm, one.get(n))).isEqualTo(Runs.all(farm, other.get(n)));
      assertThat(hours(farm, one.get(n))).isEqualTo(hours(farm, other.get(n)));
    }
  }

  /** Luck apart from logistics: hands that always suffice are as good as none being asked. */
  @ParameterizedTest
  @MethodSource("seeds")
  void hoursThatSufficeChangeNothing(long seed) {
    Scenario farm = farm(seed);
    Scenario plain = RandomScenarios.from(seed);
    List<SeasonOutcome> enough = run(farm.withLabour(farm.labour().withHoursPerDay(100_000)), seed);
    List<SeasonOutcome> counted = run(unlimited(farm), seed);
    List<SeasonOutcome> unasked = run(plain, seed);
    for (int n = 0; n < SEASONS; n++) {
      assertThat(Runs.all(farm, enough.get(n))).isEqualTo(Runs.all(plain, unasked.get(n)));
      assertThat(hours(farm, enough.get(n))).isEqualTo(hours(farm, counted.get(n)));
      assertThat(enough.get(n).daysShortOfHands()).isZero();
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void whereNothingWaitsForHandsNothingIsChanged(long seed) {
    Scenario farm = farm(seed);
    List<SeasonOutcome> seasons = run(farm, seed);
    List<SeasonOutcome> counted = run(unlimited(farm), seed);
    for (int n = 0; n < SEASONS; n++) {
      SeasonOutcome season = seasons.get(n);
      int waited = IntStream.of(0, 1, 2, 3, 4).map(w -> waited(season, WorkKind.values()[w])).sum();
      assertThat(waited > 0).isEqualTo(season.daysShortOfHands() > 0);
      if (waited == 0) {
        assertThat(Runs.all(farm, season)).isEqualTo(Runs.all(farm, counted.get(n)));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void unlimitedHoursAreTheWorkDoneTimesItsMinutes(long seed) {
    Scenario farm = RandomScenarios.from(seed).withLabour(countedBySowing());
    for (SeasonOutcome season : run(farm, seed)) {
      int sown = 0;
      int planted = 0;
      for (int s = 0; s < season.sowings(); s++) {
        sown += season.trays(s, TrayMove.SOWN);
        planted += season.onTime(s) + season.late(s);
      }
      assertThat(season.hours()).isCloseTo((3.0 * sown + 0.25 * planted) / 60, within(1e-9));
    }
  }

  /** What each move took of which day adds up to the hours of the day, by work. */
  @ParameterizedTest
  @MethodSource("seeds")
  void theTimesheetIsTheHoursSpent(long seed) {
    Scenario farm = farm(seed);
    SeasonPlan plan = new SeasonPlan(farm);
    SeasonOutcome season = House.seasonWithDiary(plan, new Luck(farm, seed).reader().season(0));
    Diary diary = season.diary();
    Timesheet timesheet = diary.timesheet();
    double[] spent = new double[farm.season().days() * WorkKind.values().length];
    for (int i = 0; i < timesheet.size(); i++) {
      int note = timesheet.note(i);
      assertThat(timesheet.day(i)).isGreaterThanOrEqualTo(diary.day(note));
      int work = diary.job(note).work().ordinal();
      spent[timesheet.day(i) * WorkKind.values().length + work] += timesheet.hours(i);
    }
    for (int day = 0; day < farm.season().days(); day++) {
      for (WorkKind work : WorkKind.values()) {
        assertThat(spent[day * WorkKind.values().length + work.ordinal()])
            .isCloseTo(season.hours(work, day), within(1e-9));
      }
    }
  }

  private static Labour countedBySowing() {
    return new Labour(Double.POSITIVE_INFINITY, new Minutes(3, 0, 0, 0, 0.25), List.of());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void inEndlessRoomOnlyHandsAreWaitedFor(long seed) {
    for (SeasonOutcome season : run(farm(seed).withEndlessRoom(), seed)) {
      for (int s = 0; s < season.sowings(); s++) {
        for (RoomWait step : RoomWait.values()) {
          assertThat(Runs.waited(season, step, s)).isZero();
        }
      }
      assertThat(season.sowBehindOverdue()).isZero();
      assertThat(season.tablesBehindReady()).isZero();
    }
  }
}
