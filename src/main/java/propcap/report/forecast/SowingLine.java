package propcap.report.forecast;

import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import propcap.farm.RoomWait;
import propcap.farm.Season;
import propcap.farm.TrayMove;
import propcap.report.kit.Dates;
import propcap.report.kit.SafetyWords;
import propcap.report.kit.Words;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Forecast.Span;
import propcap.study.forecast.Safety;

/**
 * What comes of one sowing, for its row in the plan. Days are counted from the day on which it is
 * due to be sown.
 *
 * @param mark its shape: safe, at risk or lost
 * @param isSafe whether it is safe
 * @param chance that its plants are on time, in per cent
 * @param share the same as a number, 0 to 1
 * @param ready when its plants are out in 8 springs of 10, in words
 * @param readyFrom day by which they are in 1 spring of 10; null: in fewer
 * @param readyBy day by which they are in 9 springs of 10; null: in fewer
 * @param bars where its trays stand, one stage after the other
 */
public record SowingLine(
    String id,
    String mark,
    String word,
    boolean isSafe,
    String chance,
    double share,
    String ready,
    @Nullable Long readyFrom,
    @Nullable Long readyBy,
    List<Bar> bars) {

  public SowingLine {
    bars = List.copyOf(bars);
  }

  /**
   * A stay in a stage, mean over trays and springs.
   *
   * @param order of the stage in a tray's life
   * @param colour of the stage, such as {@code #e69f00}
   * @param waits how many of its days, at its end, the trays wait for room for the next
   */
  public record Bar(
      String stage,
      int order,
      String colour,
      boolean isUnsown,
      double from,
      double to,
      double waits) {}

  /** The lines of all sowings, in the order of the plan. */
  static List<SowingLine> of(Forecast forecast) {
    Season season = forecast.scenario().season();
    return forecast.sowings().stream().map(s -> of(s, season)).toList();
  }

  private static SowingLine of(SowingForecast sowing, Season season) {
    Safety safety = Safety.of(sowing);
    double due = season.dayOf(sowing.sowing().sow());
    return new SowingLine(
        sowing.sowing().id(),
        SafetyWords.mark(safety),
        SafetyWords.word(safety),
        safety == Safety.SAFE,
        Words.chance(sowing.chanceMet()),
        sowing.chanceMet(),
        ready(sowing, season),
        daysAfterSowing(sowing, sowing.readyFrom()),
        daysAfterSowing(sowing, sowing.readyBy()),
        Stage.staysOf(season, sowing).stream().map(stay -> bar(sowing, stay, due)).toList());
  }

  private static @Nullable Long daysAfterSowing(SowingForecast sowing, @Nullable LocalDate day) {
    return day == null ? null : day.toEpochDay() - sowing.sowing().sow().toEpochDay();
  }

  private static String ready(SowingForecast sowing, Season season) {
    LocalDate from = sowing.readyFrom();
    LocalDate by = sowing.readyBy();
    if (from == null) {
      return "hardly ever";
    }
    return by == null ? "from " + Dates.shortDay(from, season) : Dates.range(from, by, season);
  }

  private static Bar bar(SowingForecast sowing, Stage.Stay stay, double due) {
    return new Bar(
        stay.stage().words(),
        stay.stage().ordinal(),
        stay.stage().hex(),
        stay.stage() == Stage.UNSOWN,
        stay.from() - due,
        stay.to() - due,
        Math.min(waits(sowing, stay.stage()), stay.to() - stay.from()));
  }

  /**
   * Days that a tray waits for room at the end of a stage. Waiting to harden is counted in spaces,
   * of which pots take more than their tray took: it is told where nothing is potted on.
   */
  private static double waits(SowingForecast sowing, Stage stage) {
    boolean isPotted = sowing.milestones().containsKey(TrayMove.POTTED_ON);
    return switch (stage) {
      case HEAT -> waits(sowing, RoomWait.LEAVE, TrayMove.OFF_HEAT);
      case TABLE ->
          isPotted
              ? waits(sowing, RoomWait.POT, TrayMove.POTTED_ON)
              : waits(sowing, RoomWait.HARDEN, TrayMove.MOVED_OUT);
      case UNSOWN, POTS, HARDENING -> 0;
    };
  }

  private static double waits(SowingForecast sowing, RoomWait step, TrayMove move) {
    Span span = sowing.milestones().get(move);
    double trayDays = Objects.requireNonNullElse(sowing.waiting().get(step), 0.0);
    return span == null ? 0 : trayDays / span.trays();
  }
}
