package propcap.report.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;
import propcap.farm.TrayTask;
import propcap.report.kit.Dates;
import propcap.report.kit.Words;
import propcap.study.work.WorkCalendar.Planned;
import propcap.study.work.WorkCalendar.Stint;
import propcap.study.work.WorkCalendar.Task;

/** What there is to do, as it is said at the door of the house. */
final class WorkWords {
  /** In the order of the round: from the exit back to the entrance. */
  static final List<TrayTask> ROUND =
      List.of(
          TrayTask.PLANT_OUT,
          TrayTask.MOVE_OUT,
          TrayTask.OFF_HEAT,
          TrayTask.THIN,
          TrayTask.POT_ON,
          TrayTask.SOW,
          TrayTask.SOW_AGAIN);

  /** What is less than this share of the trays, or of the waiting, is not named. */
  private static final double WORTH_NAMING = 0.1;

  private WorkWords() {}

  static String job(TrayTask job) {
    return switch (job) {
      case SOW -> "Sow";
      case SOW_AGAIN -> "Sow again";
      case OFF_HEAT -> "Take off heat";
      case THIN -> "Thin";
      case POT_ON -> "Pot on";
      case MOVE_OUT -> "Move out to harden";
      case PLANT_OUT -> "Plant out";
    };
  }

  /** Short enough for a day of the month. */
  static String shortJob(TrayTask job) {
    return switch (job) {
      case OFF_HEAT -> "Off heat";
      case MOVE_OUT -> "Move out";
      case SOW, SOW_AGAIN, THIN, POT_ON, PLANT_OUT -> job(job);
    };
  }

  /** When a task is likely, such as {@code 23–26 Mar} or {@code 29 Mar – 2 Apr}. */
  static String likely(Task task, Season season) {
    return Dates.range(task.earliest(), task.latest(), season);
  }

  /** Where the trays of some stints go, such as {@code Chamber → Glasshouse}; of none, nowhere. */
  static String route(TrayTask job, List<Stint> stints) {
    if (stints.isEmpty()) {
      return "";
    }
    String from = places(stints, Stint::from);
    String to = places(stints, Stint::to);
    return switch (job) {
      case SOW, SOW_AGAIN -> "into " + to;
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
        trays.merge(place, stint.meanTrays(), Double::sum);
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

  /**
   * What becomes of what the plan sows on a day, such as {@code as planned} or {@code 2 wait for
   * room, to 8 Mar}.
   */
  static String asPlanned(Planned planned, LocalDate latest, Season season) {
    List<String> not = new ArrayList<>();
    String lacking = lacking(planned.forRoom(), planned.forHands());
    if (planned.later() > 0) {
      not.add(
          planned.later()
              + (planned.later() == 1 ? " waits" : " wait")
              + (lacking.isEmpty() ? "" : " for " + lacking)
              + ", to "
              + Dates.shortDay(latest, season));
    }
    if (planned.never() > 0) {
      not.add(
          planned.never() + " never sown" + (lacking.isEmpty() ? "" : ", for lack of " + lacking));
    }
    return not.isEmpty() ? "as planned" : String.join("; ", not);
  }

  /**
   * What is waited for, by the tray-days; nothing where what is sown comes too late for its bed.
   */
  static String lacking(double forRoom, double forHands) {
    List<String> lacking = new ArrayList<>();
    if (forRoom > WORTH_NAMING * (forRoom + forHands)) {
      lacking.add("room");
    }
    if (forHands > WORTH_NAMING * (forRoom + forHands)) {
      lacking.add("hands");
    }
    return Words.list(lacking);
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

  /** Crop and lot; without the crop where the sowing's id says it. */
  static String besideId(Task task) {
    return task.sowing().id().startsWith(task.sowing().crop()) ? lot(task) : cropAndLot(task);
  }

  private static String lot(Task task) {
    String lot = task.sowing().lot();
    return lot.equals(task.sowing().crop()) ? "" : "lot " + lot;
  }
}
