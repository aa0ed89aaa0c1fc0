package propcap.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.evidence.TrayEvidence.Count;
import propcap.evidence.TrayEvidence.Held;
import propcap.farm.Loss;

/** How long plugs keep, and what a day beyond costs, found in logs whose truth is known. */
class HoldingTest {
  private static final int PLANTS = 70;
  private static final double LISTED_DAYS = 12;
  private static final double LISTED_LOSS = 0.03;

  /** The table goes on taking half a percent a day, hardening off takes 2 %. */
  private static final Holding.Besides BESIDES = new Holding.Besides(0.005, 0.02, 0.02);

  private static Held held(int lost, double from, double to, Loss besides) {
    return new Held(new Count(10_000, lost), from, to, besides);
  }

  private static Holding fit(List<Held> all, double trays) {
    return Holding.fit(all, LISTED_DAYS, LISTED_LOSS, trays, trays * PLANTS, BESIDES);
  }

  /** A tray is held for 1 to 24 days, and goes out to harden off for 8 more. */
  private static List<Held> log(Dice dice, int trays, double holds, double loss) {
    List<Held> log = new ArrayList<>();
    for (int i = 0; i < trays; i++) {
      double waits = 1 + Math.floor(24 * dice.uniform());
      int inside = dice.lost(PLANTS, lost(1 - Math.pow(0.995, waits), 0, waits, holds, loss));
      log.add(new Held(new Count(PLANTS, inside), 0, waits, Loss.OVERHELD));
      int left = PLANTS - inside;
      int outside = dice.lost(left, lost(0.02, waits, waits + 8, holds, loss));
      log.add(new Held(new Count(left, outside), waits, waits + 8, Loss.HARDENING));
    }
    return log;
  }

  private static double lost(double besides, double from, double to, double holds, double loss) {
    double beyond = Math.max(0, to - holds) - Math.max(0, from - holds);
    return 1 - (1 - besides) * Math.pow(1 - loss, beyond);
  }

  /**
   * By hand, of plugs that keep for 12 days and are certain to: 3 days beyond, at 4 % a day, and
   * half a percent a day of the table's for 15: 1 - 0.995^15 0.96^3 = 0.1794. Then 4 days more,
   * hardening off: 1 - 0.98 0.96^4 = 0.1677.
   */
  @Test
  void aDayBeyondCostsWhatMadeTheCounts() {
    List<Held> log = List.of(held(1794, 0, 15, Loss.OVERHELD), held(1677, 15, 19, Loss.HARDENING));
    Holding fit = Holding.fit(log, 12, 0.04, 1e6, 1, BESIDES);
    assertThat(fit.lossPerDay().learned().value()).isCloseTo(0.04, within(0.002));
    assertThat(fit.holdsDays().learned().value()).isCloseTo(12, within(0.1));
  }

  @Test
  void sixtyTraysTellHowLongPlugsKeepFromWhatADayCosts() {
    Holding fit = fit(log(new Dice(4), 60, 8, 0.05), 10);
    assertThat(fit.holdsDays().learned().holds(8)).isTrue();
    assertThat(fit.holdsDays().learned().holds(LISTED_DAYS)).isFalse();
    // The list alone is sure to a factor of 1.9 either way.
    assertThat(fit.holdsDays().learned().high() - fit.holdsDays().learned().low()).isLessThan(4);
  }

  @Test
  void traysThatWereNeverHeldLongSayNothing() {
    Holding fit = fit(List.of(held(50, 0, 3, Loss.OVERHELD)), 10);
    assertThat(fit.holdsDays().trays()).isZero();
    assertThat(fit.holdsDays().learned().value()).isEqualTo(LISTED_DAYS);
    assertThat(fit.lossPerDay().learned().value()).isEqualTo(LISTED_LOSS);
  }

  @Test
  void allLostNoneLostAndNoKeepingAtAllAreAnswered() {
    for (int lost : new int[] {0, 10_000}) {
      for (double listed : new double[] {0, 1, 60}) {
        Holding fit =
            Holding.fit(List.of(held(lost, 0, 90, Loss.POTTING)), listed, 0, 1, PLANTS, BESIDES);
        assertThat(fit.holdsDays().learned().value()).isPositive();
        assertThat(fit.lossPerDay().learned().value()).isBetween(0.0, 1.0);
      }
    }
  }

  /**
   * Days and loss drawn from what the list is taken to say, a log drawn from them: 95 % of the
   * intervals must hold what was drawn. Of 100 logs that is 95 with a standard error of 2.2; the
   * bound is at 4, which a right answer leaves less than once in 10,000. Intervals half as wide
   * must be refused.
   */
  @Test
  void intervalsHoldTheTruthAsOftenAsTheySay() {
    int days = 0;
    int losses = 0;
    int tooShort = 0;
    BetaBelief listed = BetaBelief.of(LISTED_LOSS, 10.0 * PLANTS);
    for (int i = 0; i < 100; i++) {
      Dice dice = new Dice(500 + i);
      double holds = LISTED_DAYS * Math.exp(dice.normal() / Math.sqrt(10));
      double loss = dice.beta(listed.lost(), listed.kept());
      Holding fit = fit(log(dice, 25, holds, loss), 10);
      Estimate found = fit.holdsDays().learned();
      days += found.holds(holds) ? 1 : 0;
      losses += fit.lossPerDay().learned().holds(loss) ? 1 : 0;
      Estimate narrow =
          new Estimate(
              found.value(), (found.value() + found.low()) / 2, (found.value() + found.high()) / 2);
      tooShort += narrow.holds(holds) ? 1 : 0;
    }
    assertThat(days).isGreaterThanOrEqualTo(86);
    assertThat(losses).isGreaterThanOrEqualTo(86);
    assertThat(tooShort).isLessThan(86);
  }
}
