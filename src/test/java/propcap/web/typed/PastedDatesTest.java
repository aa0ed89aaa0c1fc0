package propcap.web.typed;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Season;
import propcap.web.typed.PastedDates.Order;

/** Dates as spreadsheets show them; the forms are common practice. */
class PastedDatesTest {
  private static final Season SPRING =
      new Season(LocalDate.of(2027, 1, 11), LocalDate.of(2027, 7, 4));
  private static final Season WINTER =
      new Season(LocalDate.of(2026, 10, 1), LocalDate.of(2027, 6, 30));

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          2027-03-01          | 2027-03-01
          2027-3-1            | 2027-03-01
          2027/03/01          | 2027-03-01
          2027-03-01 00:00:00 | 2027-03-01
          2027-03-01T00:00    | 2027-03-01
          1.3.2027            | 2027-03-01
          01.03.27            | 2027-03-01
          1. 3. 2027          | 2027-03-01
          1.3.                | 2027-03-01
          1/3/2027            | 2027-03-01
          1/3/27 12:00 AM     | 2027-03-01
          1/3                 | 2027-03-01
          1-3-2027            | 2027-03-01
          1-Mar-27            | 2027-03-01
          1-Mar               | 2027-03-01
          01 MAR 2027         | 2027-03-01
          1 March 2027        | 2027-03-01
          1st of March, 2027  | 2027-03-01
          Mar 1, 2027         | 2027-03-01
          March 1st           | 2027-03-01
          Sept 5, 2027        | 2027-09-05
          Mon 1 Mar 2027      | 2027-03-01
          Monday, March 1, 2027 | 2027-03-01
          """)
  void eachFormOfADateIsRead(String cell, String date) {
    assertThat(new PastedDates(Order.DAY_FIRST, SPRING).read(cell)).isEqualTo(date);
  }

  @ParameterizedTest
  @CsvSource({"3/1/2027, 2027-03-01", "3/1, 2027-03-01", "12/31/26, 2026-12-31"})
  void theMonthCanComeFirst(String cell, String date) {
    assertThat(new PastedDates(Order.MONTH_FIRST, SPRING).read(cell)).isEqualTo(date);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "soon",
        "Mar-27",
        "31/2/2027",
        "13/13/2027",
        "46447",
        "=A2",
        "1/3/2027 or later",
        "week 12",
        "2027-02-30",
        "32 March",
        "1 Mayo 2027",
        "0.0.0000",
        "1/3/202",
        "-1/3/2027"
      })
  void whatIsNoDateStaysAsItIs(String cell) {
    assertThat(new PastedDates(Order.DAY_FIRST, SPRING).read(cell)).isEqualTo(cell);
  }

  @Test
  void aDateWithoutAYearIsTheSeasons() {
    assertThat(new PastedDates(Order.DAY_FIRST, WINTER).read("1 Mar")).isEqualTo("2027-03-01");
    assertThat(new PastedDates(Order.DAY_FIRST, WINTER).read("5 Nov")).isEqualTo("2026-11-05");
    assertThat(new PastedDates(Order.DAY_FIRST, SPRING).read("5 Jan")).isEqualTo("2027-01-05");
    assertThat(new PastedDates(Order.DAY_FIRST, SPRING).read("1 Aug")).isEqualTo("2027-08-01");
    assertThat(new PastedDates(Order.DAY_FIRST, null).read("1 Mar")).isEqualTo("1 Mar");
    Season leap = new Season(LocalDate.of(2027, 10, 1), LocalDate.of(2028, 6, 30));
    assertThat(new PastedDates(Order.DAY_FIRST, leap).read("29 Feb")).isEqualTo("2028-02-29");
  }

  @Test
  void oneDayOverTwelveSettlesTheOrderOfTheColumn() {
    assertThat(PastedDates.orderOf(List.of("1/3/2027", "15/3/2027"))).contains(Order.DAY_FIRST);
    assertThat(PastedDates.orderOf(List.of("3/1/2027", "", "3/15/27"))).contains(Order.MONTH_FIRST);
    assertThat(PastedDates.orderOf(List.of("1/3/2027", "4/5/2027"))).isEmpty();
    assertThat(PastedDates.orderOf(List.of("12/3/2027", "3/12/2027"))).isEmpty();
    assertThat(PastedDates.orderOf(List.of("13/3/2027", "3/13/2027"))).isEmpty();
  }

  @Test
  void onlyWhatWouldBeAnotherDateIsUnclear() {
    assertThat(PastedDates.unclear(List.of("soon", "3/3/2027", "1.3.2027", "2027-03-01")))
        .isEmpty();
    assertThat(PastedDates.unclear(List.of("3/3/2027", "1/3/2027"))).contains("1/3/2027");
  }
}
