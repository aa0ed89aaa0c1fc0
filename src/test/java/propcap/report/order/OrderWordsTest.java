package propcap.report.order;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Sowing;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.order.Supplies;
import propcap.study.order.Supplying;

/** A farm on which nothing is left to chance: a tray brings 10 plants, on day 21. */
class OrderWordsTest {
  private final Farms farm = new Farms();

  private void sow(String id, int trays, int needed, int bedBy) {
    farm.sowings.add(
        new Sowing(
            id,
            "cosmos",
            "lot",
            Farms.day(2),
            trays,
            needed,
            Farms.day(0),
            Farms.day(bedBy),
            null,
            null,
            null,
            Sowing.Leeway.NOT_SAID));
  }

  private Supplies supplies() throws BadQuestionException, InterruptedException {
    farm.crops.clear();
    farm.crops.add(new Crops().make());
    return Supplying.supplies(farm.make(), 0.9, new RunSettings(1, 2, null, 1), done -> {});
  }

  /** Named are four; the one that lacks most was hidden where it came late in the plan. */
  @Test
  void whatIsNotNamedIsNeverMoreThanWhatIs() throws BadQuestionException, InterruptedException {
    for (int needed : List.of(20, 30, 20, 30, 90, 20)) {
      sow("more-" + farm.sowings.size(), 1, needed, 59);
    }
    for (int trays : List.of(3, 3, 4, 3, 5)) {
      sow("fewer-" + farm.sowings.size(), trays, 20, 59);
    }
    assertThat(OrderWords.changes(supplies()))
        .isEqualTo(
            "More are needed for more-4 (+8), more-1 (+2), more-3 (+2), more-0 (+1) and 2 more;"
                + " fewer would do for fewer-10 (-3), fewer-8 (-2), fewer-6 (-1), fewer-7 (-1) and 1"
                + " more.");
  }

  /** The first lacks a tray; of the second two trays wait until one has left the house of one. */
  @Test
  void howManyAreSafeIsCountedInTheHouseAsItIs() throws BadQuestionException, InterruptedException {
    sow("lacks", 1, 20, 59);
    assertThat(OrderWords.safe(supplies()))
        .isEqualTo(
            "Sowings safe in the house as it is: 0 of 1 as planned, 1 with the trays ordered. With"
                + " room for all it would be 0 as planned.");
    farm.sowings.clear();
    farm.house = 1;
    sow("waits", 3, 30, 22);
    assertThat(OrderWords.safe(supplies()))
        .isEqualTo(
            "Sowings safe in the house as it is: 0 of 1 as planned, 0 with the trays ordered. With"
                + " room for all it would be 1 as planned: one lacks room now, not trays.");
  }

  @Test
  void whatNoTraysHelpIsNamedToo() throws BadQuestionException, InterruptedException {
    sow("late", 1, 10, 20);
    assertThat(OrderWords.beyond(supplies()))
        .isEqualTo(
            Optional.of(
                "More trays alone do not help late: even with room for all it is too late too"
                    + " often. Sow earlier; the list has the trays of the plan."));
  }
}
