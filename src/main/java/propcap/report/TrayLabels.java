package propcap.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import propcap.farm.Crop;
import propcap.farm.Job;
import propcap.study.Period;
import propcap.study.WorkCalendar;
import propcap.study.WorkCalendar.Task;

/** A label for each tray that is sown in a period, on sheets to print. */
public record TrayLabels(
    String scenario, String version, LabelSheet sheet, List<List<Label>> sheets) {
  public TrayLabels {
    sheets = List.copyOf(sheets);
  }

  /**
   * A label.
   *
   * @param tray such as {@code 3 / 22}
   * @param offHeat the day by which the tray has left the heat in nine springs of ten
   */
  public record Label(
      String sowing, String crop, String tray, String sown, String place, String offHeat) {}

  static TrayLabels of(WorkCalendar calendar, Period period, LabelSheet sheet, String version) {
    List<Label> labels = new ArrayList<>();
    calendar.tasks().stream()
        .filter(t -> t.job() == Job.SOW)
        .filter(t -> t.due() != null && period.contains(t.due()))
        .sorted(Comparator.comparing(TrayLabels::due))
        .forEach(t -> addAll(calendar, t, labels));
    List<List<Label>> sheets = new ArrayList<>();
    for (int from = 0; from < labels.size(); from += sheet.labels()) {
      sheets.add(labels.subList(from, Math.min(labels.size(), from + sheet.labels())));
    }
    return new TrayLabels(calendar.scenario().name(), version, sheet, sheets);
  }

  private static LocalDate due(Task sow) {
    LocalDate due = sow.due();
    return due == null ? sow.from() : due;
  }

  private static void addAll(WorkCalendar calendar, Task sow, List<Label> labels) {
    int trays = sow.sowing().trays();
    for (int tray = 1; tray <= trays; tray++) {
      labels.add(
          new Label(
              sow.sowing().id(),
              WorkWords.cropAndLot(sow),
              tray + " / " + trays,
              WorkWords.dayOfWeek(due(sow)),
              WorkWords.route(Job.SOW, sow.stints()).replaceFirst("^into ", ""),
              WorkWords.dayOfWeek(offHeat(calendar, sow))));
    }
  }

  /** Where no tray ever left the heat, the day on which the crop is pulled whatever shows. */
  private static LocalDate offHeat(WorkCalendar calendar, Task sow) {
    Crop crop = calendar.scenario().cropOf(sow.sowing());
    Optional<LocalDate> likely =
        calendar.tasks().stream()
            .filter(t -> t.job() == Job.OFF_HEAT && t.sowing().equals(sow.sowing()))
            .map(Task::latest)
            .findFirst();
    return likely.orElse(due(sow).plusDays((long) Math.ceil(crop.pullAfterDays())));
  }
}
