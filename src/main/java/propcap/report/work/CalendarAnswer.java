package propcap.report.work;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import propcap.farm.TrayTask;
import propcap.report.kit.Dates;
import propcap.report.kit.Lines;
import propcap.report.kit.Templates;
import propcap.report.kit.Words;
import propcap.results.Answer;
import propcap.results.AnswerKind;
import propcap.results.Headlines;
import propcap.study.Period;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkCalendar.Day;
import propcap.study.work.WorkCalendar.Planned;
import propcap.study.work.WorkCalendar.Task;

/**
 * The week's work as sheets to print, tables, a calendar for a phone and labels for the trays.
 *
 * @param period what it is about: whole weeks and months that it touches
 * @param written the moment, by which a calendar that is imported again tells new from old
 */
public record CalendarAnswer(
    WorkCalendar calendar, Period period, LabelSheet labels, Instant written) implements Answer {
  public static final AnswerKind KIND =
      new AnswerKind(
          "calendar",
          "-calendar",
          "calendar.json",
          "scenario tasks days",
          "weeks.html months.html labels.html calendar.ics calendar.csv");

  /** Letters of names, with which sowing takes two lines at most and all work fits in ten. */
  private static final int MOST_LETTERS = 100;

  @Override
  public AnswerKind kind() {
    return KIND;
  }

  @Override
  public Headlines headlines() {
    Lines lines = new Lines();
    for (TrayTask job : TrayTask.values()) {
      int trays = calendar.trays(job, period);
      List<Task> planned = calendar.tasks(job).stream().filter(t -> t.isPlannedIn(period)).toList();
      if (trays > 0 || !planned.isEmpty()) {
        lines.add(WorkWords.job(job) + ": " + Words.plural(trays, "tray") + asPlanned(planned));
      }
    }
    List<Day> days = new ArrayList<>(calendar.days(period));
    days.sort(Comparator.comparingDouble(d -> -d.hours().mean()));
    lines.add(
        "Work: %s on average; most on %s: %s, in 1 spring of 10 more than %s"
            .formatted(
                WorkWords.hours(calendar.hours(period)),
                Dates.dayOfWeek(days.get(0).date(), calendar.scenario().season()),
                WorkWords.hours(days.get(0).hours().mean()),
                WorkWords.hours(days.get(0).hours().p90())));
    return lines.endingWith(
        calendar.scenario().name()
            + ", "
            + Dates.range(period.from(), period.to(), calendar.scenario().season())
            + ": "
            + Words.plural(calendar.seasons(), "spring")
            + ", seed "
            + calendar.settings().seed());
  }

  @Override
  public Map<String, String> files(String version) {
    Map<String, String> files = new LinkedHashMap<>();
    files.put("weeks.html", Templates.fill("weeks.jte", WeekSheets.of(calendar, period, version)));
    files.put(
        "months.html", Templates.fill("months.jte", MonthSheets.of(calendar, period, version)));
    files.put(
        "labels.html",
        Templates.fill("labels.jte", TrayLabels.of(calendar, period, labels, version)));
    files.put("calendar.ics", CalendarFeed.of(calendar, period, written));
    files.put("calendar.csv", CalendarFiles.csv(calendar, period));
    files.put(kind().file(), CalendarFiles.json(calendar, period, version));
    return files;
  }

  @Override
  public String html() {
    // The sheets are pages of their own.
    return Templates.fill("lines.jte", headlines().lines());
  }

  /** What the plan sows, by name where these are few, and what of it waits. */
  private static String asPlanned(List<Task> sowings) {
    if (sowings.isEmpty()) {
      return "";
    }
    String names =
        Words.list(sowings.stream().map(t -> t.sowing().id() + " " + t.sowing().trays()).toList());
    String trays =
        names.length() > MOST_LETTERS
            ? Words.count(sowings.stream().mapToInt(t -> t.sowing().trays()).sum())
            : names;
    List<Planned> planned = sowings.stream().map(Task::planned).filter(Objects::nonNull).toList();
    int not = planned.stream().mapToInt(p -> p.later() + p.never()).sum();
    String lacking =
        WorkWords.lacking(
            planned.stream().mapToDouble(Planned::forRoom).sum(),
            planned.stream().mapToDouble(Planned::forHands).sum());
    return " (planned: "
        + trays
        + (not == 0 ? "" : "; " + Words.count(not) + " not on their day")
        + (not == 0 || lacking.isEmpty() ? "" : ", for lack of " + lacking)
        + ")";
  }
}
