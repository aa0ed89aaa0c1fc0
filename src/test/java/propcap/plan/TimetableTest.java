package propcap.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.plan.Timetable.Aim;
import propcap.plan.Timetable.Made;

/** The timetable against published projects and the rules of the textbooks. */
class TimetableTest {
  private static final int ENOUGH = 200_000;

  static Stream<PublishedProject> projects() throws IOException {
    return PublishedProject.all("j30.txt").stream();
  }

  @ParameterizedTest
  @MethodSource("projects")
  void aPublishedProjectEndsOnTheDayThatIsKnownToBeTheEarliest(PublishedProject project) {
    Timetable timetable = project.upTo(project.makespan() + 15);
    Made made = timetable.make(Aim.EARLIEST_END, ENOUGH).orElseThrow();
    assertThat(made.value()).isEqualTo(project.makespan());
    assertThat(made.isBest()).isTrue();
    assertHolds(timetable, made);
  }

  @ParameterizedTest
  @MethodSource("projects")
  void noneEndsADayEarlier(PublishedProject project) {
    assertThat(project.upTo(project.makespan() - 1).make(Aim.EARLIEST_END, ENOUGH)).isEmpty();
  }

  /**
   * Johnson (1954), Optimal two- and three-stage production schedules, Naval Research Logistics
   * Quarterly 1. The five jobs are an exercise posted at justaaa.com
   * (operations-management/392320): the order P, O, N, M, L is the one given there; its 26 hours
   * are those of the first machine alone, the rule's own arithmetic gives 28.
   */
  @Test
  void twoMachinesTakeAsLongAsJohnsonsRuleSays() {
    int[] first = {10, 5, 7, 3, 1};
    int[] second = {2, 4, 5, 6, 7};
    assertThat(johnson(first, second)).isEqualTo(28);
    assertThat(twoMachines(first, second)).isEqualTo(28);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void anyTwoMachinesTakeAsLongAsJohnsonsRuleSays(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int[] first = random.ints(6, 1, 10).toArray();
    int[] second = random.ints(6, 1, 10).toArray();
    assertThat(twoMachines(first, second)).isEqualTo(johnson(first, second));
  }

  /** Jobs shorter on the first machine in rising order of it, then the rest in falling order. */
  private static int johnson(int[] first, int[] second) {
    List<Integer> order =
        IntStream.range(0, first.length)
            .boxed()
            .sorted(
                Comparator.comparingInt((Integer j) -> first[j] < second[j] ? 0 : 1)
                    .thenComparingInt(j -> first[j] < second[j] ? first[j] : -second[j]))
            .toList();
    int free = 0;
    int done = 0;
    for (int j : order) {
      free += first[j];
      done = Math.max(done, free) + second[j];
    }
    return done;
  }

  private static int twoMachines(int[] first, int[] second) {
    int last = Arrays.stream(first).sum() + Arrays.stream(second).sum();
    List<Job> jobs = new ArrayList<>();
    List<Timetable.Order> orders = new ArrayList<>();
    for (int j = 0; j < first.length; j++) {
      jobs.add(onMachine(0, first[j], last));
      jobs.add(onMachine(1, second[j], last));
      orders.add(new Timetable.Order(2 * j, 2 * j + 1));
    }
    Made made =
        new Timetable(List.of(1, 1), jobs, orders).make(Aim.EARLIEST_END, ENOUGH).orElseThrow();
    return made.value();
  }

  private static Job onMachine(int machine, int days, int last) {
    return new Job(
        "work",
        IntStream.rangeClosed(0, last - days)
            .mapToObj(d -> new Job.Option(d, 0, List.of(new Job.Stay(machine, d, d + days, 1))))
            .toList());
  }

  /**
   * Moore (1968), An n job, one machine sequencing algorithm for minimizing the number of late
   * jobs, Management Science 15. The ten jobs are a posted exercise (in the text collection
   * Nemotron-CC-Math, "Minimize the Number of Tardy Jobs with Moore and Hodgson's Algorithm"),
   * which gives no answer: it is that of the algorithm, below.
   */
  @Test
  void asManyJobsAreLateAsMooresAlgorithmSays() {
    int[] days = {19, 23, 5, 31, 17, 8, 32, 41, 26, 18};
    int[] due = {48, 75, 170, 215, 205, 240, 85, 67, 100, 95};
    assertThat(moore(days, due)).isEqualTo(2);
    assertThat(late(days, due)).isEqualTo(2);
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void ofAnyJobsAsManyAreLateAsMooresAlgorithmSays(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    int[] days = random.ints(7, 1, 9).toArray();
    int[] due = random.ints(7, 5, 30).toArray();
    assertThat(late(days, due)).isEqualTo(moore(days, due));
  }

  /** By due date; whenever one would be late, the longest so far is left out. */
  private static int moore(int[] days, int[] due) {
    PriorityQueue<Integer> kept = new PriorityQueue<>(Comparator.reverseOrder());
    int sum = 0;
    for (int j :
        IntStream.range(0, days.length)
            .boxed()
            .sorted(Comparator.comparingInt(j -> due[j]))
            .toList()) {
      kept.add(days[j]);
      sum += days[j];
      if (sum > due[j]) {
        sum -= kept.remove();
      }
    }
    return days.length - kept.size();
  }

  /** A late job costs 1 and may as well never be done, so that it holds nothing. */
  private static int late(int[] days, int[] due) {
    List<Job> jobs = new ArrayList<>();
    for (int j = 0; j < days.length; j++) {
      List<Job.Option> options = new ArrayList<>();
      for (int d = 0; d + days[j] <= due[j]; d++) {
        options.add(new Job.Option(d, 0, List.of(new Job.Stay(0, d, d + days[j], 1))));
      }
      options.add(new Job.Option(500, 1, List.of(new Job.Stay(0, 500, 500, 0))));
      jobs.add(new Job("job " + j, options));
    }
    Made made =
        new Timetable(List.of(1), jobs, List.of()).make(Aim.LEAST_COST, ENOUGH).orElseThrow();
    return made.value();
  }

  @Test
  void whatDoesNotFitHasNoTimetable() {
    Job early = new Job("early", List.of(new Job.Option(0, 0, List.of(new Job.Stay(0, 0, 9, 6)))));
    Job late = new Job("late", List.of(new Job.Option(8, 0, List.of(new Job.Stay(0, 8, 9, 5)))));
    assertThat(new Timetable(List.of(11), List.of(early, late), List.of()).make(Aim.LEAST_COST, 99))
        .isPresent();
    assertThat(new Timetable(List.of(10), List.of(early, late), List.of()).make(Aim.LEAST_COST, 99))
        .isEmpty();
  }

  private static void assertHolds(Timetable timetable, Made made) {
    int[][] used = new int[timetable.spaces().size()][200];
    for (int j = 0; j < timetable.jobs().size(); j++) {
      for (Job.Stay stay : chosen(timetable, made, j).stays()) {
        for (int day = stay.from(); day < stay.to(); day++) {
          used[stay.room()][day] += stay.spaces();
        }
      }
    }
    for (int room = 0; room < used.length; room++) {
      assertThat(Arrays.stream(used[room]).max().orElse(0))
          .isLessThanOrEqualTo(timetable.spaces().get(room));
    }
    for (Timetable.Order order : timetable.orders()) {
      assertThat(chosen(timetable, made, order.first()).end())
          .isLessThanOrEqualTo(chosen(timetable, made, order.second()).start());
    }
  }

  private static Job.Option chosen(Timetable timetable, Made made, int job) {
    return timetable.jobs().get(job).options().get(made.options().get(job));
  }
}
