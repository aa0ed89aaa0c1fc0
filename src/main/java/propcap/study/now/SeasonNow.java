package propcap.study.now;

import java.util.List;
import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;
import propcap.farm.Sowing;
import propcap.farm.Worded;
import propcap.study.forecast.Forecast;
import propcap.study.forecast.Forecast.SowingForecast;
import propcap.study.forecast.Safety;
import propcap.study.statistics.Difference;

/**
 * A season on a day within it: how it will go on, how that differs from what was expected in
 * winter, and what can still be done.
 *
 * @param now what will come of the whole season, what is planted included
 * @param winter what was expected before anything was sown, on the same springs
 * @param goal chance, 0 to 1, with which a sowing's plants must be on time where it has no own
 * @param sowings in the plan's order
 * @param advice what makes a difference beyond its error: by sowing, the most useful first
 * @param notHelped sowings that are short and for which nothing helps of what was tried for them
 * @param tried springs on which advice was tried
 */
public record SeasonNow(
    Forecast now,
    Forecast winter,
    double goal,
    List<SowingNow> sowings,
    List<Advice> advice,
    List<Sowing> notHelped,
    int tried) {
  public SeasonNow {
    sowings = List.copyOf(sowings);
    advice = List.copyOf(advice);
    notHelped = List.copyOf(notHelped);
  }

  /** How a sowing stands. */
  public enum Standing implements Worded {
    /** Nothing of it is left in the house or to be sown, and its plants were there in time. */
    PLANTED,
    /** Its plants will be on time with the chance that is its goal. */
    SAFE,
    /** They may be. */
    AT_RISK,
    /** In no spring of those tried are they. */
    LOST
  }

  /**
   * One sowing.
   *
   * @param goal chance with which its plants must be on time
   * @param trays how many of its trays are where
   * @param now how it will go on
   * @param winter what was expected
   */
  public record SowingNow(
      Sowing sowing, double goal, Trays trays, SowingForecast now, SowingForecast winter) {
    public Standing standing() {
      if (trays.isOver() && now.chanceMet() == 1) {
        return Standing.PLANTED;
      }
      return switch (Safety.of(now.chanceMet(), goal)) {
        case SAFE -> Standing.SAFE;
        case AT_RISK -> Standing.AT_RISK;
        case LOST -> Standing.LOST;
      };
    }

    /** Whether plants are needed that may not be on time. */
    public boolean isShort() {
      return sowing.plantsNeeded() > 0 && now.chanceMet() < goal;
    }

    /** Whether a tray of it has been sown. How the others are sown can be planned anew. */
    public boolean isBegun() {
      return trays.sown() > 0;
    }
  }

  /**
   * Trays of a sowing by where they are, pots by the trays that they came from.
   *
   * @param toSow still to be sown
   * @param due of those, the ones that should have been sown before today: a forgotten row perhaps
   */
  public record Trays(
      int toSow,
      int due,
      int inHeat,
      int growingOn,
      int inPots,
      int outside,
      int planted,
      int gone) {
    boolean isOver() {
      return toSow + inHeat + growingOn + inPots + outside == 0;
    }

    public int sown() {
      return inHeat + growingOn + inPots + outside + planted + gone;
    }
  }

  /** What can be done. */
  public enum Kind implements Worded {
    /** Sow the same crop again, for the same bed. */
    SOW_AGAIN,
    /** Throw out trays of sowings that have more than they need. */
    GIVE_UP,
    /** Pot on at once what is held until it must be. */
    POT_NOW,
    /** Leave in its cells what would be potted on. */
    WAIT,
    /** Buy what will be lacking. */
    BUY_IN
  }

  /**
   * Something that can be done.
   *
   * @param sowing that it is for; null: it is for several
   * @param what else it names: the sowings whose trays are given up, the crop that is potted on
   * @param trays to sow or to give up; plants to buy
   * @param helps of the sowings that are short, those that it helps beyond its error, where it is
   *     for several
   * @param byDay last day of the season on which it still reaches the goal, by number; {@link
   *     #NO_DAY}: it does not, or no day is asked for
   * @param chance that the sowing's plants are on time then, with limits; null: it is for several
   * @param gain in that chance, or in sowings met on time of all, beyond its error
   * @param others sowings met on time of all others, what it does to them
   * @param cost of what is bought, in the scenario's money; null: not bought
   */
  public record Advice(
      Kind kind,
      @Nullable Sowing sowing,
      List<String> what,
      List<String> helps,
      int trays,
      int byDay,
      @Nullable Chance chance,
      Difference gain,
      Difference others,
      @Nullable Double cost) {
    static final int NO_DAY = -1;

    public Advice {
      what = List.copyOf(what);
      helps = List.copyOf(helps);
    }

    /** The last day on which it still reaches the goal. */
    public OptionalInt lastDay() {
      return byDay == NO_DAY ? OptionalInt.empty() : OptionalInt.of(byDay);
    }

    /** Sowings that it brings on time, a mean: what it gains less what it costs the others. */
    public double use() {
      return gain.mean() + others.mean();
    }

    boolean isFor(Sowing one) {
      return one.equals(sowing) || helps.contains(one.id());
    }
  }

  /** A chance, 0 to 1, with its 95 % limits. */
  public record Chance(double chance, double low, double high) {}

  /** Sowings that are short as planned and of which no tray is sown yet: nothing was tried. */
  public List<Sowing> notBegun() {
    return sowings.stream()
        .filter(s -> s.isShort() && !s.isBegun() && !isPast(s))
        .map(SowingNow::sowing)
        .toList();
  }

  /** Sowings that are short and whose day is past: nothing can be tried. */
  public List<Sowing> tooLate() {
    return sowings.stream().filter(s -> s.isShort() && isPast(s)).map(SowingNow::sowing).toList();
  }

  private boolean isPast(SowingNow of) {
    return now.scenario().today().isAfter(of.sowing().bedBy());
  }

  /** Sowings that stand so. */
  public long count(Standing standing) {
    return sowings.stream().filter(s -> s.standing() == standing).count();
  }

  /** Sowings whose plants will be there with the chance that is their goal, planted included. */
  public long safe() {
    return count(Standing.SAFE) + count(Standing.PLANTED);
  }

  /** The same in winter. */
  public long safeInWinter() {
    return sowings.stream().filter(s -> s.winter().chanceMet() >= s.goal()).count();
  }
}
