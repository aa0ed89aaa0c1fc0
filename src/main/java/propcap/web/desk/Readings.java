package propcap.web.desk;

import java.nio.file.Path;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Season;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.ScenarioReader.Reading;
import propcap.files.scenario.SoFarAsked;
import propcap.files.scenario.WrittenScenario;
import propcap.files.text.UnsavedTexts;

/** The scenarios on the desk as they are read on a day, each once until something changes. */
public final class Readings {
  private final Clock clock;
  private final Map<Path, Reading> known = new HashMap<>();
  private Day day;
  private Begun begun = new Begun(Optional.empty(), null);
  private LocalDate readOn;

  /**
   * On which day the season is looked at.
   *
   * @param chosen null: the clock's, or the morning after the log's last row
   * @param isClock whether the clock's is taken though the log cannot go on from it
   * @param isWinter whether the season is still to come, whatever its log says
   * @param isOverfull whether the log may have more trays in a place than it has spaces
   */
  public record Day(
      @Nullable LocalDate chosen, boolean isClock, boolean isWinter, boolean isOverfull) {}

  /**
   * From which day it goes on where none is chosen. It stays, so that all that was done on it can
   * be written, until there is another log.
   *
   * @param log the file that it hangs on
   * @param afterLast the morning after its last row; null where the clock's day can be taken
   */
  private record Begun(Optional<Path> log, @Nullable LocalDate afterLast) {}

  Readings(Clock clock) {
    this(clock, new Day(null, false, false, false));
  }

  private Readings(Clock clock, Day day) {
    this.clock = clock;
    this.day = day;
    this.readOn = LocalDate.now(clock);
  }

  /** Others on the same day, for a trial of what is not written yet. */
  Readings onTrial() {
    Readings trial = new Readings(clock, new Day(today(), false, false, day.isOverfull()));
    trial.readOn = readOn;
    return trial;
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
    LocalDate morning = today();
    Reading reading = read(file, first, texts, morning, false);
    if (file.equals(first) && !begun.log().equals(reading.written().logFile())) {
      begun = begin(reading.written());
      if (!morning.equals(today())) {
        reading = read(file, first, texts, today(), false);
      }
    }
    boolean isDone =
        reading.written().log().stream().anyMatch(r -> r.text("date").equals("" + today()));
    // What is written of today is of its round, so the forecast goes on before tomorrow's.
    return isDone ? read(file, first, texts, today().plusDays(1), true) : reading;
  }

  private Reading read(
      Path file, Path first, UnsavedTexts texts, LocalDate morning, boolean isEvening) {
    SoFarAsked asked = SoFarAsked.without(morning, day.isOverfull(), isEvening);
    return ScenarioReader.read(
        file, texts, file.equals(first) ? asked : asked.beside(of(first, first, texts)));
  }

  /** A log of a season that is past or to come is gone on from where it ends. */
  private Begun begin(WrittenScenario written) {
    LocalDate last = lastRow(written).orElse(readOn);
    boolean isPast = seasonDay(written, "end").filter(readOn::isAfter).isPresent();
    boolean isAfterLast = readOn.isBefore(last) || (isPast && lastRow(written).isPresent());
    return new Begun(written.logFile(), isAfterLast ? last.plusDays(1) : null);
  }

  /** The last day of the season of which the log has a row. */
  public static Optional<LocalDate> lastRow(WrittenScenario written) {
    return season(written)
        .flatMap(
            season ->
                written.log().stream()
                    .flatMap(row -> date(row.text("date")).stream())
                    .filter(season::contains)
                    .max(Comparator.naturalOrder()));
  }

  /** The season; empty where it cannot be read. */
  public static Optional<Season> season(WrittenScenario written) {
    return seasonDay(written, "start")
        .flatMap(
            start ->
                seasonDay(written, "end")
                    .filter(end -> !end.isBefore(start))
                    .map(end -> new Season(start, end)));
  }

  /** The season's {@code start} or {@code end}; empty where it cannot be read. */
  public static Optional<LocalDate> seasonDay(WrittenScenario written, String which) {
    return date(written.head().text("season." + which));
  }

  private static Optional<LocalDate> date(String text) {
    try {
      return Optional.of(LocalDate.parse(text));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** The day that was chosen, the morning after the log's last row, or the clock's. */
  LocalDate today() {
    return Stream.of(day.chosen(), day.isClock() ? null : begun.afterLast())
        .flatMap(Stream::ofNullable)
        .findFirst()
        .orElse(readOn);
  }

  /** The day by the clock. */
  LocalDate clockDay() {
    return readOn;
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

  /** All is read anew, with a log that others may have written in. */
  void lookAnew() {
    begun = new Begun(Optional.empty(), null);
    forget();
  }

  /** Whether a night has gone by since they were read. */
  boolean areOfYesterday() {
    return !readOn.equals(LocalDate.now(clock));
  }
}
