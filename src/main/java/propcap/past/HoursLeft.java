package propcap.past;

import java.time.LocalDate;
import java.util.DoubleSummaryStatistics;
import propcap.farm.Labour;
import propcap.farm.WorkKind;

/**
 * Whether people surely had hours left on a day's round, however much the work took of which a log
 * does not tell all. Work that is begun is owed to the next working day.
 */
final class HoursLeft {
  /** Minutes below this come of rounding. */
  private static final double ROUNDING = 1e-6;

  private final Labour labour;
  private double owedAtMost;
  private double left = Double.POSITIVE_INFINITY;

  HoursLeft(Labour labour) {
    this.labour = labour;
  }

  boolean isLimited() {
    return labour.isLimited();
  }

  Labour.Minutes minutes() {
    return labour.minutes();
  }

  /**
   * A working day, with the minutes that the work which the log has for it took at most, tray by
   * tray. No more is owed than one piece of work: people may have worked longer than planned.
   */
  void beginRound(LocalDate date, DoubleSummaryStatistics atMost) {
    left = labour.minutesOn(date) - owedAtMost - atMost.getSum();
    owedAtMost = Math.max(0, Math.min(-left, Math.max(owedAtMost, atMost.getMax())));
  }

  /** Whether work could surely be begun, on whichever turn of the round. */
  boolean surelyFor(WorkKind work) {
    return left > ROUNDING || labour.minutes().of(work) == 0;
  }
}
