package propcap.study.money;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.Place;
import propcap.farm.Worded;
import propcap.study.statistics.Difference;

/**
 * What it takes and what it brings to change the places as an alternative does.
 *
 * @param changes places that the alternative has more of, then those that it has less of
 * @param gain margin of a season more than the first's, what running the places costs taken off
 * @param worth null: nothing is paid or saved, or there is a change of which nobody said what it
 *     costs
 */
public record Investment(List<Change> changes, Difference gain, @Nullable Worth worth) {
  public Investment {
    changes = List.copyOf(changes);
  }

  /** What is changed although nobody said what it costs. */
  public List<Change> unpriced() {
    return changes.stream().filter(c -> c.price() == null).toList();
  }

  /** What is to be bought: new places, more spaces, another climate at a price. */
  public List<Change> bought() {
    return changes.stream().filter(c -> c.how() == How.MORE || c.how() == How.OTHER).toList();
  }

  /** What is closed or has fewer spaces. */
  public List<Change> givenUp() {
    return changes.stream().filter(c -> c.how() == How.LESS).toList();
  }

  /** How a place is changed. */
  public enum How {
    /** It is new, or has more spaces. */
    MORE,
    /** It is closed, or has fewer. */
    LESS,
    /** It has as many spaces as before, and another climate or cost. */
    OTHER
  }

  /**
   * A place that the alternative has otherwise than the first scenario.
   *
   * @param place as the alternative has it; of one that it lacks as the first has it, closed
   * @param spacesNow in the first scenario; 0: it is not there, or closed
   * @param price null: nobody said
   */
  public record Change(Place place, int spacesNow, @Nullable Price price) {
    public How how() {
      return place.spaces() == spacesNow
          ? How.OTHER
          : place.spaces() > spacesNow ? How.MORE : How.LESS;
    }
  }

  /**
   * What a change of a place costs, beyond what is paid already.
   *
   * @param buy once, for what is added
   * @param isShare whether {@code buy} is the share of what the whole place cost, by the spaces
   *     that are added
   * @param lastsYears how long what is bought lasts
   * @param keepPerYear upkeep more than before; below 0 where it is saved
   */
  public record Price(BigDecimal buy, boolean isShare, double lastsYears, BigDecimal keepPerYear) {
    /** Whether nothing is paid and nothing saved. */
    boolean isNothing() {
      return buy.signum() == 0 && keepPerYear.signum() == 0;
    }
  }

  /** Whether something pays, as far as the springs tell. */
  public enum Pays implements Worded {
    YES,
    NO,
    /** The interval of what it is worth spans 0, or cannot be relied on. */
    NOT_TOLD,
    /** Nobody said what it costs. */
    NOT_KNOWN;

    /** By the interval of what something brings beyond all that it costs. */
    public static Pays of(Difference gain) {
      return gain.isMore() ? YES : gain.isLess() ? NO : NOT_TOLD;
    }
  }

  /**
   * What changes are worth over their lives.
   *
   * @param buy all of it, once
   * @param yearly what they cost a year: an annuity of the buying and the upkeep, less the upkeep
   *     that is saved; what they cost to run is in the margin
   * @param years the longest of their lives
   * @param netPresentValue of that time, at the mean gain, with half its interval
   * @param isTold whether that interval can be relied on
   * @param paybackYears years until the discounted gains have paid the buying; null: not before it
   *     must be bought again
   * @param chancePays chance that over their lives, of springs drawn from the simulated ones, the
   *     gains pay for buying and upkeep
   */
  public record Worth(
      BigDecimal buy,
      BigDecimal yearly,
      double years,
      double netPresentValue,
      double netPresentValueHalfWidth,
      boolean isTold,
      @Nullable Double paybackYears,
      double chancePays) {
    /** Follows the interval of the net present value. */
    public Pays pays() {
      if (isTold && netPresentValue > netPresentValueHalfWidth) {
        return Pays.YES;
      }
      return isTold && netPresentValue < -netPresentValueHalfWidth ? Pays.NO : Pays.NOT_TOLD;
    }
  }
}
