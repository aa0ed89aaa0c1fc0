package propcap.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.evidence.TableLosses.Belief;
import propcap.evidence.TableLosses.Tray;

class TableLossesTest {
  private static final int CELLS = 72;
  private static final BetaBelief LISTED_LOSS = BetaBelief.of(0.02, 10.0 * CELLS);
  private static final BetaBelief LISTED_CHANCE = BetaBelief.of(0.05, 10);
  private static final BetaBelief LISTED_SEVERITY = BetaBelief.of(0.4, 9);
  private static final Belief LISTED = new Belief(LISTED_LOSS, LISTED_CHANCE, LISTED_SEVERITY);

  private static final Belief VAGUE =
      new Belief(BetaBelief.NONE, BetaBelief.NONE, new BetaBelief(1, 1));

  private static List<Tray> log(long seed, int trays, double loss, double chance, double severity) {
    Dice dice = new Dice(seed);
    List<Tray> log = new ArrayList<>();
    for (int i = 0; i < trays; i++) {
      log.add(dice.tray(CELLS - i % 7, loss, chance, severity));
    }
    return log;
  }

  @Test
  void chancesOfWhatATrayLostAddUpToOne() {
    double without = 0;
    double with = 0;
    for (int lost = 0; lost <= 40; lost++) {
      var one = new OutbreakLikelihood(List.of(new Tray(40, lost, false)));
      double ways = BetaBelief.lnChoose(40, lost);
      without += Math.exp(ways + one.logWithout(0, 0.03));
      with += Math.exp(ways + one.logWith(0, new double[] {0.03}, 0.4)[0]);
    }
    assertThat(without).isCloseTo(1, within(1e-9));
    assertThat(with).isCloseTo(1, within(1e-9));
  }

  /** Two plants, both lost, no background to speak of: E[v^2] = s (2s + 1) / 3, v ~ Beta. */
  @Test
  void anOutbreakAloneIsBetaBinomial() {
    var both = new OutbreakLikelihood(List.of(new Tray(2, 2, false)));
    double s = 0.4;
    assertThat(Math.exp(both.logWith(0, new double[] {1e-12}, s)[0]))
        .isCloseTo(s * (2 * s + 1) / 3, within(1e-9));
  }

  @Test
  void aLogOfManyTraysFindsWhatMadeIt() {
    TableLosses fit = TableLosses.fit(log(11, 1000, 0.03, 0.12, 0.5), VAGUE);
    assertThat(fit.loss().holds(0.03)).isTrue();
    assertThat(fit.chance().holds(0.12)).isTrue();
    assertThat(fit.severity().holds(0.5)).isTrue();
    // Narrow enough to be of use: binomial errors are 0.0007, 0.010 and, of 120 outbreaks, 0.026.
    assertThat(fit.loss().high() - fit.loss().low()).isLessThan(0.004);
    assertThat(fit.chance().high() - fit.chance().low()).isLessThan(0.06);
    assertThat(fit.severity().high() - fit.severity().low()).isLessThan(0.15);
  }

  @Test
  void outbreaksAreToldFromTheBackground() {
    Dice dice = new Dice(5);
    List<Tray> log = new ArrayList<>();
    for (int i = 0; i < 60; i++) {
      log.add(dice.tray(CELLS, 0.03, i < 6 ? 1 : 0, 0.6));
    }
    List<Double> outbreaks = TableLosses.fit(log, LISTED).outbreaks();
    for (int i = 0; i < 60; i++) {
      boolean isPlain = log.get(i).lost() <= 6;
      assertThat(outbreaks.get(i) < 0.5).as("tray " + i + ", " + log.get(i)).isEqualTo(isPlain);
    }
  }

  @Test
  void aTwinWithoutOutbreaksHasNone() {
    TableLosses twin = TableLosses.fit(log(5, 60, 0.03, 0, 0.6), LISTED);
    assertThat(twin.outbreaks()).allMatch(chance -> chance < 0.5);
    assertThat(twin.expectedOutbreaks()).isLessThan(0.5);
    assertThat(twin.chance().value()).isLessThan(0.02);
    TableLosses struck = TableLosses.fit(log(5, 60, 0.03, 0.2, 0.6), LISTED);
    assertThat(struck.chance().low()).isGreaterThan(0.05);
  }

  /** Background losses are not blown up by the outbreaks beside them. */
  @Test
  void theBackgroundIsTheSameWithAndWithoutOutbreaks() {
    double plain = TableLosses.fit(log(8, 300, 0.03, 0, 0.6), LISTED).loss().value();
    double struck = TableLosses.fit(log(8, 300, 0.03, 0.15, 0.6), LISTED).loss().value();
    // The standard error of each is 0.0012.
    assertThat(struck).isCloseTo(plain, within(0.005));
    assertThat(struck).isCloseTo(0.03, within(0.005));
  }

