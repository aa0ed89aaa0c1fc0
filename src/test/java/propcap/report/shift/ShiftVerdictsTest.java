package propcap.report.shift;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import propcap.report.Questions;
import propcap.study.shift.Shifts;

/** What is said of shifts in a sentence, and what must not be said. */
class ShiftVerdictsTest {
  @Test
  void aShiftIsAdvisedOnlyWhereItIsToldFromNone() {
    List<ShiftWords> words = ShiftWords.of(Questions.shifts(false));
    assertThat(words.get(0).verdict())
        .isEqualTo(
            "Sow tomato* 7 days earlier: +210 ± 60 of these plants on time; +180 ± 84 counting all"
                + " crops. -14 days is not told apart from it.");
    assertThat(words.get(1).verdict())
        .startsWith(
            "Leave kale* as it is: 7 days later came out best, but the springs do not tell it from"
                + " no shift (+31 ± 60 of these plants on time");
    assertThat(words.get(2).verdict())
        .isEqualTo("Leave pepper* as it is: no shift tried does better.");
    assertThat(ShiftWords.of(Questions.unshifted()).get(0).verdict())
        .isEqualTo("kale* was tried only on its day.");
  }

  /** The best of those tried may not be the best of all. */
  @Test
  void anEndOfWhatWasTriedIsNamed() {
    Shifts.Group tomato = Questions.shifts(false).groups().get(0);
    List<Shifts.Point> ofSeven =
        tomato.points().stream().filter(p -> p.days() >= tomato.best()).toList();
    Shifts.Group cut =
        new Shifts.Group(
            tomato.match(), tomato.sowings(), tomato.best(), List.of(tomato.best()), ofSeven);
    assertThat(new ShiftWords(cut, Optional.empty()).verdict())
        .startsWith("Sow tomato* 7 days earlier: ")
        .endsWith(" No earlier day was tried: it may be better still.");
    assertThat(cut.clearlyBest()).map(Shifts.Point::days).hasValue(-7);
    assertThat(Questions.shifts(false).groups().get(1).clearlyBest()).isEmpty();
  }
}
