package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.past.LogWalk;
import propcap.past.WrittenTray;

/** A log with more trays on a table than it has spaces, as tables do get overfull. */
class OverfullTableTest {
  /** Three trays germinate on the one space of a table, where they only change stage. */
  @Test
  void traysThatGerminateOnAnOverfullTableGrowOnThere() {
    Crops crop = new Crops();
    crop.germinateIn = List.of("House");
    Farms farm = new Farms();
    farm.crops = List.of(crop.make());
    farm.house = 1;
    farm.sowings = List.of(Farms.sowing("a", 0, 3));
    Scenario planned = farm.make();
    List<WrittenTray> log =
        IntStream.range(0, 3)
            .mapToObj(
                i ->
                    new WrittenTray(
                        "a",
                        "" + (i + 1),
                        i,
                        0,
                        List.of(
                            new WrittenTray.Entry(
                                LoggedEvent.SOWN, Farms.day(0), null, "House", i + 2))))
            .toList();
    Scenario known =
        planned.withSoFar(
            new SoFar(Farms.day(2), LogWalk.walk(planned, Farms.day(2), log).trays(), List.of()));
    SeasonPlan plan = new SeasonPlan(known);
    SeasonOutcome season = House.season(plan, plan.luck(1).reader().season(0));
    assertThat(season.onTime(0)).isEqualTo(30);
  }
}
