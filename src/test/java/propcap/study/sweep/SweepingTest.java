package propcap.study.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.Variants;
import propcap.farm.Variants.Variant;
import propcap.study.BadQuestionException;
import propcap.study.Capacity;
import propcap.study.Money;
import propcap.study.RunSettings;
import propcap.study.compare.Comparing;
import propcap.study.compare.Comparison;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecasting;
import propcap.study.statistics.Difference;

class SweepingTest {
  private static final RunSettings SETTINGS = new RunSettings(3, 110, null, 2);

  private final Map<String, String> kept = new LinkedHashMap<>();

  private static Variants variants(Scenario... scenarios) {
    return new Variants(
        List.of(),
        List.of(scenarios).stream().map(s -> new Variant(s.name(), s, List.of())).toList());
  }

  /** A farm, with fewer spaces in its first place, and sown a day earlier where it can be. */
  private static Variants three(Scenario farm) {
    Scenario smaller =
        Capacity.of(farm.places().get(0))
            .sized(farm, Math.max(1, farm.places().get(0).spaces() / 2))
            .named("smaller");
    Scenario fewer =
        farm.withSowings(farm.sowings().stream().map(s -> s.withTrays(1 + s.trays() / 2)).toList())
            .named("fewer");
    return variants(farm, smaller, fewer);
  }

  private static Scenario priced(long seed) {
    return new Money().in(RandomScenarios.from(seed));
  }

  private Sweeping begun(Variants variants, RunSettings settings) throws BadQuestionException {
    return new Sweeping(variants, settings, "1", key -> Optional.ofNullable(kept.get(key)));
  }

  private Sweep sweep(Variants variants) throws Exception {
    return begun(variants, SETTINGS).sweep(kept::put, share -> {});
  }

  @Test
  void itsDigitsAreThoseOfCompareAndOfEachScenarioRunAlone() throws Exception {
    for (long seed = 1; seed <= 2; seed++) {
      Variants variants = three(priced(seed));
      kept.clear();
      Sweep sweep = sweep(variants);
      Comparison compared = Comparing.compare(variants.scenarios(), SETTINGS, share -> {});
      assertThat(sweep.byMargin()).isTrue();
      for (int i = 0; i < 3; i++) {
        Sweep.Swept swept = sweep.scenarios().get(i);
        assertThat(swept.onTime())
            .isEqualTo(compared.total(Comparison.Kind.ON_TIME).levels().get(i));
        assertThat(swept.late()).isEqualTo(compared.total(Comparison.Kind.LATE).levels().get(i));
        assertThat(swept.met())
            .isEqualTo(compared.total(Comparison.Kind.SOWINGS_MET).levels().get(i));
        assertThat(swept.margin())
            .isEqualTo(compared.total(Comparison.Kind.MARGIN).levels().get(i));
        if (i > 0) {
          assertThat(swept.toFirst())
              .isEqualTo(compared.total(Comparison.Kind.ON_TIME).differences().get(i - 1));
          assertThat(swept.marginToFirst())
              .isEqualTo(compared.total(Comparison.Kind.MARGIN).differences().get(i - 1));
        }
        asForecast(swept);
      }
    }
  }

  private static void asForecast(Sweep.Swept swept) throws InterruptedException {
    Forecast run = Forecasting.forecast(swept.variant().scenario(), SETTINGS, share -> {});
    assertThat(swept.onTime()).isEqualTo(run.onTime());
    assertThat(swept.safe())
        .isEqualTo((int) run.sowings().stream().filter(s -> s.chanceMet() >= 0.9).count());
    Forecast.Occupancy fullest =
        run.places().stream()
            .max(Comparator.comparingDouble(p -> p.fullDays().mean()))
            .orElseThrow();
    assertThat(swept.fullDays()).isCloseTo(fullest.fullDays().mean(), within(1e-9));
    if (swept.fullDays() > 0) {
      assertThat(
              run.places().stream()
                  .filter(p -> p.name().equals(swept.fullest()))
                  .map(p -> p.fullDays().mean()))
          .singleElement()
          .isEqualTo(fullest.fullDays().mean());
    }
  }

