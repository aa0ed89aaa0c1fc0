package propcap.study.size;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.study.BadQuestionException;

class GoalTest {
  @ParameterizedTest
  @CsvSource({
    "met>=90%, MET, .9",
    "met >= 99.5 %, MET, .995",
    "on-time>=95%, ON_TIME_SHARE, .95",
    "on-time>=100%, ON_TIME_SHARE, 1",
    "on-time>=80000, ON_TIME, 80000",
    "' on-time >= 12.5 ', ON_TIME, 12.5"
  })
  void aGoalIsReadAsWritten(String text, Goal.Measure measure, double least)
      throws BadQuestionException {
    assertThat(Goal.parse(text)).isEqualTo(new Goal(measure, least));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "met>=80|is no goal: a % is missing, write met>=80%;",
        "met>80%|is no goal: write >=, such as met>=80%;",
        "met>80|is no goal: write >=, such as met>=80%;",
        "on-time=>80000|is no goal: write >=, such as on-time>=80000;",
        "met>=120|is no goal; a goal is",
        "on-time>120%|is no goal; a goal is",
        "most|is no goal; a goal is"
      })
  void whatWasProbablyMeantIsSaid(String text, String says) {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> Goal.parse(text))
        .withMessageContaining(says);
  }

  @Test
  void theLargestMarginIsAGoalWithoutANumber() throws BadQuestionException {
    assertThat(Goal.parse(" margin ").measure()).isEqualTo(Goal.Measure.MARGIN);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "met",
        "met>=",
        "met>=90",
        "met>=0.9",
        "met>=0%",
        "met>=100%",
        "met>=120%",
        "met>=-5%",
        "met>90%",
        "met=>90%",
        "met<=90%",
        "met>=9o%",
        "met>=90%%",
        "met>=1e1%",
        "Met>=90%",
        "met>=90% and margin",
        "on-time>=",
        "on-time>=-1",
        "on-time>=0%",
        "on-time>=0",
        "on-time>=101%",
        "on-time>=900%",
        "on-time>=1,000",
        "on time>=95%",
        "ontime>=95%",
        "late>=5%",
        "margin>=5000",
        "margins"
      })
  void whatIsNoGoalIsRefusedWithWhatWouldBeOne(String text) {
    assertThatExceptionOfType(BadQuestionException.class)
        .isThrownBy(() -> Goal.parse(text))
        .withMessageContaining("'" + text + "' is no goal")
        .withMessageContaining("met>=90%")
        .withMessageContaining("on-time>=95%")
        .withMessageContaining("on-time>=80000")
        .withMessageContaining("margin");
  }
}
