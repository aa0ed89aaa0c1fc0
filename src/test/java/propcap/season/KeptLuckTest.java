package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.chance.DrawPurpose;
import propcap.chance.Luck;
import propcap.chance.SeasonLuck;
import propcap.chance.TrayLuck;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.past.WrittenTray;

/** Trays that are kept from one scenario to the next are those that would be drawn anew. */
class KeptLuckTest {
  private static final long SEED = 41;
  private static final int SPRINGS = 12;

  /** All that can be seen of a tray's luck, by spring, sowing and tray. */
  private static List<List<Double>> drawn(Scenario now, boolean isKept) {
    Luck luck = new SeasonPlan(now).luck(SEED);
    Luck.Reader reader = isKept ? luck.keepingReader() : luck.reader();
    List<List<Double>> trays = new ArrayList<>();
    for (int n = 0; n < SPRINGS; n++) {
      SeasonLuck season = reader.season(n);
      for (int s = 0; s < now.sowings().size(); s++) {
        for (int i = 0; i < now.sowings().get(s).trays(); i++) {
          TrayLuck tray = season.tray(s, i, 0);
          trays.add(
              List.of(
                  (double) tray.fills(),
                  tray.readyAt(),
                  (double) tray.showingBy(150),
                  tray.pace(),
                  tray.severity(),
                  (double) tray.lost(DrawPurpose.LOSS, 50, 0.3)));
        }
      }
    }
    return trays;
  }

  private static void assertSame(String farm, Scenario now) {
    assertThat(drawn(now, true)).as(farm).isEqualTo(drawn(now, false));
  }

  private static Scenario with(Scenario now, int which, String lot, int trays) {
    List<Sowing> sowings = new ArrayList<>(now.sowings());
    Sowing s = sowings.get(which);
    sowings.set(
        which,
        new Sowing(
            s.id(),
            s.crop(),
            lot,
            s.sow(),
            trays,
            s.plantsNeeded(),
            s.bedFrom(),
            s.bedBy(),
            s.bedUntil(),
            s.resowUntil(),
            s.germinateIn(),
            s.leeway()));
    return now.withSowings(sowings);
  }

  private static Scenario from(FromADayOn day) {
    List<WrittenTray> log = day.log(day.plan().luck(3).reader().season(0));
    return day.from(log);
  }

  /** By the trays of another sowing: of one lot they teach, of another they do not. */
  @Test
  void whatATrayLearnsOfItsLotIsNotKeptWhereTheLotHasOtherTrays() {
    Scenario now = from(new FromADayOn(FarmsWithAPast.oneLot(), 8, PretendedLog.Counting.NOTHING));
    Scenario apart = with(now, 1, "another", now.sowings().get(1).trays());
    assertThat(drawn(apart, false).get(0))
        .as("what the other sowing teaches of the first tray")
        .isNotEqualTo(drawn(now, false).get(0));
    assertSame("one lot", now);
    assertSame("two lots", apart);
    assertSame("one lot again", now);
  }

  @Test
  void anyFarmsTraysAreTheSameKeptOrDrawnAnewWhateverIsTriedBetween() {
    for (long number = 100; number < 140; number++) {
      Scenario farm = RandomScenarios.from(number);
      int today = (int) (number * 7 % farm.season().days());
      PretendedLog.Counting[] counting = PretendedLog.Counting.values();
      Scenario now = from(new FromADayOn(farm, today, counting[(int) (number % 3)]));
      int last = now.sowings().size() - 1;
      Sowing sowing = now.sowings().get(last);
      assertSame("farm " + number, now);
      assertSame(number + ", lot", with(now, last, "another", sowing.trays()));
      assertSame(number + ", trays", with(now, last, sowing.lot(), sowing.trays() + 2));
      assertSame(number + ", endless room", now.withEndlessRoom());
      assertSame("farm " + number + " again", now);
    }
  }
}
