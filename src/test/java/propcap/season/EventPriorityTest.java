package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.TrayMove;
import umontreal.ssj.simevents.Event;
import umontreal.ssj.simevents.Simulator;
import umontreal.ssj.simevents.eventlist.Henriksen;

class EventPriorityTest {

  @Test
  void theEndComesLastWhateverWasScheduledFirst() {
    Simulator sim = new Simulator(new Henriksen());
    sim.init();
    List<EventPriority> seen = new ArrayList<>();
    for (EventPriority moment :
        List.of(EventPriority.END, EventPriority.ROUND, EventPriority.ROUND)) {
      Event event = noting(sim, moment, seen);
      event.setPriority(moment.priority());
      event.schedule(7);
    }
    sim.start();
    assertThat(seen).containsExactly(EventPriority.ROUND, EventPriority.ROUND, EventPriority.END);
  }

  private static Event noting(Simulator sim, EventPriority moment, List<EventPriority> seen) {
    return new Event(sim) {
      @Override
      public void actions() {
        seen.add(moment);
      }
    };
  }

  /** Sown at 08:00 at 20 C: whole days later it is 08:00 again, whatever the rounding. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 5, 7, 11, 13, 19})
  void aTrayThatIsReadyAtTheHourOfTheRoundIsFoundOnIt(int days) {
    Crops crop = new Crops();
    crop.emergence = new Crop.Emergence(0, 30, 40, 20, days, days * (1 + 1e-14));
    crop.takesDays = days;
    Farms farm = new Farms();
    farm.crops = List.of(crop.make());
    farm.sowings.add(Farms.sowing("sowing", 3, 1));
    SeasonOutcome season = Runs.of(farm.make(), 1, 1).get(0);
    assertThat(season.firstDay(0, TrayMove.OFF_HEAT)).isEqualTo(3 + days);
    assertThat(season.firstDay(0, TrayMove.MOVED_OUT)).isEqualTo(3 + 2 * days);
  }

  /** A minute after the round is too late for it: the twin of the above. */
  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 5, 7, 11, 13, 19})
  void aTrayThatIsReadyAMinuteAfterTheRoundIsFoundOnTheNext(int days) {
    Crops crop = new Crops();
    double readyAfterDays = days + 1 / 1440.0;
    crop.emergence =
        new Crop.Emergence(0, 30, 40, 20, readyAfterDays, readyAfterDays * (1 + 1e-14));
    Farms farm = new Farms();
    farm.crops = List.of(crop.make());
    farm.sowings.add(Farms.sowing("sowing", 3, 1));
    SeasonOutcome season = Runs.of(farm.make(), 1, 1).get(0);
    assertThat(season.firstDay(0, TrayMove.OFF_HEAT)).isEqualTo(3 + days + 1);
  }
}
