package propcap.evidence.weather;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.chance.RandomStream;
import propcap.evidence.weather.FrostDates.FrostDate;
import propcap.evidence.weather.FrostTable.Release;
import propcap.farm.Crop;
import propcap.farm.FrostRecord;
import propcap.farm.Labour;
import propcap.farm.Scenario;
import propcap.farm.Season;
import propcap.files.scenario.CropBook;
import propcap.files.scenario.ScenarioReader;

/** Frost dates worked by hand, and the same as the scenario's release dates. */
class FrostDatesTest {
  private static final Season TEN_DAYS =
      new Season(LocalDate.of(2027, 3, 1), LocalDate.of(2027, 3, 10));

  /** Last frosts on 3, 5, 5 and 8 March, and a year with none. */
  private static final FrostRecord FIVE_YEARS = FrostYears.record(TEN_DAYS, 2, 4, -1, 4, 7);

  private static FrostDates dates(FrostRecord record) {
    return FrostDates.of(record, FrostTable.CHANCES);
  }

  private static FrostDate at(FrostDates dates, double chance) {
    return dates.dates().stream().filter(d -> d.chance() == chance).findFirst().orElseThrow();
  }

  /** 4 of 5 years on 1 to 3 March, 3 on 4 and 5, 1 from 6 to 8, none from 9. Days from 0. */
  @ParameterizedTest
  @CsvSource({"0.10, 8", "0.20, 5", "0.33, 5", "0.50, 5", "0.67, 3", "0.80, 0", "0.90, 0"})
  void theCountedDayIsTheFirstWithNoMoreThanThatShareOfYears(double chance, int day) {
    assertThat(at(dates(FIVE_YEARS), chance).counted().day()).isEqualTo(day);
  }

  /** Days 2, 4, 4 and 7: mean 17/4, variance (5.0625 + 0.0625 + 0.0625 + 7.5625) / 3 = 4.25. */
  @Test
  void theNormalIsFittedOverTheYearsThatHadAFrost() {
    LastFrostFit fit = dates(FIVE_YEARS).fit().orElseThrow();
    assertThat(fit.meanDay()).isEqualTo(4.25);
    assertThat(fit.sdDays()).isCloseTo(Math.sqrt(4.25), within(1e-12));
    assertThat(fit.yearsWithFrost()).isEqualTo(4);
    // On day 0 nearly all of the four years' frosts are still to come: 4/5 of (1 - Phi(-2.304)).
    assertThat(fit.chanceFrom(0)).isCloseTo(0.8 * 0.98939, within(1e-4));
  }

  /** The chance on or after the day is within the chance asked for, the day before it is not. */
  @Test
  void theFittedDayIsTheFirstWithNoMoreThanThatFittedChance() {
    FrostDates dates = dates(FrostYears.record(FrostYears.SPRING, FrostYears.evenly(30, 115, 12)));
    LastFrostFit fit = dates.fit().orElseThrow();
    for (FrostDate date : dates.dates()) {
      int day = FrostYears.dayOf(Objects.requireNonNull(date.fittedOrNull()));
      assertThat(fit.chanceFrom(day)).isLessThanOrEqualTo(date.chance());
      assertThat(fit.chanceFrom(day - 1)).isGreaterThan(date.chance());
    }
  }

  /** Four of five years have a frost: its chance is never 80 % and more after the first day. */
  @Test
  void aChanceThatFewerYearsHaveAtAllHasNoFittedDay() {
    assertThat(at(dates(FIVE_YEARS), 0.67).fittedOrNull()).isNotNull();
    assertThat(at(dates(FIVE_YEARS), 0.80).fittedOrNull()).isNull();
  }

  /**
   * Ten years: the binomial of ten halves is at most 1 with chance 11/1024 = 1.1 %, at most 2 with
   * 5.5 %; so the median lies between the second and the ninth with 97.9 %.
   */
  @Test
  void theCountedLimitsAreYearsByRank() {
    FrostRecord record =
        FrostYears.record(FrostYears.SPRING, 80, 85, 90, 95, 100, 105, 110, 115, 120, 125);
    DayEstimate half = FrostDates.counted(record, 0.5);
    assertThat(half).isEqualTo(new DayEstimate(101, 86, 121));
  }

