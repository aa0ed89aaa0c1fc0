package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.farm.Crop;
import propcap.farm.PlaceKind;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.TrayMove;

/**
 * Little's law, exactly, of seasons that start and end with empty places: the days of use of a
 * place are the days that trays stayed there (Little 1961, Operations Research 9). The farms are
 * made up from printed seeds, with little room, rest days and luck in time; but all seeds come up,
 * no plant is lost and the season is long, so that each tray makes each move and the days that it
 * stayed follow from the notebook's sums.
 */
class LittlesLawTest {
  static LongStream seeds() {
    return LongStream.range(0, 100);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void daysOfUseAreDaysStayedInEachKindOfPlace(long seed) {
    Scenario scenario = new SureFarm(seed).make();
    for (SeasonOutcome season : Runs.of(scenario, seed, 3)) {
      long inHeat = 0;
      long onTables = 0;
      long outside = 0;
      for (int s = 0; s < season.sowings(); s++) {
        Crop crop = scenario.cropOf(scenario.sowings().get(s));
        int trays = season.trays(s, TrayMove.PLANTED_OUT);
        assertThat(trays).isEqualTo(season.trays(s, TrayMove.SOWN));
        int offHeat = season.daySum(s, TrayMove.OFF_HEAT);
        int germinated = offHeat - season.daySum(s, TrayMove.SOWN);
        boolean onTable = crop.germinateIn().get(0).startsWith("table");
        inHeat += onTable ? 0 : germinated;
        onTables += onTable ? germinated : 0;
        int potted = season.trays(s, TrayMove.POTTED_ON);
        assertThat(potted).isIn(0, trays);
        int out = season.daySum(s, TrayMove.MOVED_OUT);
        int plugsEnd = potted > 0 ? season.daySum(s, TrayMove.POTTED_ON) : out;
        int potsPerTray = crop.pottingOn().potsPerTray();
        int spaces = potted > 0 ? (crop.cells() + potsPerTray - 1) / potsPerTray : 1;
        onTables += plugsEnd - offHeat + (long) spaces * (out - plugsEnd);
        outside += (long) spaces * (season.daySum(s, TrayMove.PLANTED_OUT) - out);
      }
      assertThat(daysOfUse(scenario, season, PlaceKind.CHAMBER)).isEqualTo(inHeat);
      assertThat(daysOfUse(scenario, season, PlaceKind.TABLE)).isEqualTo(onTables);
      assertThat(daysOfUse(scenario, season, PlaceKind.HARDENING)).isEqualTo(outside);
    }
  }

  private static long daysOfUse(Scenario scenario, SeasonOutcome season, PlaceKind kind) {
    return IntStream.range(0, scenario.places().size())
        .filter(p -> scenario.places().get(p).kind() == kind)
        .mapToLong(p -> Runs.use(scenario, season, p).stream().mapToInt(used -> used).sum())
        .sum();
  }

  @Test
  void someOfTheseFarmsWaitAtEachStepSomePotOnIfHeldAndSomeDoNot() {
    int[] waited = new int[RoomWait.values().length];
    int[] ifHeld = new int[2];
    seeds()
        .forEach(
            seed -> {
              Scenario scenario = new SureFarm(seed).make();
              SeasonOutcome season = Runs.of(scenario, seed, 1).get(0);
              for (int s = 0; s < season.sowings(); s++) {
                for (RoomWait step : RoomWait.values()) {
                  waited[step.ordinal()] += Runs.waited(season, step, s);
                }
                Crop crop = scenario.cropOf(scenario.sowings().get(s));
                if (crop.pottingOn().when() == Crop.PottingOn.When.IF_HELD) {
                  ifHeld[Math.min(1, season.trays(s, TrayMove.POTTED_ON))]++;
                }
              }
            });
    assertThat(waited).doesNotContain(0);
    assertThat(ifHeld).doesNotContain(0);
  }
}