  @Test
  void anOutbreakWrittenDownIsOneHoweverMild() {
    List<Tray> log = new ArrayList<>(log(3, 30, 0.02, 0, 0.4));
    log.add(new Tray(CELLS, 4, true));
    TableLosses fit = TableLosses.fit(log, LISTED);
    assertThat(fit.outbreaks().get(30)).isEqualTo(1);
    log.set(30, new Tray(CELLS, 4, false));
    assertThat(TableLosses.fit(log, LISTED).chance().value()).isLessThan(fit.chance().value());
  }

  /**
   * Where all trays are plain, the background is the conjugate beta of the worked value: 88 kept
   * and 12 lost of 100 after Beta(1, 1) is .80165 to .92965 (kept). An outbreak is made as good as
   * impossible.
   */
  @Test
  void withoutOutbreaksTheBackgroundIsTheConjugateBeta() {
    Belief none = new Belief(new BetaBelief(1, 1), new BetaBelief(1e-3, 1e6), new BetaBelief(9, 9));
    TableLosses fit = TableLosses.fit(List.of(new Tray(100, 12, false)), none);
    assertThat(1 - fit.loss().high()).isCloseTo(0.80165, within(1e-3));
    assertThat(1 - fit.loss().low()).isCloseTo(0.92965, within(1e-3));
    assertThat(fit.loss().value()).isCloseTo(13.0 / 102, within(1e-4));
  }

  @ParameterizedTest
  @CsvSource({"1,0", "1,72", "1,36", "40,0", "40,72"})
  void extremeLogsAreAnswered(int trays, int lost) {
    List<Tray> log = java.util.Collections.nCopies(trays, new Tray(CELLS, lost, false));
    for (Belief belief : List.of(LISTED, VAGUE)) {
      TableLosses fit = TableLosses.fit(log, belief);
      for (Estimate estimate : List.of(fit.loss(), fit.chance(), fit.severity())) {
        assertThat(estimate.low()).isBetween(0.0, estimate.value());
        assertThat(estimate.high()).isBetween(estimate.value(), 1.0);
      }
      assertThat(fit.outbreaks()).allMatch(chance -> chance >= 0 && chance <= 1);
    }
  }

  @Test
  void threeTraysShiftTheListALittleAndThreeHundredReplaceIt() {
    double three = TableLosses.fit(log(21, 3, 0.06, 0, 0.4), LISTED).loss().value();
    double many = TableLosses.fit(log(21, 300, 0.06, 0, 0.4), LISTED).loss().value();
    assertThat(three).isBetween(0.021, 0.04);
    assertThat(many).isBetween(0.053, 0.063);
  }

  /**
   * Chances drawn from what is believed before, a log drawn from them: 95 % of the intervals must
   * hold what was drawn. Of 300 logs that is 285 with a standard error of 3.8; the bounds are at 4,
   * which a right answer leaves less than once in 10,000.
   */
  @Test
  void intervalsHoldTheTruthAsOftenAsTheySay() {
    int logs = 300;
    int[] held = new int[3];
    int tooShort = 0;
    for (int i = 0; i < logs; i++) {
      Dice dice = new Dice(1000 + i);
      double loss = dice.beta(LISTED_LOSS.lost(), LISTED_LOSS.kept());
      double chance = dice.beta(LISTED_CHANCE.lost(), LISTED_CHANCE.kept());
      double severity = dice.beta(LISTED_SEVERITY.lost(), LISTED_SEVERITY.kept());
      List<Tray> log = new ArrayList<>();
      for (int t = 0; t < 25; t++) {
        log.add(dice.tray(CELLS, loss, chance, severity));
      }
      TableLosses fit = TableLosses.fit(log, LISTED);
      held[0] += fit.loss().holds(loss) ? 1 : 0;
      held[1] += fit.chance().holds(chance) ? 1 : 0;
      held[2] += fit.severity().holds(severity) ? 1 : 0;
      // The twin that the check must refuse: intervals three quarters as wide.
      Estimate narrow =
          new Estimate(
              fit.loss().value(),
              fit.loss().value() - 0.75 * (fit.loss().value() - fit.loss().low()),
              fit.loss().value() + 0.75 * (fit.loss().high() - fit.loss().value()));
      tooShort += narrow.holds(loss) ? 1 : 0;
    }
    for (int n : held) {
      assertThat(n).isBetween(270, 300);
    }
    assertThat(tooShort).isLessThan(270);
  }
}