  /** All ten lie below the true 90 % quantile with chance 0.9^10 = 35 %: nothing bounds it. */
  @Test
  void tooFewYearsLeaveALimitOpen() {
    FrostRecord record =
        FrostYears.record(FrostYears.SPRING, 80, 85, 90, 95, 100, 105, 110, 115, 120, 125);
    assertThat(FrostDates.counted(record, 0.1).high()).isNull();
    assertThat(FrostDates.counted(record, 0.9).low()).isNull();
  }

  @Test
  void aRecordWithoutFrostIsSafeAllSeasonAndHasNoFit() {
    FrostDates dates = dates(FrostYears.record(TEN_DAYS, -1, -1, -1));
    assertThat(dates.fit()).isEmpty();
    assertThat(dates.dates()).allSatisfy(d -> assertThat(d.counted().day()).isZero());
    assertThat(dates.countedChanceFrom(0)).isZero();
  }

  @Test
  void frostToTheEndInEveryYearHasNoDay() {
    FrostDates dates = dates(FrostYears.record(TEN_DAYS, 9, 9, 9));
    assertThat(dates.yearsToTheEnd()).isEqualTo(3);
    assertThat(dates.fit()).isEmpty();
    assertThat(dates.dates()).allSatisfy(d -> assertThat(d.counted().day()).isNull());
  }

  @Test
  void oneYearHasDaysButNeitherFitNorLimits() {
    FrostDates dates = dates(FrostYears.record(TEN_DAYS, 4));
    assertThat(at(dates, 0.5).counted()).isEqualTo(new DayEstimate(5, null, null));
    assertThat(dates.fit()).isEmpty();
  }

  /** Springs of two kinds, early and late, are no normal; even quantiles of one are. */
  @Test
  void aRecordThatIsNoNormalIsDoubtful() {
    int[] twoKinds = new int[30];
    for (int i = 0; i < 30; i++) {
      twoKinds[i] = (i < 15 ? 70 : 130) + i % 3;
    }
    assertThat(LastFrostFit.of(FrostYears.record(FrostYears.SPRING, twoKinds)).orElseThrow())
        .matches(LastFrostFit::isDoubtful);
    assertThat(
            LastFrostFit.of(FrostYears.record(FrostYears.SPRING, FrostYears.evenly(30, 115, 12)))
                .orElseThrow())
        .matches(fit -> !fit.isDoubtful());
  }

  /** The demonstration's own scenario: its crops, its record, its season. */
  @Test
  void theReleaseDatesAreTheScenarios() throws Exception {
    Scenario scenario = ScenarioReader.read(Path.of("scenarios/spring.yaml"));
    assertReleasesAre(scenario, scenario.crops());
  }

  /** Made-up records: 5 to 30 years, some without frost, some with frost to the end. */
  @ParameterizedTest(name = "seed {0}")
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
  void theReleaseDatesAreTheScenariosWhateverTheRecord(long seed) throws Exception {
    Scenario like = ScenarioReader.read(Path.of("scenarios/spring.yaml"));
    RandomStream stream = new RandomStream(seed, "test", "release");
    int[] last = new int[5 + (int) (26 * stream.next())];
    for (int i = 0; i < last.length; i++) {
      last[i] = (int) (like.season().days() * 1.2 * stream.next()) - 5;
    }
    Map<String, Crop> crops = CropBook.read(Path.of("demo-data/crops.yaml"), d -> {}).crops();
    Scenario scenario =
        new Scenario(
            "made",
            like.season(),
            0,
            like.rounds(),
            like.places(),
            like.crops(),
            like.sowings(),
            FrostYears.years(like.season(), last),
            null,
            Labour.NOT_LIMITED);
    assertReleasesAre(scenario, crops);
  }

  private static void assertReleasesAre(Scenario scenario, Map<String, Crop> crops) {
    FrostTable table =
        FrostTable.of(
            scenario.season(),
            scenario.weather(),
            List.of(0.0),
            scenario.frostAtC(),
            new TreeMap<>(crops));
    assertThat(table.releases()).hasSameSizeAs(crops.keySet());
    for (Release release : table.releases()) {
      Integer day = release.date().day();
      Crop crop = Optional.ofNullable(crops.get(release.crop())).orElseThrow();
      assertThat(scenario.releaseDate(crop).map(scenario.season()::dayOf).orElse(null))
          .as(release.crop())
          .isEqualTo(day);
    }
  }
}
