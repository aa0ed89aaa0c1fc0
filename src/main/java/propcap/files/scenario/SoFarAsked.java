package propcap.files.scenario;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.SoFar;
import propcap.files.text.Node;
import propcap.files.text.OnDisk;

/**
 * What is asked of a season so far, beside what a scenario says of it. Where neither says anything
 * there is none: the season is still to come.
 *
 * @param log in place of the one that the scenario names
 * @param weather this season's days, in place of those that the scenario names
 * @param today a day of the season, or the one after it; empty: the clock's
 * @param clock the day by the clock, taken for the season's nearest where it lies outside
 * @param always whether a day is wanted though nothing is said of the season
 * @param overfull whether the log may have more trays in a place than it has spaces
 * @param byOptions whether who asks has options to ask by, which faults may then name
 * @param isEvening whether the round of the day before {@code today} has just been done, so that
 *     nobody has recorded that day's temperatures yet
 * @param first the scenario whose house the log tells of, where several are read with one log
 */
public record SoFarAsked(
    Optional<Path> log,
    Optional<Path> weather,
    Optional<LocalDate> today,
    LocalDate clock,
    boolean always,
    boolean overfull,
    boolean byOptions,
    boolean isEvening,
    Optional<Known> first) {

  /** A log that was read, and of which season. */
  record Known(Path log, Season season, SoFar soFar) {
    boolean isOf(Path file, Season its) {
      return OnDisk.key(log).equals(OnDisk.key(file)) && season.equals(its);
    }
  }

  /** By what the scenario says alone, on a day. */
  public static SoFarAsked on(LocalDate today) {
    return of(null, null, today, today, true, false);
  }

  /** What is asked by options; null where nothing was said. */
  public static SoFarAsked of(
      @Nullable Path log,
      @Nullable Path weather,
      @Nullable LocalDate today,
      LocalDate clock,
      boolean always,
      boolean overfull) {
    return new SoFarAsked(
        Optional.ofNullable(log),
        Optional.ofNullable(weather),
        Optional.ofNullable(today),
        clock,
        always,
        overfull,
        true,
        false,
        Optional.empty());
  }

  /** What is asked where there are no options, as on the page: by what the scenario names alone. */
  public static SoFarAsked without(LocalDate today, boolean overfull, boolean isEvening) {
    return new SoFarAsked(
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        today,
        false,
        overfull,
        false,
        isEvening,
        Optional.empty());
  }

  /**
   * The same of scenarios that are read beside another: a log tells of one house, so those that
   * name the same go on from what it came to there.
   */
  public SoFarAsked beside(ScenarioReader.Reading other) {
    Optional<Scenario> scenario = other.scenario();
    SoFar soFar = scenario.map(Scenario::soFar).orElse(null);
    return first.isPresent() || soFar == null || other.log().isEmpty()
        ? this
        : new SoFarAsked(
            log,
            weather,
            today,
            clock,
            always,
            overfull,
            byOptions,
            isEvening,
            Optional.of(new Known(other.log().get(), scenario.orElseThrow().season(), soFar)));
  }

  /** Whether anything is asked, by these or by what the scenario names. */
  boolean isAsked(Optional<Node> namedLog, Optional<Node> namedWeather) {
    return always
        || log.isPresent()
        || weather.isPresent()
        || today.isPresent()
        || namedLog.isPresent()
        || namedWeather.isPresent();
  }
}
