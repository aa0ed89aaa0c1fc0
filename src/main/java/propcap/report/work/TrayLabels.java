package propcap.report.work;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import propcap.farm.Crop;
import propcap.farm.TrayTask;
import propcap.report.kit.Dates;
import propcap.study.Period;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkCalendar.Stint;
import propcap.study.work.WorkCalendar.Task;

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
    for (LocalDate day : period.days()) {
      calendar.tasks(TrayTask.SOW).forEach(t -> addAll(calendar, t, day, labels));
    }
    List<List<Label>> sheets = new ArrayList<>();
    for (int from = 0; from < labels.size(); from += sheet.labels()) {
      sheets.add(labels.subList(from, Math.min(labels.size(), from + sheet.labels())));
    }
    return new TrayLabels(calendar.scenario().name(), version, sheet, sheets);
  }

  private static void addAll(WorkCalendar calendar, Task sow, LocalDate day, List<Label> labels) {
    int tray = 0;
    for (Stint stint : sow.stints()) {
      for (int i = 0; i < stint.trays(); i++) {
        tray++;
        if (stint.date().equals(day)) {
          labels.add(
              new Label(
                  sow.sowing().id(),
                  WorkWords.cropAndLot(sow),
                  tray + " / " + sow.sowing().trays(),
                  Dates.dayOfWeek(day, calendar.scenario().season()),
                  stint.to() == null ? "" : stint.to(),
                  Dates.dayOfWeek(offHeat(calendar, sow, day), calendar.scenario().season())));
        }
      }
    }
  }

  /** Where no tray ever left the heat, the day on which the crop is pulled whatever shows. */
  private static LocalDate offHeat(WorkCalendar calendar, Task sow, LocalDate sown) {
    Crop crop = calendar.scenario().cropOf(sow.sowing());
    Optional<LocalDate> likely =
        calendar.tasks(TrayTask.OFF_HEAT).stream()
            .filter(t -> t.sowing().equals(sow.sowing()))
            .map(Task::latest)
            .findFirst();
    return likely.orElse(sown.plusDays((long) Math.ceil(crop.pullAfterDays())));
  }
}
