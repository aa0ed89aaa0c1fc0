package propcap.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.farm.Season;

class PeriodTest {
  private static final Season SPRING =
      new Season(LocalDate.of(2027, 1, 11), LocalDate.of(2027, 7, 4));

  @Test
  void aWeekIsFromMondayToSunday() throws BadQuestionException {
    assertThat(Period.asked(SPRING, "2027-W12", null, null))
        .isEqualTo(new Period(LocalDate.of(2027, 3, 22), LocalDate.of(2027, 3, 28)));
  }

  @Test
  void aWeekThatTheSeasonCutsIsCut() throws BadQuestionException {
    Season fromWednesday = new Season(LocalDate.of(2027, 3, 24), LocalDate.of(2027, 7, 4));
    assertThat(Period.asked(fromWednesday, "2027-W12", null, null).from())
        .isEqualTo(LocalDate.of(2027, 3, 24));
  }

  @Test
  void nothingAskedIsTheWholeSeason() throws BadQuestionException {
    assertThat(Period.asked(SPRING, null, null, null)).isEqualTo(Period.of(SPRING));
    assertThat(Period.of(SPRING).weeks()).hasSize(25);
    assertThat(Period.of(SPRING).months()).hasSize(7);
  }

  /** 2027 has 52 weeks; what is no week at all; weeks before and after the season. */
  @ParameterizedTest
  @ValueSource(strings = {"2027-W53", "2027-12", "W12", "", "spring", "2027-W01", "2027-W27"})
  void aWeekThatIsNotThereIsRefused(String week) {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> Period.asked(SPRING, week, null, null))
        .withMessageMatching(".*(such as 2027-W12|outside the season, which is from 2027-01-11).*");
  }

  @Test
  void daysThatMakeNoSenseAreRefused() {
    LocalDate may = LocalDate.of(2027, 5, 1);
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> Period.asked(SPRING, null, may, may.minusDays(1)))
        .withMessageContaining("before they begin");
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> Period.asked(SPRING, null, may.plusYears(1), null))
        .withMessageContaining("outside the season");
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> Period.asked(SPRING, null, null, may.minusYears(1)))
        .withMessageContaining("outside the season");
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> Period.asked(SPRING, "2027-W12", may, null))
        .withMessageContaining("not for both");
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> Period.asked(SPRING, null, may.minusYears(1), may.minusMonths(11)))
        .withMessageContaining("outside the season");
  }
}
