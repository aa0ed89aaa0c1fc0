package propcap.report.work;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonElement;
import com.google.gson.JsonObject;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.Labour;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.TrayMove;
import propcap.farm.TrayTask;
import propcap.farm.WorkKind;
import propcap.files.scenario.ScenarioReader;
import propcap.study.Period;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;
import propcap.study.forecast.HandsForecast;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkCalendar.Stint;
import propcap.study.work.WorkCalendar.Task;
import propcap.study.work.WorkPlanning;

/**
 * The week's work is told on the terminal, on week and month sheets, in a table, as JSON, in a
 * phone's calendar and on labels: all must say the same, and the same as the forecast of the same
 * springs.
 */
class OneAccountTest {
  static LongStream seeds() {
    return LongStream.range(0, 30);
  }

  /** A made-up farm, three times of four with hours that seldom suffice. */
  static Scenario farm(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    Labour.Minutes minutes = new Labour.Minutes(12, 6, 12, 1, 1);
    double hours = List.of(Double.POSITIVE_INFINITY, 0.3, 1.0, 3.0).get(random.nextInt(4));
    return RandomScenarios.from(seed).withLabour(new Labour(hours, minutes, List.of()));
  }

  static WorkCalendar calendar(Scenario scenario, int seasons) throws InterruptedException {
    return WorkPlanning.calendar(scenario, new RunSettings(1, seasons, null, 1), done -> {});
  }

  private static Forecast forecast(WorkCalendar calendar) throws InterruptedException {
    return Forecasting.forecast(calendar.scenario(), calendar.settings(), done -> {});
  }

  private static Scenario example() throws Exception {
    return ScenarioReader.read(Path.of("src/test/resources/propcap/example/scenario.yaml"));
  }

  /** 614 trays are planned; 712 were said to be sown, for those that wait were counted twice. */
  @Test
  void theTraysSownAddUpToThePlan() throws Exception {
    Scenario example = example();
    WorkCalendar calendar = calendar(example, 12);
    assertThat(example.trays()).isEqualTo(614);
    assertThat(ToldWork.of(calendar).onTheTerminal()).containsEntry("sow", 614);
    assertThat(misfits(calendar)).isEmpty();
    assertThat(calendar.tasks(TrayTask.SOW)).anyMatch(t -> later(t) > 0);
  }

