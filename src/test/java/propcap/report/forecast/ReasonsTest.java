package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.Sowings;
import propcap.report.Forecasts;
import propcap.study.EvenChances;
import propcap.study.RunSettings;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Forecasting;
import propcap.study.forecast.Safety;
import propcap.study.forecast.Shortfall;

class ReasonsTest {
  private static Forecast forecast(Scenario scenario) throws InterruptedException {
    return Forecasting.forecast(scenario, new RunSettings(5, 30, null, 1), done -> {});
  }

  @Test
  void theLargestPartStandsFirstAndSaysWhatIsWaitedFor() {
    Reasons reasons = Reasons.of(Forecasts.spring());
    assertThat(reasons.rows()).hasSize(10);
    assertThat(reasons.rows().get(0).sentence())
        .startsWith("lacks 240 of 2,400: 144 ± 14 for lack of room (")
        .contains(", 48 frost", ", 24 late for the bed", ", 24 no seedling")
        .endsWith("With room for all its chance would be 97 %; on the same springs it is 34 %.");
  }

  /** Else a chance in an account looks like a slip beside that of the table above it. */
  @Test
  void anAccountOfFewerSpringsThanTheTableSaysSoBesideIt() {
    assertThat(Reasons.springs(100, 1000))
        .isEqualTo(
            "Its numbers are of the first 100 springs, which were tried with endless room too, so"
                + " that a chance may be some points off the table's, of all 1,000 springs.");
  }

  @Test
  void anAccountOfAllSpringsSaysNothingOfIt() throws Exception {
    assertThat(Reasons.of(forecast(EvenChances.from(27))).springs()).isEmpty();
    assertThat(Reasons.springs(100, 100)).isEmpty();
  }

  /** Seasons with and without room, farms of all kinds: no plant is told twice or not at all. */
  @ParameterizedTest
  @ValueSource(longs = {27, 28, 43, 82, 84, 97, 181, 203})
  void everyAccountAddsUp(long seed) throws Exception {
    Forecast forecast = forecast(EvenChances.from(seed));
    for (SowingForecast sowing : forecast.sowings()) {
      Shortfall s = Objects.requireNonNull(sowing.shortfall());
      double parts =
          s.room().mean()
              + s.tooFewTrays()
              + s.late()
              + s.lost().values().stream().mapToDouble(l -> l).sum();
      assertThat(parts).isCloseTo(s.lacking(), within(1e-6));
    }
    for (Reasons.Row row : Reasons.of(forecast).rows()) {
      assertThat(row.parts().stream().mapToLong(Reasons.Part::plants).sum())
          .isEqualTo(row.lacking());
    }
  }

  /** All springs of so few are run with room too, so both means are of the same ones. */
  @ParameterizedTest
  @ValueSource(longs = {27, 28, 43, 82, 84, 97, 181, 203})
  void whatIsLackingIsTheDifferenceBetweenNeededAndOnTime(long seed) throws Exception {
    Forecast forecast = forecast(EvenChances.from(seed));
    double lacking =
        forecast.sowings().stream()
            .map(SowingForecast::shortfall)
            .mapToDouble(s -> s == null ? Double.NaN : s.lacking())
            .sum();
    assertThat(lacking)
        .isCloseTo(
            forecast.scenario().plantsNeeded() - forecast.balance().supplied().mean(),
            within(1e-6));
  }

  /** The truth by force: with the room that is promised, the chance is the one that is told. */
  @ParameterizedTest
  @ValueSource(longs = {27, 28, 84, 97})
  void withRoomASowingReachesWhatIsTold(long seed) throws Exception {
    Scenario scenario = EvenChances.from(seed);
    Forecast now = forecast(scenario);
    Forecast roomy = forecast(scenario.withEndlessRoom());
    for (int i = 0; i < now.sowings().size(); i++) {
      Shortfall told = Objects.requireNonNull(now.sowings().get(i).shortfall());
      assertThat(told.chanceWithRoom()).isEqualTo(roomy.sowings().get(i).chanceMet());
      assertThat(told.chance()).isEqualTo(now.sowings().get(i).chanceMet());
      Shortfall none = Objects.requireNonNull(roomy.sowings().get(i).shortfall());
      assertThat(none.room().mean()).isEqualTo(0.0);
    }
    // On these farms room decides of some.
    assertThat(now.sowings()).map(SowingForecast::shortfall).anyMatch(ReasonsTest::isOfRoom);
  }

  private static boolean isOfRoom(@Nullable Shortfall shortfall) {
    return shortfall != null && shortfall.chanceWithRoom() != shortfall.chance();
  }

  @Test
  void aSafeSowingHasNoReason() throws Exception {
    Forecast spring = Forecasts.spring();
    assertThat(Reasons.of(spring).rows())
        .hasSize((int) spring.sowings().stream().filter(s -> Safety.of(s) != Safety.SAFE).count());
    Scenario asked = EvenChances.from(82);
    Scenario anyChance =
        Sowings.each(asked, s -> Sowings.with(s, new Sowing.Leeway(null, null, 0.0)));
    assertThat(Reasons.of(forecast(asked)).rows()).isNotEmpty();
    assertThat(Reasons.of(forecast(anyChance)).rows()).isEmpty();
  }

  /** Nothing but trays can mend what no spring can give, however well it goes. */
  @ParameterizedTest
  @ValueSource(longs = {27, 28, 43, 82})
  void whereTheTraysCannotGiveAllThePlantsTheyAreTooFew(long seed) throws Exception {
    Scenario roomy = EvenChances.from(seed).withEndlessRoom();
    Forecast forecast =
        forecast(Sowings.each(roomy, s -> Sowings.needing(s, 100 + 100 * s.plantsNeeded())));
    assertThat(Reasons.of(forecast).rows())
        .hasSize(forecast.sowings().size())
        .allMatch(row -> row.parts().get(0).name().equals("too few trays"))
        .allMatch(row -> row.sentence().contains(" plants in an ordinary spring)"));
    assertThat(ForecastHeadlines.of(forecast).lines())
        .anyMatch(line -> line.contains(": too few trays ("));
  }

  /** In half of the springs it gives no more, so that half of what is expected lacks at least. */
  @ParameterizedTest
  @ValueSource(longs = {27, 28, 43, 82, 84, 97, 181, 203})
  void whatAnOrdinarySpringDoesNotGiveIsPutDownToTheTrays(long seed) throws Exception {
    Scenario scenario = EvenChances.from(seed);
    for (SowingForecast sowing : forecast(scenario).sowings()) {
      Shortfall told = Objects.requireNonNull(sowing.shortfall());
      double expected = Math.max(0, sowing.sowing().plantsNeeded() - told.ordinary());
      assertThat(told.tooFewTrays()).isBetween(expected / 2 - 1e-9, expected + 1e-9);
    }
  }

  /** More of them would be kept too long as well. */
  @Test
  void plantsThatSpoilAreNotPutDownToTooFewTrays() throws Exception {
    Reasons reasons = Reasons.of(forecast(EvenChances.from(28).withEndlessRoom()));
    assertThat(reasons.rows())
        .anyMatch(row -> row.parts().get(0).name().equals("kept too long"))
        .noneMatch(row -> row.sentence().contains("too few trays"));
  }
}
