package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.ObjectInputStream;
import java.io.ObjectOutputStream;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.season.SeasonOutcome;
import propcap.study.compare.Comparing;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;
import propcap.study.work.WorkCalendar;
import propcap.study.work.WorkPlanning;

/** Whatever simulates the seasons, in whatever order and on whatever machine, the digits stay. */
class SeasonEngineTest {
  private static RunSettings on(SeasonEngine engine) {
    return new RunSettings(7, 30, null, 2, engine);
  }

  @ParameterizedTest
  @ValueSource(longs = {3, 11, 20, 31, 44})
  void seasonsThatComeBackwardsFromAnotherMachineTellTheSame(long seed) throws Exception {
    Scenario scenario = RandomScenarios.from(seed);
    Forecast here = Forecasting.forecast(scenario, on(ThreadsEngine.HERE), share -> {});
    Forecast there = Forecasting.forecast(scenario, on(new Elsewhere()), share -> {});
    assertThat(there.rows()).isEqualTo(here.rows());
    assertThat(there.sowings()).isEqualTo(here.sowings());
    assertThat(there.places()).isEqualTo(here.places());

    List<Scenario> both = List.of(scenario, scenario.withEndlessRoom());
    assertThat(Comparing.compare(both, on(new Elsewhere()), share -> {}).outcomes())
        .isEqualTo(Comparing.compare(both, on(ThreadsEngine.HERE), share -> {}).outcomes());
  }

  @ParameterizedTest
  @ValueSource(longs = {3, 20})
  void diariesComeBackWhole(long seed) throws Exception {
    Scenario scenario = RandomScenarios.from(seed);
    WorkCalendar here = WorkPlanning.calendar(scenario, on(ThreadsEngine.HERE), share -> {});
    WorkCalendar there = WorkPlanning.calendar(scenario, on(new Elsewhere()), share -> {});
    assertThat(there.tasks()).isEqualTo(here.tasks());
    assertThat(there.days()).isEqualTo(here.days());
  }

  @Test
  void moreSeasonsAreRunOnTheSameEngine() {
    Elsewhere elsewhere = new Elsewhere();
    assertThat(on(elsewhere).inWholeBlocks(RandomScenarios.from(3)).engine()).isSameAs(elsewhere);
  }

  @Test
  void anEngineThatLosesASeasonIsFoundOut() {
    assertThatIllegalStateException()
        .isThrownBy(() -> run(numbers -> numbers.subList(1, numbers.size())))
        .withMessage("29 seasons came of 30");
  }

  @Test
  void anEngineThatGivesASeasonTwiceIsFoundOut() {
    assertThatIllegalStateException()
        .isThrownBy(
            () ->
                run(
                    numbers -> {
                      List<Integer> twice = new ArrayList<>(numbers.subList(1, numbers.size()));
                      twice.add(twice.get(3));
                      return twice;
                    }))
        .withMessageContaining("came twice");
  }

  private static void run(Elsewhere.Order order) throws InterruptedException {
    try (Seasons seasons =
        new Seasons(List.of(RandomScenarios.from(3)), on(new Elsewhere(order)))) {
      seasons.run(List.of(0), 0, 30, (s, outcome) -> outcome.onTime(0), done -> {});
    }
  }

  /**
   * An engine as far away as can be: what is asked and what comes of it go through bytes, and the
   * seasons are run backwards, three runners in turn.
   */
  private record Elsewhere(Order order) implements SeasonEngine {
    /** Which of the seasons asked for are run, and in which order. */
    interface Order {
      List<Integer> of(List<Integer> numbers);
    }

    Elsewhere() {
      this(
          numbers ->
              IntStream.rangeClosed(1, numbers.size())
                  .mapToObj(i -> numbers.get(numbers.size() - i))
                  .toList());
    }

    @Override
    public Opened open(SeasonsAsked asked, int threads) {
      SeasonsAsked.Ready ready = sent(asked).ready();
      List<SeasonsAsked.Runner> runners = List.of(ready.runner(), ready.runner(), ready.runner());
      return new Opened() {
        @Override
        public void run(List<Integer> which, int from, int to, Taking taking) {
          for (int n : order.of(IntStream.range(from, to).boxed().toList())) {
            List<SeasonOutcome> outcomes = runners.get(n % 3).season(which, n);
            taking.take(n, sent(outcomes));
          }
        }

        @Override
        public void close() {
          // There is nothing to give back.
        }
      };
    }

    @Override
    public void close() {
      // There is nothing to give back.
    }

    @SuppressWarnings("unchecked") // what comes back is what was sent
    private static <T> T sent(T what) {
      try {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (ObjectOutputStream out = new ObjectOutputStream(bytes)) {
          out.writeObject(what);
        }
        return (T)
            new ObjectInputStream(new ByteArrayInputStream(bytes.toByteArray())).readObject();
      } catch (IOException | ClassNotFoundException e) {
        throw new IllegalStateException(e);
      }
    }
  }
}