  @Test
  void whatWasStoppedGoesOnAndComesToTheSame() throws Exception {
    Variants variants = three(priced(7));
    Sweep whole = sweep(variants);
    List<Map.Entry<String, String>> all = List.copyOf(kept.entrySet());
    assertThat(all).hasSize(3);
    for (int done = 0; done <= 3; done++) {
      kept.clear();
      all.stream().limit(done).forEach(e -> kept.put(e.getKey(), e.getValue()));
      Sweeping again = begun(variants, SETTINGS);
      assertThat(again.finished()).isEqualTo(done);
      List<String> fresh = new ArrayList<>();
      assertThat(again.sweep((key, text) -> fresh.add(text), share -> {})).isEqualTo(whole);
      assertThat(fresh).isEqualTo(all.stream().skip(done).map(Map.Entry::getValue).toList());
    }
  }

  @Test
  void whatIsFinishedIsKeptBeforeTheNextIsBegun() throws Exception {
    Sweeping sweeping = begun(three(priced(7)), SETTINGS);
    assertThatThrownBy(
            () ->
                sweeping.sweep(
                    (key, text) -> {
                      kept.put(key, text);
                      if (kept.size() == 2) {
                        throw new IOException("the disk is full");
                      }
                    },
                    share -> {}))
        .isInstanceOf(IOException.class);
    assertThat(kept).hasSize(2);
    Thread.currentThread().interrupt();
    assertThatThrownBy(() -> sweeping.sweep(kept::put, share -> {}))
        .isInstanceOf(InterruptedException.class);
    assertThat(kept).hasSize(2);
  }

  @Test
  void onlyWhatIsTheSameIsTakenAsDone() throws Exception {
    Scenario farm = priced(7);
    Variants variants = three(farm);
    Sweep whole = sweep(variants);
    assertThat(begun(three(farm.named("another name")), SETTINGS).finished()).isEqualTo(3);
    assertThat(begun(variants, new RunSettings(3, 110, null, 1)).finished()).isEqualTo(3);
    assertThat(begun(variants, new RunSettings(4, 110, null, 2)).finished()).isZero();
    assertThat(begun(variants, new RunSettings(3, 111, null, 2)).finished()).isZero();
    assertThat(
            new Sweeping(variants, SETTINGS, "2", key -> Optional.ofNullable(kept.get(key)))
                .finished())
        .isZero();
    Scenario changed =
        farm.withSowings(farm.sowings().stream().map(s -> s.withTrays(s.trays() + 1)).toList());
    List<Scenario> others = variants.scenarios();
    Variants one = variants(farm, changed, others.get(2));
    assertThat(begun(one, SETTINGS).finished()).isEqualTo(2);
    assertThat(sweep(one).scenarios().get(0).onTime()).isEqualTo(whole.scenarios().get(0).onTime());
    assertThat(kept).hasSize(4);
    kept.replaceAll((key, text) -> text.substring(0, text.length() / 2));
    assertThat(begun(one, SETTINGS).finished()).isZero();
  }

  @Test
  void theSameScenarioIsRunOnceAndNotToldFromItself() throws Exception {
    Scenario farm = priced(7);
    Sweep sweep = sweep(variants(farm, farm.named("twin")));
    assertThat(kept).hasSize(1);
    assertThat(sweep.scenarios().get(1).toFirst()).isEqualTo(Difference.NONE);
    assertThat(sweep.ranking()).containsExactly(0, 1);
    assertThat(sweep.notTold()).containsExactly(1);
  }

  @Test
  void withoutMoneyTheBestHasTheMostPlants() throws Exception {
    Scenario farm = RandomScenarios.from(7);
    Variants variants = three(farm);
    Sweep sweep = sweep(variants);
    assertThat(sweep.byMargin()).isFalse();
    assertThat(sweep.first().margin()).isNull();
    assertThat(
            IntStream.range(0, 3)
                .boxed()
                .max(Comparator.comparingDouble(i -> sweep.scenarios().get(i).onTime().mean())))
        .contains(sweep.ranking().get(0));
  }

  @Test
  void oneScenarioOrOneSpringIsNothingToCompare() {
    Scenario farm = priced(7);
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> begun(variants(farm), SETTINGS))
        .withMessageContaining("two scenarios or more");
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> begun(three(farm), new RunSettings(1, 1, null, 1)))
        .withMessageContaining("--seasons 2");
  }
}
