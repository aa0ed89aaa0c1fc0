package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.chance.Luck;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Scenario;

/** A sowing's own germination place is tried before its crop's. */
class OwnPlaceTest {
  @Test
  void aSowingGoesToItsOwnPlaceFirstAndThenWhereItsCropGoes() {
    Farms farm = new Farms();
    Crops crop = new Crops();
    crop.germinateIn = List.of("Mats", "House");
    farm.crops = List.of(crop.make());
    farm.house = 2;
    farm.sowings.add(Farms.sowing("three", 1, 3).germinatingIn("House"));
    Scenario scenario = farm.make();
    SeasonOutcome season = Runs.of(scenario, new Luck(scenario, 1), 1).get(0);
    assertThat(season.use(1, 1)).isEqualTo(2);
    assertThat(season.use(0, 1)).isEqualTo(1);
  }
}
