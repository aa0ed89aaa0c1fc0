package propcap.farm;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Years of the record cut to a season. */
class WeatherRecordTest {
  private static final LocalDate FIRST = LocalDate.of(2021, 1, 1);
  private static final LocalDate LAST = LocalDate.of(2025, 12, 31);

  /** The minimum tells the row: 2.281 is 28 February 2021. */
  private static double minC(LocalDate date) {
    return (1_000 * date.getMonthValue() + 10 * date.getDayOfMonth() + date.getYear() % 10)
        / 1_000.0;
  }

  private static List<WeatherRecord.Day> rows(Predicate<LocalDate> kept) {
    return FIRST
        .datesUntil(LAST.plusDays(1))
        .filter(kept)
        .map(d -> new WeatherRecord.Day(d, minC(d), minC(d) + 10))
        .toList();
  }

  private static List<WeatherYear> cut(Season season, Predicate<LocalDate> kept) {
    return new WeatherRecord(rows(kept)).yearsCovering(season);
  }

  private static List<WeatherYear> cut(Season season) {
    return cut(season, d -> true);
  }

  private static Season season(String start, String end) {
    return new Season(LocalDate.parse(start), LocalDate.parse(end));
  }

  private static List<Integer> years(List<WeatherYear> cut) {
    return cut.stream().map(WeatherYear::year).toList();
  }

  private static List<Double> minima(WeatherYear year) {
    return IntStream.range(0, year.days()).mapToObj(year::minC).toList();
  }

  @Test
  void aYearIsCutToTheSeasonByMonthAndDay() {
    List<WeatherYear> cut = cut(season("2027-05-30", "2027-06-02"));
    assertThat(years(cut)).containsExactly(2021, 2022, 2023, 2024, 2025);
    assertThat(minima(cut.get(1))).containsExactly(5.302, 5.312, 6.012, 6.022);
  }

  @Test
  void theDailyMeanIsHalfWayFromMinimumToMaximum() {
    WeatherRecord record =
        new WeatherRecord(List.of(new WeatherRecord.Day(LocalDate.of(2021, 5, 1), -3, 12)));
    WeatherYear year = record.yearsCovering(season("2027-05-01", "2027-05-01")).get(0);
    assertThat(year.meanC(0)).isEqualTo(4.5);
  }

  /** 2024 has a 29 February and the season's year 2027 does not: the row is passed over. */
  @Test
  void aSeasonWithoutA29thPassesOverTheRecords() {
    WeatherYear leap = cut(season("2027-02-27", "2027-03-02")).get(3);
    assertThat(leap.year()).isEqualTo(2024);
    assertThat(minima(leap)).containsExactly(2.274, 2.284, 3.014, 3.024);
  }

  /** The season's year 2028 has a 29 February: 2023 lends it the 28th's row, 2024 its own. */
  @Test
  void a29thThatTheRecordsYearLacksTakesThe28thsRow() {
    List<WeatherYear> cut = cut(season("2028-02-27", "2028-03-02"));
    assertThat(minima(cut.get(2))).containsExactly(2.273, 2.283, 2.283, 3.013, 3.023);
    assertThat(minima(cut.get(3))).containsExactly(2.274, 2.284, 2.294, 3.014, 3.024);
  }

  @Test
  void aSeasonMayStartOnA29th() {
    List<WeatherYear> cut = cut(season("2028-02-29", "2028-03-01"));
    assertThat(minima(cut.get(0))).containsExactly(2.281, 3.011);
    assertThat(minima(cut.get(3))).containsExactly(2.294, 3.014);
  }

  @Test
  void aMissingDayDropsItsYear() {
    LocalDate gap = LocalDate.of(2022, 5, 31);
    Season season = season("2027-05-30", "2027-06-02");
    assertThat(years(cut(season, d -> !d.equals(gap)))).containsExactly(2021, 2023, 2024, 2025);
  }

  @Test
  void aMissingDayOutsideTheSeasonDropsNothing() {
    LocalDate gap = LocalDate.of(2022, 5, 29);
    Season season = season("2027-05-30", "2027-06-02");
    assertThat(cut(season, d -> !d.equals(gap))).hasSize(5);
  }

  @Test
  void aMissing29thCountsOnlyWhereTheSeasonHasOne() {
    LocalDate gap = LocalDate.of(2024, 2, 29);
    assertThat(cut(season("2027-02-27", "2027-03-02"), d -> !d.equals(gap))).hasSize(5);
    assertThat(years(cut(season("2028-02-27", "2028-03-02"), d -> !d.equals(gap))))
        .containsExactly(2021, 2022, 2023, 2025);
  }

  /** Five years of record hold four New Years; a year goes by where its season starts. */
  @Test
  void aSeasonOverNewYearTakesTwoYearsOfTheRecord() {
    List<WeatherYear> cut = cut(season("2027-12-30", "2028-01-02"));
    assertThat(years(cut)).containsExactly(2021, 2022, 2023, 2024);
    assertThat(minima(cut.get(0))).containsExactly(12.301, 12.311, 1.012, 1.022);
  }

  @Test
  void theRecordsFirstAndLastDaysAreOfUse() {
    assertThat(years(cut(season("2027-01-01", "2027-12-31"))))
        .containsExactly(2021, 2022, 2023, 2024, 2025);
  }

  @Test
  void aRecordThatStartsWithinTheSeasonLacksItsFirstYear() {
    LocalDate from = LocalDate.of(2021, 6, 1);
    assertThat(years(cut(season("2027-05-30", "2027-06-02"), d -> !d.isBefore(from))))
        .containsExactly(2022, 2023, 2024, 2025);
  }

  @Test
  void rowsMayComeInAnyOrderAndTheLastOfADateStands() {
    Season season = season("2027-05-30", "2027-06-02");
    List<WeatherRecord.Day> rows = new ArrayList<>(rows(d -> true));
    Collections.reverse(rows);
    rows.add(new WeatherRecord.Day(LocalDate.of(2022, 6, 1), -7, 0));
    WeatherRecord record = new WeatherRecord(rows);
    assertThat(record.size()).isEqualTo(5 * 365 + 1);
    assertThat(minima(record.yearsCovering(season).get(1)))
        .containsExactly(5.302, 5.312, -7.0, 6.022);
  }

  @Test
  void anEmptyRecordCoversNothing() {
    assertThat(new WeatherRecord(List.of()).yearsCovering(season("2027-05-30", "2027-06-02")))
        .isEmpty();
  }

  @Test
  void aYearKeepsItsOwnCopyOfTheRows() {
    double[] minC = {1, 2};
    WeatherYear year = new WeatherYear(2021, minC, new double[] {9, 9});
    minC[0] = 99;
    assertThat(year.minC(0)).isEqualTo(1);
  }
}
