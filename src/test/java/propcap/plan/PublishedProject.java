package propcap.plan;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;

/** A project of a published set with the least makespan that is known for it. */
record PublishedProject(
    String name,
    int makespan,
    List<Integer> spaces,
    List<Integer> days,
    List<List<Integer>> demands,
    List<List<Integer>> after) {
  private static final int ROWS = 8;

  /** All projects of a file of this package's resources; its head says where they come from. */
  static List<PublishedProject> all(String file) throws IOException {
    try (BufferedReader in =
        new BufferedReader(
            new InputStreamReader(
                Objects.requireNonNull(PublishedProject.class.getResourceAsStream(file)),
                StandardCharsets.UTF_8))) {
      List<String> lines = in.lines().filter(l -> !l.startsWith("#")).toList();
      List<PublishedProject> all = new ArrayList<>();
      for (int i = 0; i < lines.size(); i += ROWS) {
        all.add(of(lines.subList(i, i + ROWS)));
      }
      return all;
    }
  }

  private static PublishedProject of(List<String> lines) {
    String[] head = lines.get(0).split(" ", -1);
    return new PublishedProject(
        head[0],
        Integer.parseInt(head[1]),
        numbers(lines.get(1)),
        numbers(lines.get(2)),
        lines.subList(3, 7).stream().map(PublishedProject::numbers).toList(),
        Arrays.stream(lines.get(7).split("\\|", -1)).map(PublishedProject::numbers).toList());
  }

  private static List<Integer> numbers(String line) {
    return line.isBlank()
        ? List.of()
        : Arrays.stream(line.strip().split(" ", -1)).map(Integer::valueOf).toList();
  }

  /** The project as a timetable in which every job may start on any day up to a last one. */
  Timetable upTo(int lastDay) {
    List<Job> jobs = new ArrayList<>();
    List<Timetable.Order> orders = new ArrayList<>();
    for (int j = 0; j < days.size(); j++) {
      int job = j;
      int latest = lastDay - days.get(j);
      jobs.add(
          new Job(
              "job " + (j + 1),
              IntStream.rangeClosed(0, latest).mapToObj(day -> option(job, day)).toList()));
      for (int next : after.get(j)) {
        orders.add(new Timetable.Order(j, next - 1));
      }
    }
    return new Timetable(spaces, jobs, orders);
  }

  private Job.Option option(int job, int day) {
    return new Job.Option(
        day,
        0,
        IntStream.range(0, spaces.size())
            .mapToObj(r -> new Job.Stay(r, day, day + days.get(job), demands.get(r).get(job)))
            .toList());
  }
}
