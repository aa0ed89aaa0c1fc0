package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;

/** The scenarios that come with the program read without a fault, as they are told. */
class WorkedScenariosTest {
  private static Scenario read(String name) throws FaultsException {
    return ScenarioReader.read(Path.of("scenarios", name));
  }

  private static List<Place> withCost(Scenario scenario) {
    return scenario.places().stream().filter(p -> p.cost() != null).toList();
  }

  @Test
  void theSpringHasAPriceForEveryCropAndItsPlacesAreThereAlready() throws FaultsException {
    Scenario spring = read("spring.yaml");

    assertThat(spring.prices()).isNotNull();
    assertThat(withCost(spring)).isEmpty();
  }

  @Test
  void chamberAndGreenhouseAddsThePlacesOfBothAtTheirCosts() throws FaultsException {
    Scenario spring = read("spring.yaml");
    Scenario chamber = read("second-chamber.yaml");
    Scenario greenhouse = read("extra-greenhouse.yaml");
    Scenario both = read("chamber-and-greenhouse.yaml");

    assertThat(withCost(chamber)).extracting(Place::name).containsExactly("Chamber 2");
    assertThat(withCost(greenhouse)).extracting(Place::name).containsExactly("Glasshouse 2");
    assertThat(withCost(both))
        .containsExactly(withCost(chamber).get(0), withCost(greenhouse).get(0));
    assertThat(both.places()).hasSize(spring.places().size() + 2);
    assertThat(both.prices()).isEqualTo(spring.prices());
    assertThat(both.sowings()).isEqualTo(spring.sowings());
  }
}
