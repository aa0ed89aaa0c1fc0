package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import propcap.chance.Luck;
import propcap.chance.SeasonLuck;
import propcap.farm.Loss;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.WeatherYear;
import propcap.files.scenario.ScenarioReader;
import propcap.past.LogWalk;
import propcap.past.WrittenTray;

/** The edges of a season so far: nothing known yet, no weather known, and any farm at all. */
class FirstDayTest {
  private static List<List<List<Integer>>> told(Scenario scenario, int seasons) {
    SeasonPlan plan = new SeasonPlan(scenario);
    Luck.Reader reader = plan.luck(31).reader();
    return IntStream.range(0, seasons)
        .mapToObj(n -> Runs.all(scenario, House.season(plan, reader.season(n))))
        .toList();
  }

  private static Scenario withLog(
      Scenario scenario, int today, List<WrittenTray> log, boolean withWeather) {
    return scenario.withSoFar(
        new SoFar(
            scenario.season().date(today),
            LogWalk.walk(scenario, scenario.season().date(today), log).trays(),
            withWeather
                ? scenario.weather().get(0).first(today, scenario.season().start())
                : List.of()));
  }

  @Test
  void onTheFirstDayWithAnEmptyLogTheAnswerIsThatOfTheWinterToTheLastDigit() throws Exception {
    Scenario example =
        ScenarioReader.read(Path.of("src/test/resources/propcap/example/scenario.yaml"));
    assertThat(told(withLog(example, 0, List.of(), true), 2)).isEqualTo(told(example, 2));
    for (long farm = 0; farm < 12; farm++) {
      Scenario scenario = RandomScenarios.from(farm);
      assertThat(told(withLog(scenario, 0, List.of(), false), 4))
          .as("farm " + farm)
          .isEqualTo(told(scenario, 4));
    }
    // The twin: a day later the sowings of the first day are a day late, where there are any.
    assertThat(told(withLog(example, 40, List.of(), true), 1)).isNotEqualTo(told(example, 1));
  }

  @Test
  void whereNoWeatherSoFarIsGivenEachSpringIsTakenToHaveBeenSoFarAsItIs() {
    Scenario farm = FarmsWithAPast.threeCrops();
    int today = 20;
    FromADayOn sameDays = new FromADayOn(farm, today, PretendedLog.Counting.ALL);
    List<WrittenTray> log = sameDays.log(sameDays.plan().luck(5).reader().season(0));
    Scenario same = sameDays.plan().scenario();
    // Where all springs had the same days so far, it is the same whether they are told or not.
    assertThat(told(withLog(same, today, log, false), 5))
        .isEqualTo(told(withLog(same, today, log, true), 5));
    // Where they had not, each spring lives through its own: its luck is that of it alone.
    Scenario notTold = withLog(farm, today, log, false);
    SeasonPlan plan = new SeasonPlan(notTold);
    Luck.Reader reader = plan.luck(31).reader();
    for (int n = 0; n < farm.weather().size(); n++) {
      SeasonLuck luck = reader.season(n);
      WeatherYear own = farm.weather().get(luck.weatherYear());
      Scenario told =
          farm.withSoFar(
              new SoFar(
                  farm.season().date(today),
                  notTold.soFar() == null ? List.of() : notTold.soFar().trays(),
                  own.first(today, farm.season().start())));
      SeasonPlan toldPlan = new SeasonPlan(told);
      SeasonLuck toldLuck = toldPlan.luck(31).reader().season(n);
      assertThat(Runs.all(told, House.season(toldPlan, toldLuck)))
          .isEqualTo(Runs.all(notTold, House.season(plan, luck)));
    }
    assertThat(told(withLog(farm, today, log, false), 5))
        .isNotEqualTo(told(withLog(farm, today, log, true), 5));
  }

  /** Each season's house checks that every cell is counted once, and refuses to end if not. */
  @Test
  void anyFarmGoesOnFromAnyDayOfItsOwnLogAndEveryCellSownIsCountedOnce() {
    LongStream.range(100, 115)
        .forEach(
            number -> {
              Scenario farm = RandomScenarios.from(number);
              SeasonPlan plan = new SeasonPlan(farm);
              SeasonLuck luck = plan.luck(7).reader().season((int) number);
              int today = (int) (number * 7 % farm.season().days());
              PretendedLog.Counting[] counting = PretendedLog.Counting.values();
              List<WrittenTray> log =
                  PretendedLog.of(plan, luck, today, counting[(int) (number % 3)]);
              boolean withWeather = number % 2 == 0;
              Scenario now = withLog(farm, today, log, withWeather);
              SeasonPlan fromToday = new SeasonPlan(now);
              SeasonOutcome season = House.season(fromToday, fromToday.luck(8).reader().season(0));
              for (int s = 0; s < farm.sowings().size(); s++) {
                int sum = season.onTime(s) + season.late(s);
                for (Loss loss : Loss.values()) {
                  assertThat(season.lost(s, loss)).isNotNegative();
                  sum += season.lost(s, loss);
                }
                assertThat(sum).as("farm " + number).isEqualTo(season.cellsSown(s));
              }
            });
  }
}
