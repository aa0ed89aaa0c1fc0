package propcap.files.scenario;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import propcap.farm.PlanNeeds;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.SowingNeed;
import propcap.farm.TrayPast;
import propcap.farm.WeatherYear;
import propcap.files.text.Fault;
import propcap.files.text.Faults;
import propcap.files.text.FaultsException;
import propcap.files.text.FilePosition;
import propcap.files.text.UnsavedTexts;
import propcap.files.weather.WeatherFile;

/** Reads a scenario and all the files that it names. */
public final class ScenarioReader {
  private ScenarioReader() {}

  /**
   * What the files say, as far as they can be read.
   *
   * @param needs the scenario with what of its sowing plan is left to be found; empty where there
   *     is any other fault
   * @param log of this season, with which it was read; empty where there is none
   * @param faults sorted by file and line; what is left to be found among them
   * @param others those that are none of what is left to be found
   * @param warnings what can be meant but seldom is, sorted likewise; none while there is a fault
   */
  public record Reading(
      WrittenScenario written,
      Optional<PlanNeeds> needs,
      Optional<Path> log,
      List<Fault> faults,
      List<Fault> others,
      List<Fault> warnings) {
    /** The scenario; empty where there is a fault. */
    public Optional<Scenario> scenario() {
      return needs.filter(n -> n.needs().isEmpty()).map(PlanNeeds::scenario);
    }

    /**
     * The scenario.
     *
     * @throws FaultsException with all faults of all its files, if there is any
     */
    public Scenario sound() throws FaultsException {
      return scenario().orElseThrow(() -> new FaultsException(faults));
    }

    /**
     * The scenario, of whose sowing plan dates and trays may be left to be found.
     *
     * @throws FaultsException with all faults of all its files, if there is any other
     */
    public PlanNeeds soundNeeds() throws FaultsException {
      return needs.orElseThrow(() -> new FaultsException(others));
    }
  }

  /**
   * Reads a scenario, with those that it extends, its crop list, sowing plan and weather record.
   *
   * @throws FaultsException with all faults of all these files, if there is any
   */
  public static Scenario read(Path scenarioYaml) throws FaultsException {
    return read(scenarioYaml, UnsavedTexts.none()).sound();
  }

  /**
   * Reads a scenario and the texts that stand in for files, and tells what in it is unlikely. What
   * it says of a season so far is left aside.
   */
  public static Reading read(Path scenarioYaml, UnsavedTexts unsaved) {
    return read(scenarioYaml, unsaved, Optional.empty(), new Faults());
  }

  /** Reads a scenario and what is known of its season so far. */
  public static Reading read(Path scenarioYaml, UnsavedTexts unsaved, SoFarAsked asked) {
    return read(scenarioYaml, unsaved, Optional.of(asked), new Faults());
  }

  /** Reads a scenario and adds to the faults; empty where there is one. */
  static Optional<Scenario> read(Path file, Faults faults) {
    Optional<Scenario> scenario =
        read(file, UnsavedTexts.none(), Optional.empty(), faults).scenario();
    faults.leaveNothingToFind();
    return scenario;
  }

  /** A scenario without what is dropped, but for the trays of it that have been sown. */
  private static Scenario withoutDropped(Scenario scenario, Set<String> dropped) {
    SoFar soFar = scenario.soFar();
    Set<String> sown =
        soFar == null
            ? Set.of()
            : soFar.trays().stream().map(TrayPast::sowing).collect(Collectors.toSet());
    return dropped.isEmpty()
        ? scenario
        : scenario.withSowings(
            scenario.sowings().stream()
                .filter(s -> !dropped.contains(s.id()) || sown.contains(s.id()))
                .toList());
  }

  private static Reading read(
      Path file, UnsavedTexts unsaved, Optional<SoFarAsked> asked, Faults faults) {
    Layers layers = Layers.read(file, unsaved, faults);
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
    SowingPlan plan = new SowingPlan(layers, fields.season(), faults);
    Optional<Prices> prices = money.flatMap(m -> m.read(crops, plan));
    List<WeatherYear> weather =
        fields
            .weather()
            .map(named -> WeatherFile.read(named, fields.season(), unsaved, faults))
            .orElse(List.of());

    ScenarioChecks checks = new ScenarioChecks(layers, places, placeList.isOpen(), faults);
    checks.placesSuffice();
    checks.cropsHavePlaces(crops);
    checks.sowingsAreDue(plan, crops, fields.season());
    Optional<PlanNeeds> needs = Optional.empty();
    if (!faults.any()
        && fields.season().isPresent()
        && fields.rounds().isPresent()
        && fields.labour().isPresent()) {
      try {
        Scenario scenario =
            new Scenario(
                fields.name(),
                fields.season().get(),
                fields.frostAtC(),
                fields.rounds().get(),
                places.values().stream().flatMap(p -> p.place().stream()).toList(),
                crops.crops(),
                plan.sowings(),
                weather,
                prices.orElse(null),
                fields.labour().get());
        needs =
            Optional.of(
                new PlanNeeds(
                    scenario, plan.lines().stream().flatMap(l -> l.need().stream()).toList()));
      } catch (IllegalArgumentException e) {
        faults.add(
            FilePosition.whole(file),
            String.valueOf(e.getMessage()),
            "a scenario that holds together");
      }
    }
    Optional<SoFarReader> soFar = asked.flatMap(a -> SoFarReader.of(file, fields, a, faults));
    Optional<Scenario> read = needs.map(PlanNeeds::scenario);
    if (soFar.isPresent()) {
      read = soFar.get().read(read, plan.dropped(), unsaved);
    }
    List<SowingNeed> open = needs.map(PlanNeeds::needs).orElse(List.of());
    needs = read.map(s -> new PlanNeeds(withoutDropped(s, plan.dropped()), open));
    return new Reading(
        WrittenScenario.of(file, layers, placeList, crops, plan, unsaved),
        needs,
        soFar.flatMap(SoFarReader::log),
        faults.sortedWithToFind(),
        faults.sorted(),
        needs.isPresent() ? faults.warnings() : List.of());
  }
}
