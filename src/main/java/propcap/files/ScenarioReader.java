package propcap.files;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import propcap.farm.Labour;
import propcap.farm.Prices;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.farm.WeatherYear;

/** Reads a scenario and all the files that it names. */
public final class ScenarioReader {
  private ScenarioReader() {}

  /** Whether a grower can mean a date: the years of all files, 1700 to 2199. */
  public static boolean canBeMeant(LocalDate date) {
    return Fields.isOfOurTimes(date);
  }

  /**
   * What the files say.
   *
   * @param warnings what can be meant but seldom is, sorted by file and line; none stops a run
   */
  public record Read(Scenario scenario, List<Fault> warnings) {}

  /**
   * Reads a scenario, with those that it extends, its crop list, sowing plan and weather record.
   *
   * @throws FaultsException with all faults of all these files, if there is any
   */
  public static Scenario read(Path scenarioYaml) throws FaultsException {
    return readDoubting(scenarioYaml, Drafts.NONE).scenario();
  }

  /**
   * Reads a scenario, and tells what in it is unlikely.
   *
   * @param drafts texts that stand in for files
   * @throws FaultsException with all faults of all its files, if there is any
   */
  public static Read readDoubting(Path scenarioYaml, Drafts drafts) throws FaultsException {
    Faults faults = new Faults();
    Optional<Scenario> scenario = read(scenarioYaml, drafts, faults);
    if (faults.any() || scenario.isEmpty()) {
      throw new FaultsException(faults.sorted());
    }
    return new Read(scenario.get(), faults.warnings());
  }

  /** The same, empty where there is a fault. */
  static Optional<Scenario> read(Path file, Faults faults) {
    return read(file, Drafts.NONE, faults);
  }

  private static Optional<Scenario> read(Path file, Drafts drafts, Faults faults) {
    Layers layers = Layers.read(file, drafts, faults);
    layers.reportMissing(file, List.of("crops", "sowings", "places"), faults);
    ScenarioFields fields = ScenarioFields.read(file, layers.merged(file), faults);
    Optional<MoneyFields> money = fields.money().map(m -> new MoneyFields(m, layers));
    Amounts amounts = money.map(MoneyFields::amounts).orElseGet(() -> new Amounts(null, layers));
    PlaceList placeList = new PlaceList(layers, faults);
    Map<String, PlaceFields> places = new LinkedHashMap<>();
    placeList
        .places()
        .forEach((name, place) -> places.put(name, PlaceFields.read(name, place, amounts, faults)));
    CropList crops = new CropList(layers, placeList, faults);
    SowingPlan plan = new SowingPlan(layers, faults);
    Optional<Prices> prices = money.flatMap(m -> m.read(crops, plan));
    List<WeatherYear> weather =
        fields
            .weather()
            .map(named -> WeatherFile.read(named, fields.season(), drafts, faults))
            .orElse(List.of());

    ScenarioChecks checks = new ScenarioChecks(layers, places, placeList.isOpen(), faults);
    checks.placesSuffice();
    checks.cropsHavePlaces(crops);
    checks.sowingsAreDue(plan, crops, fields.season());
    if (faults.any()
        || fields.season().isEmpty()
        || fields.rounds().isEmpty()
        || fields.labour().isEmpty()) {
      return Optional.empty();
    }
    Season season = fields.season().get();
    Rounds rounds = fields.rounds().get();
    Labour labour = fields.labour().get();
    try {
      return Optional.of(
          new Scenario(
              fields.name(),
              season,
              fields.frostAtC(),
              rounds,
              places.values().stream().flatMap(p -> p.place().stream()).toList(),
              crops.crops(),
              plan.lines().stream().flatMap(l -> l.sowing().stream()).toList(),
              weather,
              prices.orElse(null),
              labour));
    } catch (IllegalArgumentException e) {
      faults.add(
          Spot.whole(file), String.valueOf(e.getMessage()), "a scenario that holds together");
      return Optional.empty();
    }
  }
}