  private static int later(Task task) {
    return task.planned() == null ? 0 : task.planned().later();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void allTellingsAgreeAmongThemselvesAndWithTheForecast(long seed) throws InterruptedException {
    assertThat(misfits(calendar(farm(seed), 4))).isEmpty();
  }

  /** What was told before: what waits once on its day and once more when it is sown. */
  @Test
  void aTrayCountedTwiceIsNoticed() throws Exception {
    WorkCalendar calendar = calendar(example(), 4);
    Task sow =
        calendar.tasks(TrayTask.SOW).stream().filter(t -> later(t) > 0).findFirst().orElseThrow();
    assertThat(misfits(with(calendar, sow, later(sow), 0))).isNotEmpty();
  }

  /** What was told before: hours on the day on which a tray is begun. */
  @Test
  void anHourOnAnotherDayIsNoticed() throws Exception {
    WorkCalendar calendar = calendar(example(), 4);
    assertThat(misfits(with(calendar, calendar.tasks(TrayTask.SOW).get(0), 0, 0.1))).isNotEmpty();
  }

  /** The same with more trays and hours in a task's first stint. */
  private static WorkCalendar with(WorkCalendar calendar, Task task, int trays, double hours) {
    List<Stint> stints = new ArrayList<>(task.stints());
    Stint s = stints.get(0);
    stints.set(
        0,
        new Stint(
            s.date(),
            s.from(),
            s.to(),
            s.trays() + trays,
            s.meanTrays(),
            s.plants(),
            s.hours() + hours));
    Task changed =
        new Task(
            task.sowing(),
            task.job(),
            task.planned(),
            task.chance(),
            task.trays(),
            task.earliest(),
            task.latest(),
            stints);
    return new WorkCalendar(
        calendar.scenario(),
        calendar.settings(),
        calendar.seasons(),
        calendar.tasks().stream().map(t -> t.equals(task) ? changed : t).toList(),
        calendar.days());
  }

  /** What does not agree, in words. */
  static List<String> misfits(WorkCalendar calendar) throws InterruptedException {
    ToldWork told = ToldWork.of(calendar);
    Forecast forecast = forecast(calendar);
    List<String> misfits = new ArrayList<>();
    trays(told, misfits);
    days(calendar, misfits);
    plan(calendar, forecast, misfits);
    hours(told, forecast, misfits);
    return misfits;
  }

  private static <T> void same(String what, T one, T other, List<String> misfits) {
    if (!one.equals(other)) {
      misfits.add(what + ": " + one + ", not " + other);
    }
  }

  private static void same(
      String what, Map<String, Integer> one, Map<String, Integer> other, List<String> misfits) {
    Stream.concat(one.keySet().stream(), other.keySet().stream())
        .distinct()
        .forEach(
            key ->
                same(
                    what + " " + key,
                    one.getOrDefault(key, 0),
                    other.getOrDefault(key, 0),
                    misfits));
  }

  private static void close(
      String what, double one, double other, double within, List<String> misfits) {
    if (!(Math.abs(one - other) <= within)) {
      misfits.add(what + ": " + one + ", not " + other);
    }
  }

  private static void trays(ToldWork told, List<String> misfits) {
    Map<String, Integer> byDay = told.inTheTable();
    same("week sheets", told.onWeekSheets(), byDay, misfits);
    same("month sheets", told.onMonthSheets(), byDay, misfits);
    same("JSON", told.inJson(), byDay, misfits);
    Map<String, Integer> byJob = ToldWork.byJob(byDay);
    same("terminal", told.onTheTerminal(), byJob, misfits);
    same("week sheets' rows", told.inRowsOfWeekSheets(), byJob, misfits);
    same("week sheets' heads", told.inHeadsOfWeekSheets(), byJob, misfits);
    same("feed", told.inTheFeed(), byJob, misfits);
    same("labels", told.labels(), byJob.getOrDefault("sow", 0), misfits);
  }

  /** Whole trays stand on likely working days. */
  private static void days(WorkCalendar calendar, List<String> misfits) {
    for (Task task : calendar.tasks()) {
      for (Stint stint : task.stints()) {
        LocalDate date = stint.date();
        boolean isLikely =
            stint.meanTrays() > 0
                && !date.isBefore(task.earliest())
                && !date.isAfter(task.latest())
                && calendar.scenario().rounds().isWorkingDay(date);
        if (stint.trays() < 0 || (stint.trays() > 0 && !isLikely)) {
          misfits.add(task.sowing().id() + " " + task.job() + " is not likely on " + stint);
        }
      }
    }
  }

  private static void plan(WorkCalendar calendar, Forecast forecast, List<String> misfits) {
    for (TrayTask job : TrayTask.values()) {
      double mean =
          calendar.tasks(job).stream()
              .flatMap(t -> t.stints().stream())
              .mapToDouble(Stint::meanTrays)
              .sum();
      int whole = calendar.tasks(job).stream().mapToInt(Task::traysInAll).sum();
      close(job.word() + " in all", whole, mean, 0.5 + 1e-9, misfits);
    }
    for (Forecast.SowingForecast s : forecast.sowings()) {
      String id = s.sowing().id();
      double sown = mean(calendar, id, TrayTask.SOW);
      double again = mean(calendar, id, TrayTask.SOW_AGAIN);
      close(id + " sown", sown + again, moved(s, TrayMove.SOWN), 1e-9, misfits);
      double offHeat = mean(calendar, id, TrayTask.OFF_HEAT);
      close(id + " off heat", offHeat, moved(s, TrayMove.OFF_HEAT), 1e-9, misfits);
      double pottedOn = mean(calendar, id, TrayTask.POT_ON);
      close(id + " potted", pottedOn, moved(s, TrayMove.POTTED_ON), 1e-9, misfits);
      for (Task task : calendar.tasks(TrayTask.SOW)) {
        if (task.planned() != null && task.sowing().id().equals(id)) {
          int onDay = task.trays(new Period(task.planned().due(), task.planned().due()));
          int told = onDay + task.planned().later() + task.planned().never();
          same(id + " planned", told, s.sowing().trays(), misfits);
        }
      }
    }
  }

  private static double mean(WorkCalendar calendar, String sowing, TrayTask job) {
    return calendar.tasks(job).stream()
        .filter(t -> t.sowing().id().equals(sowing))
        .flatMap(t -> t.stints().stream())
        .mapToDouble(Stint::meanTrays)
        .sum();
  }

  private static double moved(Forecast.SowingForecast sowing, TrayMove move) {
    Forecast.Span span = sowing.milestones().get(move);
    return span == null ? 0 : span.trays();
  }

  private static void hours(ToldWork told, Forecast forecast, List<String> misfits) {
    Scenario scenario = forecast.scenario();
    Map<String, Double> ofDay = new TreeMap<>();
    Map<WorkKind, Double> ofWork = new EnumMap<>(WorkKind.class);
    List<NamedCsvRecord> rows = told.rows();
    // A row is rounded to four decimals.
    double within = 1e-4 * rows.size();
    for (NamedCsvRecord row : rows) {
      double hours = Double.parseDouble(row.getField("hours"));
      ofDay.merge(row.getField("date"), hours, Double::sum);
      String job = row.getField("job").toUpperCase(Locale.ROOT).replace('-', '_');
      ofWork.merge(TrayTask.valueOf(job).work(), hours, Double::sum);
    }
    Map<String, JsonObject> json = new TreeMap<>();
    for (JsonElement day : told.json().getAsJsonArray("days")) {
      json.put(day.getAsJsonObject().get("date").getAsString(), day.getAsJsonObject());
    }
    List<HandsForecast.Day> days = forecast.hands().days();
    for (HandsForecast.Day day : days) {
      String date = day.date().toString();
      close(date + " table", ofDay.getOrDefault(date, 0.0), day.mean(), within, misfits);
      JsonObject ofJson = json.getOrDefault(date, new JsonObject());
      JsonObject hours = ofJson.getAsJsonObject("hours");
      same(date + " JSON", hours.get("mean").getAsDouble(), day.mean(), misfits);
      double most =
          scenario.rounds().isWorkingDay(day.date()) ? scenario.labour().hoursOn(day.date()) : 0;
      if (hours.get("p90").getAsDouble() > most + 1e-9) {
        misfits.add(date + " has more work than hours: " + hours);
      }
    }
    forecast
        .hands()
        .hoursByWork()
        .forEach(
            (work, hours) ->
                close(work.word(), ofWork.getOrDefault(work, 0.0), hours, within, misfits));
    List<String> ofDays =
        days.stream()
            .filter(d -> scenario.rounds().isWorkingDay(d.date()))
            .map(d -> WorkWords.hours(d.mean()))
            .collect(Collectors.toList());
    same("hours on week sheets", told.hoursOnWeekSheets(), ofDays, misfits);
    same("hours on month sheets", told.hoursOnMonthSheets(), ofDays, misfits);
    String all = WorkWords.hours(days.stream().mapToDouble(HandsForecast.Day::mean).sum());
    same("hours on the terminal", told.hoursOnTheTerminal(), all, misfits);
  }
}
