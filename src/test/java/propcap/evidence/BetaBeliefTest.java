package propcap.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import propcap.evidence.TrayEvidence.Count;

class BetaBeliefTest {
  /** The worked value: 88 of 100 after Beta(1, 1). */
  @Test
  void eightyEightOfAHundredIsTheWorkedBeta() {
    BetaBelief after = new BetaBelief(1, 1).after(88, 12);
    assertThat(after.quantile(0.025)).isCloseTo(0.80165, within(5e-6));
    assertThat(after.quantile(0.5)).isCloseTo(0.87499, within(5e-6));
    assertThat(after.quantile(0.975)).isCloseTo(0.92965, within(5e-6));
    assertThat(after.mean()).isCloseTo(89.0 / 102, within(1e-12));
  }

  /** The exact binomial interval of the same count, of what was lost: 12 of 100. */
  @Test
  void whatALogSaysAloneIsTheExactBinomialInterval() {
    Learned loss = Stages.counted(0.02, 720, List.of(new Count(60, 7), new Count(40, 5)));
    Estimate alone = Objects.requireNonNull(loss.alone());
    assertThat(1 - alone.high()).isCloseTo(0.79976, within(5e-6));
    assertThat(1 - alone.low()).isCloseTo(0.93643, within(5e-6));
  }

  @Test
  void aListedLossWeighsAsManyTraysAsItIsSaidTo() {
    Learned three = Stages.counted(0.02, 10 * 72, List.of(new Count(216, 22)));
    assertThat(three.learned().value()).isCloseTo((0.02 * 720 + 22) / 936, within(1e-12));
    Learned many = Stages.counted(0.02, 10 * 72, List.of(new Count(300 * 72, 2160)));
    assertThat(many.learned().value()).isCloseTo(0.1, within(0.003));
  }

  /**
   * A loss drawn from what is listed, three trays of 72 drawn from it: 95 % of the intervals must
   * hold it. Of 1,000 logs that is 950, standard error 6.9; the bounds are at 4, which a right
   * answer leaves less than once in 10,000.
   */
  @Test
  void intervalsHoldTheTruthAsOftenAsTheySay() {
    BetaBelief listed = BetaBelief.of(0.02, 720);
    int held = 0;
    int tooShort = 0;
    for (int i = 0; i < 1000; i++) {
      Dice dice = new Dice(i);
      double loss = dice.beta(listed.lost(), listed.kept());
      List<Count> log = List.of(new Count(216, dice.lost(216, loss)));
      Estimate learned = Stages.counted(0.02, 720, log).learned();
      held += learned.holds(loss) ? 1 : 0;
      double half = 0.75 * (learned.high() - learned.low()) / 2;
      tooShort += Math.abs(loss - (learned.high() + learned.low()) / 2) <= half ? 1 : 0;
    }
    assertThat(held).isBetween(922, 978);
    assertThat(tooShort).isLessThan(922);
  }

  @Test
  void noneLostAndAllLostAreAnswered() {
    Learned none = Stages.counted(0, 720, List.of(new Count(72, 0)));
    assertThat(none.learned().low()).isGreaterThanOrEqualTo(0);
    assertThat(none.learned().high()).isLessThan(0.02);
    Learned all = Stages.counted(0.02, 720, List.of(new Count(72, 72)));
    assertThat(all.learned().value()).isCloseTo((14.4 + 72) / 792, within(1e-12));
    assertThat(all.isContradicted()).isTrue();
  }

  @Test
  void countsThatAreNoneAreRefused() {
    assertThatThrownBy(() -> new BetaBelief(0, 1)).hasMessageContaining("above 0");
    assertThatThrownBy(() -> new Count(3, 4)).hasMessageContaining("4 lost of 3");
  }
}
