package propcap.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import propcap.farm.Job;
import propcap.study.Period;
import propcap.study.WorkCalendar.Stint;
import propcap.study.WorkCalendar.Task;

/** What there is to do, as it is said at the door of the house. */
final class WorkWords {
  /** In the order of the round: from the exit back to the entrance. */
  static final List<Job> ROUND =
      List.of(Job.PLANT_OUT, Job.MOVE_OUT, Job.OFF_HEAT, Job.THIN, Job.POT_ON, Job.SOW);

  /** A place that takes less than this share of a task's trays is not named. */
  private static final double WORTH_NAMING = 0.1;

  private static final DateTimeFormatter DAY_OF_WEEK =
      DateTimeFormatter.ofPattern("EEE d MMM", Locale.ENGLISH);

  private WorkWords() {}

  static String job(Job job) {
    return switch (job) {
      case SOW -> "Sow";
      case OFF_HEAT -> "Take off heat";
      case THIN -> "Thin";
      case POT_ON -> "Pot on";
      case MOVE_OUT -> "Move out to harden";
      case PLANT_OUT -> "Plant out";
    };
  }

  /** Short enough for a day of the month. */
  static String shortJob(Job job) {
    return switch (job) {
      case SOW -> "Sow";
      case OFF_HEAT -> "Off heat";
      case THIN -> "Thin";
      case POT_ON -> "Pot on";
      case MOVE_OUT -> "Move out";
      case PLANT_OUT -> "Plant out";
    };
  }

  /** Such as {@code Tue 23 Mar}. */
  static String dayOfWeek(LocalDate date) {
    return DAY_OF_WEEK.format(date);
  }

  /** When a task is likely, such as {@code 23–26 Mar} or {@code 29 Mar – 2 Apr}. */
  static String likely(Task task) {
    return range(task.earliest(), task.latest());
  }

  static String range(LocalDate from, LocalDate to) {
    if (from.equals(to)) {
      return Dates.shortDay(from);
    }
    return from.getMonth() == to.getMonth()
        ? from.getDayOfMonth() + "–" + Dates.shortDay(to)
        : Dates.shortDay(from) + " – " + Dates.shortDay(to);
  }

  /** Where the trays of some days' work go, such as {@code Chamber → Glasshouse}. */
  static String route(Job job, List<Stint> stints) {
    String from = places(stints, Stint::from);
    String to = places(stints, Stint::to);
    return switch (job) {
      case SOW -> "into " + to;
      case THIN -> "on " + to;
      case PLANT_OUT -> "from " + from;
      case OFF_HEAT -> from.equals(to) ? "up, stay on " + to : from + " → " + to;
      case POT_ON, MOVE_OUT -> from.equals(to) ? "on " + to : from + " → " + to;
    };
  }

  private static String places(List<Stint> stints, Function<Stint, @Nullable String> which) {
    Map<String, Double> trays = new LinkedHashMap<>();
    for (Stint stint : stints) {
      String place = which.apply(stint);
      if (place != null) {
        trays.merge(place, stint.trays(), Double::sum);
      }
    }
    double all = trays.values().stream().mapToDouble(t -> t).sum();
    List<Map.Entry<String, Double>> most = new ArrayList<>(trays.entrySet());
    most.sort(Map.Entry.comparingByValue(Comparator.reverseOrder()));
    return String.join(
        ", ",
        most.stream()
            .filter(e -> e.getValue() >= WORTH_NAMING * all)
            .map(Map.Entry::getKey)
            .toList());
  }

  /** What a task has on the days of a period. */
  static List<Stint> in(Task task, Period period) {
    return task.stints().stream().filter(s -> period.contains(s.date())).toList();
  }

  static double trays(List<Stint> stints) {
    return stints.stream().mapToDouble(Stint::trays).sum();
  }

  /** Trays of a sowing that are likely not sown on their day for want of room; 0 for other jobs. */
  static double waiting(Task task) {
    LocalDate due = task.due();
    if (due == null) {
      return 0;
    }
    double sown = trays(in(task, new Period(due, due)));
    return Math.max(0, task.sowing().trays() - sown);
  }

  /** Hours, such as {@code 3.5 h} or {@code 12 h}. */
  static String hours(double hours) {
    return Words.amount(hours) + " h";
  }

  /** Such as {@code tomato, lot tom-a}. */
  static String cropAndLot(Task task) {
    String crop = task.sowing().crop();
    String lot = lot(task);
    return lot.isEmpty() ? crop : crop + ", " + lot;
  }

  /** The same without the crop where the sowing's id says it. */
  static String besideId(Task task) {
    return task.sowing().id().startsWith(task.sowing().crop()) ? lot(task) : cropAndLot(task);
  }

  private static String lot(Task task) {
    String lot = task.sowing().lot();
    return lot.equals(task.sowing().crop()) ? "" : "lot " + lot;
  }
}
