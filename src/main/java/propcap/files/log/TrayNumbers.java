package propcap.files.log;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import propcap.farm.LoggedEvent;
import propcap.past.WrittenTray;

/**
 * The numbers of a sowing's trays. Those of the plan have their own; one beyond the plan is sown in
 * the place of one that failed before, and where none did, it is one more.
 */
final class TrayNumbers {
  private record TrayNumber(int number, int attempt) {}

  private final List<LogTray> trays;
  private final Map<LogTray, TrayNumber> numbers = new HashMap<>();
  private int more;

  /**
   * Numbers the trays of one sowing.
   *
   * @param planned how many the plan has
   */
  TrayNumbers(List<LogTray> trays, int planned) {
    this.trays = trays;
    List<LogTray> failed =
        new ArrayList<>(
            trays.stream()
                .filter(t -> failedOn(t).isPresent())
                .sorted(by(t -> failedOn(t).orElseThrow()))
                .toList());
    for (LogTray tray : trays.stream().sorted(by(TrayNumbers::sownOn)).toList()) {
      numbers.put(
          tray,
          tray.rank() <= planned
              ? new TrayNumber(tray.rank() - 1, 0)
              : again(tray, failed).orElseGet(() -> new TrayNumber(planned + more++, 0)));
    }
  }

  private static Comparator<LogTray> by(Function<LogTray, LocalDate> date) {
    return Comparator.comparing(date).thenComparing(LogTray::rank);
  }

  private Optional<TrayNumber> again(LogTray tray, List<LogTray> failed) {
    for (Iterator<LogTray> each = failed.iterator(); each.hasNext(); ) {
      LogTray before = each.next();
      if (failedOn(before).orElseThrow().isAfter(sownOn(tray))) {
        break;
      }
      TrayNumber its = numbers.get(before);
      if (its != null && before != tray) {
        each.remove();
        return Optional.of(new TrayNumber(its.number(), its.attempt() + 1));
      }
    }
    return Optional.empty();
  }

  private static LocalDate sownOn(LogTray tray) {
    return tray.at(LoggedEvent.SOWN).orElseThrow().date();
  }

  /** The day on which it was thrown out from the heat; empty where it was not. */
  private static Optional<LocalDate> failedOn(LogTray tray) {
    return tray.had(LoggedEvent.OFF_HEAT)
        ? Optional.empty()
        : tray.at(LoggedEvent.THROWN_OUT).map(WrittenTray.Entry::date);
  }

  /** How many there are beyond the plan. */
  int more() {
    return more;
  }

  List<WrittenTray> written() {
    return trays.stream().map(this::written).toList();
  }

  private WrittenTray written(LogTray tray) {
    TrayNumber its = numbers.get(tray);
    if (its == null) {
      throw new IllegalStateException(tray.name() + " has no number");
    }
    return new WrittenTray(tray.sowing(), tray.name(), its.number(), its.attempt(), tray.entries());
  }
}
