package propcap.web;

import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.files.ScenarioReader;
import propcap.files.ScenarioReader.Reading;
import propcap.files.SoFarAsked;
import propcap.files.UnsavedTexts;

/** The scenarios on the desk as they are read on a day, each once until something changes. */
final class Readings {
  private final Clock clock;
  private final Map<Path, Reading> known = new HashMap<>();
  private Day day = new Day(null, false, false);
  private LocalDate readOn;

  /**
   * On which day the season is looked at.
   *
   * @param chosen null: the clock's
   * @param isWinter whether the season is still to come, whatever its log says
   * @param isOverfull whether the log may have more trays in a place than it has spaces
   */
  record Day(@Nullable LocalDate chosen, boolean isWinter, boolean isOverfull) {}

  Readings(Clock clock) {
    this.clock = clock;
    this.readOn = LocalDate.now(clock);
  }

  /** What a scenario says; those of one log go on from the house of the first. */
  Reading of(Path file, Path first, UnsavedTexts texts) {
    Reading before = known.get(file);
    if (before == null) {
      before = read(file, first, texts);
      known.put(file, before);
    }
    return before;
  }

  private Reading read(Path file, Path first, UnsavedTexts texts) {
    if (day.isWinter()) {
      return ScenarioReader.read(file, texts);
    }
    Reading reading = read(file, first, texts, today());
    boolean isDone =
        reading.written().log().stream().anyMatch(r -> r.text("date").equals("" + today()));
    // What is written of today is of its round, so the forecast goes on before tomorrow's.
    return isDone ? read(file, first, texts, today().plusDays(1)) : reading;
  }

  private Reading read(Path file, Path first, UnsavedTexts texts, LocalDate morning) {
    SoFarAsked asked = SoFarAsked.without(morning, day.isOverfull());
    return ScenarioReader.read(
        file, texts, file.equals(first) ? asked : asked.beside(of(first, first, texts)));
  }

  /** The day that was chosen, or the clock's. */
  LocalDate today() {
    LocalDate chosen = day.chosen();
    return chosen == null ? readOn : chosen;
  }

  Day day() {
    return day;
  }

  void choose(Day other) {
    day = other;
    forget();
  }

  /** All is read anew. */
  void forget() {
    known.clear();
    readOn = LocalDate.now(clock);
  }

  /** Whether a night has gone by since they were read. */
  boolean areOfYesterday() {
    return !readOn.equals(LocalDate.now(clock));
  }
}
