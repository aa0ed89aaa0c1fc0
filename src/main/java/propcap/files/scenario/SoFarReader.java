package propcap.files.scenario;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.SoFar;
import propcap.farm.TrayPast;
import propcap.farm.WeatherRecord;
import propcap.files.log.LogRow;
import propcap.files.log.SeasonLog;
import propcap.files.text.FaultWords;
import propcap.files.text.Faults;
import propcap.files.text.FilePosition;
import propcap.files.text.Node;
import propcap.files.text.SourceText;
import propcap.files.text.UnsavedTexts;
import propcap.past.LogWalk;
import propcap.past.WrittenTray;

/** Reads what is known of a scenario's season so far: its log and its weather, up to a day. */
final class SoFarReader {
  private static final int MOST_NAMED = 12;

  private final SoFarAsked asked;
  private final Optional<Season> season;
  private final Optional<Named> log;
  private final Optional<Named> weather;
  private final Path scenarioFile;
  private final Faults faults;

  /** A file and where it is named. */
  private record Named(Path file, FilePosition spot) {}

  private SoFarReader(Path scenarioFile, ScenarioFields fields, SoFarAsked asked, Faults faults) {
    this.scenarioFile = scenarioFile;
    this.asked = asked;
    this.faults = faults;
    season = fields.season();
    log = named("so-far", asked.log(), fields.soFar());
    weather = named("weather-so-far", asked.weather(), fields.weatherSoFar());
  }

  /** Empty where nothing is said of a season so far, by a scenario or by what is asked. */
  static Optional<SoFarReader> of(
      Path scenarioFile, ScenarioFields fields, SoFarAsked asked, Faults faults) {
    return asked.isAsked(fields.soFar(), fields.weatherSoFar())
        ? Optional.of(new SoFarReader(scenarioFile, fields, asked, faults))
        : Optional.empty();
  }

  private Optional<Named> named(String key, Optional<Path> given, Optional<Node> written) {
    return given.isPresent()
        ? given.map(file -> new Named(file, FilePosition.whole(file)))
        : written.flatMap(
            node -> SourceText.named(key, node, faults).map(file -> new Named(file, node.spot())));
  }

  Optional<Path> log() {
    return log.map(Named::file);
  }

  /**
   * The scenario on the morning of the day; empty where there is a fault.
   *
   * @param dropped sowings that have no trays but those of the log
   */
  Optional<Scenario> read(Optional<Scenario> scenario, Set<String> dropped, UnsavedTexts unsaved) {
    Optional<LocalDate> today = season.flatMap(this::today);
    Optional<SoFarAsked.Known> known =
        asked
            .first()
            .filter(f -> log.isPresent() && season.isPresent())
            .filter(f -> f.isOf(log.orElseThrow().file(), season.orElseThrow()));
    if (known.isPresent() && scenario.isPresent()) {
      return scenario.map(s -> s.withSoFar(known.get().soFar()));
    }
    List<WeatherRecord.Day> days =
        weather.isPresent() && season.isPresent() && today.isPresent()
            ? new WeatherSoFar(season.get(), today.get(), asked.isEvening(), faults)
                .read(weather.get().file(), weather.get().spot())
            : List.of();
    List<WrittenTray> written =
        log.flatMap(named -> SourceText.read(named.file(), named.spot(), unsaved, faults))
            .map(source -> LogRow.table(source, faults))
            .map(
                table ->
                    new SeasonLog(table, scenario, dropped, today, asked.byOptions(), faults)
                        .read())
            .orElse(List.of());
    if (scenario.isEmpty() || today.isEmpty() || faults.any()) {
      return Optional.empty();
    }
    List<TrayPast> trays = walked(scenario.get(), today.get(), written);
    Scenario read = scenario.get().withSoFar(new SoFar(today.get(), trays, days));
    tellDue(read, dropped);
    return faults.any() ? Optional.empty() : Optional.of(read);
  }

  /** A sowing that was due and of which the log lacks trays may be a row that was forgotten. */
  private void tellDue(Scenario scenario, Set<String> dropped) {
    SoFar soFar = scenario.soFar();
    if (soFar == null) {
      return;
    }
    Map<String, Long> sown =
        soFar.trays().stream()
            .filter(t -> t.attempt() == 0)
            .collect(Collectors.groupingBy(TrayPast::sowing, Collectors.counting()));
    List<String> due =
        scenario.sowings().stream()
            .filter(s -> s.sow().isBefore(soFar.today()) && !dropped.contains(s.id()))
            .filter(s -> sown.getOrDefault(s.id(), 0L) < s.trays())
            .map(s -> s.id() + " (" + sown.getOrDefault(s.id(), 0L) + " of " + s.trays() + ")")
            .toList();
    if (!due.isEmpty()) {
      faults.warn(
          FilePosition.whole(log.map(Named::file).orElse(scenarioFile)),
          "due before "
              + soFar.today()
              + " and not sown by the log: trays of "
              + FaultWords.some(due, MOST_NAMED),
          "they are taken as due today; write their rows, or trays 0 in the plan for what was"
              + " dropped");
    }
  }

  /** The day asked for, which must be of the season; the clock's is taken for the nearest. */
  private Optional<LocalDate> today(Season its) {
    LocalDate end = its.end().plusDays(1);
    if (asked.today().isEmpty()) {
      LocalDate clock = asked.clock();
      return Optional.of(
          clock.isBefore(its.start()) ? its.start() : clock.isAfter(end) ? end : clock);
    }
    LocalDate today = asked.today().get();
    if (today.isBefore(its.start()) || today.isAfter(end)) {
      faults.add(
          FilePosition.whole(scenarioFile),
          today + " is no day of its season",
          "--on with a day from " + its.start() + " to " + end);
      return Optional.empty();
    }
    return Optional.of(today);
  }

  private List<TrayPast> walked(Scenario scenario, LocalDate today, List<WrittenTray> written) {
    if (written.isEmpty()) {
      return List.of();
    }
    LogWalk.Walked walked = LogWalk.walk(scenario, today, written);
    for (LogWalk.Overfull place : walked.overfull()) {
      FilePosition spot = new FilePosition(log.orElseThrow().file(), place.line(), 0);
      String found =
          "%s has %s trays on %s and %s spaces: %s"
              .formatted(
                  place.place(),
                  place.trays().size(),
                  place.date(),
                  place.spaces(),
                  FaultWords.some(place.trays(), MOST_NAMED));
      if (asked.overfull()) {
        faults.warn(spot, found, "taken as it is");
      } else {
        faults.add(
            spot,
            found,
            "the rows of trays that have left it"
                + (asked.byOptions() ? ", or --overfull if it was so" : ""));
      }
    }
    return walked.trays();
  }
}
