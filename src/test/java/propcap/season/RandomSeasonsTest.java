package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.chance.Luck;
import propcap.farm.Climate;
import propcap.farm.Labour;
import propcap.farm.Loss;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.RandomScenarios;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.TrayMove;

/** What must hold in every season of every farm, tried on farms made up from printed seeds. */
class RandomSeasonsTest {
  private static final int SEASONS = 2;

  /** A farm and its seasons, as it is and with endless room: run once, looked at by many tests. */
  private static final class Farm {
    final Scenario scenario;
    final Luck luck;
    final List<SeasonOutcome> seasons;
    final List<SeasonOutcome> endless;

    Farm(long seed) {
      scenario = RandomScenarios.from(seed);
      luck = new Luck(scenario, seed);
      seasons = Runs.of(scenario, luck, SEASONS);
      endless = Runs.of(scenario.withEndlessRoom(), luck, SEASONS);
    }
  }

  private static final Map<Long, Farm> FARMS = new ConcurrentHashMap<>();

  private static Farm farm(long seed) {
    return FARMS.computeIfAbsent(seed, Farm::new);
  }

  static LongStream seeds() {
    return LongStream.range(0, 300);
  }

  /** Farms with several sowings, no two of which have the same bed-by. */
  static LongStream seedsWithoutTies() {
    return seeds()
        .filter(
            seed -> {
              List<Sowing> sowings = RandomScenarios.from(seed).sowings();
              long beds = sowings.stream().map(Sowing::bedBy).distinct().count();
              return beds > 1 && beds == sowings.size();
            });
  }

  /** Otherwise the tests below would promise less than they seem to. */
  @Test
  void theFarmsTogetherMeetEveryMoveEveryLossAndEveryWait() {
    Set<Object> met = new HashSet<>();
    seeds().forEach(seed -> farm(seed).seasons.forEach(season -> addWhatItMeets(season, met)));
    assertThat(met).contains((Object[]) TrayMove.values());
    assertThat(met).contains((Object[]) Loss.values());
    assertThat(met).contains((Object[]) RoomWait.values());
  }

  private static void addWhatItMeets(SeasonOutcome season, Set<Object> met) {
    for (int s = 0; s < season.sowings(); s++) {
      for (TrayMove move : TrayMove.values()) {
        if (season.trays(s, move) > 0) {
          met.add(move);
        }
      }
      for (Loss cause : Loss.values()) {
        if (season.lost(s, cause) > 0) {
          met.add(cause);
        }
      }
      for (RoomWait step : RoomWait.values()) {
        if (Runs.waited(season, step, s) > 0) {
          met.add(step);
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void everyCellSownIsCountedOnce(long seed) {
    for (SeasonOutcome season : farm(seed).seasons) {
      for (int s = 0; s < season.sowings(); s++) {
        int counted = season.onTime(s) + season.late(s);
        for (Loss cause : Loss.values()) {
          assertThat(season.lost(s, cause)).isNotNegative();
          counted += season.lost(s, cause);
        }
        assertThat(counted).isEqualTo(season.cellsSown(s));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void noPlaceHoldsMoreThanItsSpacesAndAClosedOneNothing(long seed) {
    Scenario scenario = farm(seed).scenario;
    for (SeasonOutcome season : farm(seed).seasons) {
      for (int p = 0; p < scenario.places().size(); p++) {
        int spaces = scenario.places().get(p).spaces();
        assertThat(Runs.use(scenario, season, p)).allMatch(used -> used >= 0 && used <= spaces);
      }
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void aSeasonRunTwiceIsTheSame(long seed) {
    Scenario scenario = farm(seed).scenario;
    List<SeasonOutcome> again = Runs.of(scenario, seed, SEASONS);
    for (int n = 0; n < SEASONS; n++) {
      assertThat(Runs.all(scenario, again.get(n)))
          .isEqualTo(Runs.all(scenario, farm(seed).seasons.get(n)));
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void inEndlessRoomNothingWaits(long seed) {
    for (SeasonOutcome season : farm(seed).endless) {
      for (int s = 0; s < season.sowings(); s++) {
        for (RoomWait step : RoomWait.values()) {
          assertThat(Runs.waited(season, step, s)).isZero();
        }
      }
      assertThat(season.sowBehindOverdue()).isZero();
      assertThat(season.tablesBehindReady()).isZero();
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void aPlaceThatNothingUsesChangesNothing(long seed) {
    Scenario scenario = farm(seed).scenario;
    List<Place> places = new ArrayList<>(scenario.places());
    places.add(0, new Place("unused", PlaceKind.CHAMBER, 50, new Climate.Constant(22), 0.1, null));
    List<SeasonOutcome> more = Runs.of(scenario.withPlaces(places), farm(seed).luck, SEASONS);
    for (int n = 0; n < SEASONS; n++) {
      SeasonOutcome with = more.get(n);
      SeasonOutcome without = farm(seed).seasons.get(n);
      for (int s = 0; s < without.sowings(); s++) {
        assertThat(Runs.sowing(with, s)).isEqualTo(Runs.sowing(without, s));
      }
      for (int p = 0; p < scenario.places().size(); p++) {
        assertThat(Runs.use(scenario, with, p + 1)).isEqualTo(Runs.use(scenario, without, p));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("seedsWithoutTies")
  void wherePlanOrderBreaksNoTiesItChangesNothing(long seed) {
    Scenario scenario = farm(seed).scenario;
    List<Sowing> reversed = new ArrayList<>(scenario.sowings());
    Collections.reverse(reversed);
    List<SeasonOutcome> backwards = Runs.of(with(scenario, reversed), seed, SEASONS);
    int last = reversed.size() - 1;
    for (int n = 0; n < SEASONS; n++) {
      for (int s = 0; s <= last; s++) {
        assertThat(Runs.sowing(backwards.get(n), last - s))
            .isEqualTo(Runs.sowing(farm(seed).seasons.get(n), s));
      }
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void inEndlessRoomMovingOneSowingChangesNoOther(long seed) {
    Scenario scenario = farm(seed).scenario.withEndlessRoom();
    List<Sowing> moved = new ArrayList<>(scenario.sowings());
    int which = moved.size() / 2;
    Sowing old = moved.get(which);
    moved.set(which, sown(old, scenario.season().start(), old.trays() + 3));
    List<SeasonOutcome> after = Runs.of(with(scenario, moved), seed, SEASONS);
    for (int n = 0; n < SEASONS; n++) {
      SeasonOutcome before = farm(seed).endless.get(n);
      assertThat(after.get(n).weatherYear()).isEqualTo(before.weatherYear());
      for (int s = 0; s < before.sowings(); s++) {
        if (s != which) {
          assertThat(Runs.sowing(after.get(n), s)).isEqualTo(Runs.sowing(before, s));
        }
      }
    }
  }

  private static Scenario with(Scenario s, List<Sowing> sowings) {
    return new Scenario(
        s.name(),
        s.season(),
        s.frostAtC(),
        s.rounds(),
        s.places(),
        s.crops(),
        sowings,
        s.weather(),
        null,
        Labour.NOT_LIMITED);
  }

  private static Sowing sown(Sowing s, LocalDate on, int trays) {
    return new Sowing(
        s.id(),
        s.crop(),
        s.lot(),
        on,
        trays,
        s.plantsNeeded(),
        s.bedFrom(),
        s.bedBy(),
        s.bedUntil(),
        s.resowUntil(),
        null,
        Sowing.Leeway.NOT_SAID);
  }
}
