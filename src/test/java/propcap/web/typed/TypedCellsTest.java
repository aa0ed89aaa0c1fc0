package propcap.web.typed;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.Season;
import propcap.web.request.RefusedException;

/** What is typed into a field is read as what is pasted is; what may be two things is asked. */
class TypedCellsTest {
  private static final Season SEASON =
      new Season(LocalDate.of(2027, 1, 11), LocalDate.of(2027, 7, 4));
  private static final TypedCells TYPED = new TypedCells(SEASON);

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "sow            | 1.5.2027     | 2027-05-01",
        "sow            | 25/5/2027    | 2027-05-25",
        "sow            | 5/25/2027    | 2027-05-25",
        "sow            | 5/5/2027     | 2027-05-05",
        "bed-by         | 3 May        | 2027-05-03",
        "season.start   | Jan 11, 2027 | 2027-01-11",
        "until          | 17. 4.       | 2027-04-17",
        "date           | 2027-4-1     | 2027-04-01",
        "sow            | soon         | soon",
        "sow            | 31.2.2027    | 31.2.2027",
        "cost.run       | 3,60/day     | 3.60/day",
        "cost.buy       | 5'200        | 5200",
        "cost.buy       | 5,200.50 EUR | 5200.50 EUR",
        "cost.buy       | 5.200,50     | 5200.50",
        "cost.buy       | 5 200,50 EUR | 5200.50 EUR",
        "cost.buy       | 52 00        | 52 00",
        "cost.buy       | 1.2.3        | 1.2.3",
        "cost.lasts     | 12 years     | 12 years",
        "money.tray     | 1,10         | 1.10",
        "money.tray     | 0,125        | 0.125",
        "money.tray     | 1.250        | 1.250",
        "climate.constant | 21,5 C     | 21.5 C",
        "hardening.kill-below | -2,5 C | -2.5 C",
        "stretch-loss   | 8,5 %/day    | 8.5 %/day",
        "seed-weight    | 2,8 g/1000   | 2.8 g/1000",
        "spaces         | 1,250        | 1250",
        "trays          | 1.250        | 1250",
        "trays          | 12           | 12",
        "trays          | many         | many",
        "rounds.at      | 8,30         | 8,30",
        "germinate-in   | 2,Chamber    | 2,Chamber",
        "name           | 3,60         | 3,60",
        "tray           | 5-16         | 5-16",
      })
  void asTheFilesWriteIt(String key, String typed, String read) throws Exception {
    assertThat(TYPED.read(key, typed)).isEqualTo(read);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "sow        | 1/5/2027 | 2027-05-01 | 2027-01-05 | 1 May 2027 or 5 January 2027",
        "bed-by     | 1-5-27   | 2027-05-01 | 2027-01-05 | 1 May 2027 or 5 January 2027",
        "cost.buy   | 5,200    | 5200       | 5.200      | 5200 or 5.200",
        "cost.keep  | 1,500/year | 1500/year | 1.500/year | 1500 or 1.500",
      })
  void whatMayBeTwoThingsIsAskedWithBoth(
      String key, String typed, String one, String other, String told) {
    RefusedException asked =
        catchThrowableOfType(RefusedException.class, () -> TYPED.read(key, typed));
    assertThat(asked).hasMessageStartingWith(typed + " may be " + told + "; write ");
    assertThat(asked.refusal().readings()).containsExactly(one, other);
  }

  /** One that guesses would write the fifth of January. */
  @Test
  void aReadingThatWasChosenIsClear() throws Exception {
    assertThat(TYPED.read("sow", "2027-05-01")).isEqualTo("2027-05-01");
    assertThat(TYPED.read("cost.buy", "5.200")).isEqualTo("5.200");
    assertThat(TYPED.read("cost.keep", "1500/year")).isEqualTo("1500/year");
  }

  @Test
  void withoutASeasonADayWithoutAYearStays() throws Exception {
    assertThat(new TypedCells(null).read("sow", "3 May")).isEqualTo("3 May");
  }
}
