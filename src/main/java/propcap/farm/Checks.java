package propcap.farm;

import java.math.BigDecimal;

/** What every record of the farm asks of its numbers; the messages say what was given. */
final class Checks {
  private Checks() {}

  static double probability(String what, double given) {
    require(
        given >= 0 && given <= 1, what + " must be between 0 and 100 %, was " + 100 * given + " %");
    return given;
  }

  static double notNegative(String what, double given) {
    require(given >= 0 && Double.isFinite(given), what + " must be 0 or more, was " + given);
    return given;
  }

  static BigDecimal notNegative(String what, BigDecimal given) {
    require(given.signum() >= 0, what + " must be 0 or more, was " + given);
    return given;
  }

  static double positive(String what, double given) {
    require(given > 0 && Double.isFinite(given), what + " must be more than 0, was " + given);
    return given;
  }

  static double finite(String what, double given) {
    require(Double.isFinite(given), what + " must be a finite number, was " + given);
    return given;
  }

  static int atLeast(int least, String what, int given) {
    require(given >= least, what + " must be " + least + " or more, was " + given);
    return given;
  }

  static void require(boolean holds, String otherwise) {
    if (!holds) {
      throw new IllegalArgumentException(otherwise);
    }
  }
}
