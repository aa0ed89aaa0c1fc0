package propcap.study.now;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowings;
import propcap.farm.TrayPast;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;
import propcap.past.LogWalk;
import propcap.season.PretendedLog;
import propcap.season.PretendedLog.Counting;
import propcap.season.SeasonPlan;
import propcap.study.BadQuestionException;
import propcap.study.RunSettings;
import propcap.study.now.SeasonNow.Advice;
import propcap.study.now.SeasonNow.Kind;
import propcap.study.now.SeasonNow.SowingNow;
import propcap.study.now.SeasonNow.Standing;

class AskingNowTest {
  private static final int TODAY = 80;
  private static final RunSettings FEW = new RunSettings(1, 26, null, 1);

  private static Scenario example() {
    try {
      return ScenarioReader.read(Path.of("src/test/resources/propcap/example/scenario.yaml"));
    } catch (FaultsException e) {
      throw new AssertionError(e);
    }
  }

  /** The example on a day, after a season like the first of seed 7. */
  private static Scenario inSeason(Scenario scenario, int today) {
    SeasonPlan plan = new SeasonPlan(scenario);
    var luck = plan.luck(7).reader().season(0);
    var log = PretendedLog.of(plan, luck, today, Counting.STANDS);
    LogWalk.Walked walked = LogWalk.walk(scenario, scenario.season().date(today), log);
    return scenario.withSoFar(
        new SoFar(
            scenario.season().date(today),
            walked.trays(),
            scenario.weather().get(luck.weatherYear()).first(today, scenario.season().start())));
  }

  private static SoFar known(Scenario scenario) {
    return requireNonNull(scenario.soFar());
  }

  private static SeasonNow ask(Scenario scenario, boolean advise) throws Exception {
    // A difference is told from 20 springs that differ: of 26 there are seldom so many.
    RunSettings settings = advise ? new RunSettings(1, 104, null, 1) : FEW;
    return AskingNow.ask(scenario, settings, 0.9, advise, done -> {});
  }

  @Test
  void onTheFirstDayItIsTheWinterForecast() throws Exception {
    Scenario example = example();
    SeasonNow now =
        ask(example.withSoFar(new SoFar(example.season().start(), List.of(), List.of())), false);

    for (SowingNow sowing : now.sowings()) {
      assertThat(sowing.now().chanceMet()).isEqualTo(sowing.winter().chanceMet());
      assertThat(sowing.trays().toSow()).isEqualTo(sowing.sowing().trays());
      assertThat(sowing.trays().due()).isZero();
    }
    assertThat(now.now().onTime().mean()).isEqualTo(now.winter().onTime().mean());
    assertThat(now.safe()).isEqualTo(now.safeInWinter());
  }

  @Test
  void everyTrayOfTheLogIsSomewhere() throws Exception {
    Scenario scenario = inSeason(example(), TODAY);
    SeasonNow now = ask(scenario, false);

    for (SowingNow sowing : now.sowings()) {
      assertThat(sowing.trays().sown()).isEqualTo(known(scenario).of(sowing.sowing()).size());
    }
    assertThat(now.sowings().stream().mapToInt(s -> s.trays().sown()).sum())
        .isEqualTo(known(scenario).trays().size());
  }

  @Test
  void aSowingThatTheDogWasInIsLostAndCanBeSownAgain() throws Exception {
    Scenario lettuce =
        example()
            .withSowings(
                example().sowings().stream()
                    .filter(s -> s.crop().equals("lettuce"))
                    .map(s -> Sowings.sownAgainUntil(s, null))
                    .toList());
    Scenario scenario = inSeason(lettuce, TODAY);
    SoFar soFar = known(scenario);
    List<TrayPast> trays = new ArrayList<>();
    for (TrayPast tray : soFar.trays()) {
      boolean isHit = tray.sowing().equals("lettuce-4") && !tray.isGone();
      trays.add(isHit ? tray.thrownOut(TODAY - 1) : tray);
    }
    assertThat(trays).anyMatch(t -> t.sowing().equals("lettuce-4") && t.isGone());
    SeasonNow now = ask(scenario.withSoFar(soFar.withTrays(trays)), true);

    SowingNow hit = find(now, "lettuce-4");
    assertThat(hit.standing()).isIn(Standing.LOST, Standing.AT_RISK);
    assertThat(hit.isShort()).isTrue();
    Advice again =
        now.advice().stream()
            .filter(a -> a.kind() == Kind.SOW_AGAIN && hit.sowing().equals(a.sowing()))
            .findFirst()
            .orElseThrow();
    assertThat(now.advice()).allMatch(a -> a.gain().isMore());
    assertThat(again.trays()).isPositive();
    assertThat(again.gain().isMore()).isTrue();
    assertThat(requireNonNull(again.chance()).chance()).isGreaterThan(hit.now().chanceMet());
  }

  @Test
  void withoutASeasonSoFarThereIsNothingToGoOnFrom() {
    assertThatThrownBy(() -> ask(example(), false))
        .isInstanceOf(BadQuestionException.class)
        .hasMessageContaining("nothing is known");
  }

  @Test
  void aTrayThatWasPlantedIsInNoPlace() {
    assertThat(known(inSeason(example(), 120)).trays())
        .anyMatch(t -> t.at(LoggedEvent.PLANTED_OUT).isPresent())
        .allMatch(t -> t.isGone() == t.standsIn().isEmpty());
  }

  private static SowingNow find(SeasonNow now, String id) {
    return now.sowings().stream().filter(s -> s.sowing().id().equals(id)).findFirst().orElseThrow();
  }
}
