package propcap.farm;

import java.io.Serializable;
import java.time.LocalDate;
import java.util.List;

/**
 * How many hours a day people have for the rounds, and what each piece of work takes.
 *
 * @param hoursPerDay of all people together, on a working day; infinite: not limited, only counted
 * @param extra further people for some weeks
 */
public record Labour(double hoursPerDay, Minutes minutes, List<Extra> extra)
    implements Serializable {
  /** Hours are counted, and there are always enough. */
  public static final Labour NOT_LIMITED =
      new Labour(Double.POSITIVE_INFINITY, Minutes.DEFAULT, List.of());

  private static final double MINUTES_PER_HOUR = 60;

  public Labour {
    Checks.require(hoursPerDay >= 0, "hours a day must be 0 or more, were " + hoursPerDay);
    extra = List.copyOf(extra);
  }

  /**
   * Minutes of one pair of hands.
   *
   * @param sow a tray: filling, sowing and setting it into the heat
   * @param move a tray, off the heat or out to harden
   * @param thin a tray sown with several seeds a cell
   * @param potOn a plant
   * @param plantOut a plant
   */
  public record Minutes(double sow, double move, double thin, double potOn, double plantOut)
      implements Serializable {
    /**
     * What is not given. Sowing is 35 + 144 s a flat (fill; seed and move to germination area) and
     * a move 40 s (to the work area; 16 s to the greenhouse), both of small growers working by hand
     * in Rutgers NJAES, "Bedding Plants, Greenhouse Costs of Production Budget", table 2. Potting
     * on is 60 min / 282, the slowest of 14 young-plant growers whose people set 282 to 1,360
     * cuttings an hour (Fisher, Adegbola and Hodges, "Maximize Your Labor Efficiency When Sticking
     * Plant Cuttings", Greenhouse Grower; the study is in HortScience 53(8), 2018). Thinning is a
     * planning default, not measured. So is planting out; it stands well above the 0.12 min that
     * Watts, "Vegetable Gardening", gives as out of most men's reach (5,000 plants in ten hours).
     */
    public static final Minutes DEFAULT = new Minutes(3, 0.67, 6, 0.21, 0.25);

    public Minutes {
      Checks.notNegative("minutes to sow", sow);
      Checks.notNegative("minutes to move", move);
      Checks.notNegative("minutes to thin", thin);
      Checks.notNegative("minutes to pot on", potOn);
      Checks.notNegative("minutes to plant out", plantOut);
    }

    /** Minutes for a tray or a plant, as the work is counted. */
    public double of(WorkKind work) {
      return switch (work) {
        case SOW -> sow;
        case MOVE -> move;
        case THIN -> thin;
        case POT_ON -> potOn;
        case PLANT_OUT -> plantOut;
      };
    }

    /** Hours for so many trays or plants, as the work is counted. */
    public double hours(WorkKind work, double units) {
      return of(work) * units / MINUTES_PER_HOUR;
    }
  }

  /**
   * Further people for a while.
   *
   * @param from first day
   * @param until last day
   * @param hoursPerDay on each working day, besides the usual ones
   */
  public record Extra(LocalDate from, LocalDate until, double hoursPerDay) implements Serializable {
    public Extra {
      Checks.require(
          !until.isBefore(from), "extra people come from " + from + " until " + until + ", before");
      Checks.notNegative("extra hours a day", hoursPerDay);
    }

    boolean isOn(LocalDate date) {
      return !date.isBefore(from) && !date.isAfter(until);
    }
  }

  public boolean isLimited() {
    return Double.isFinite(hoursPerDay);
  }

  /** Hours on a working day; infinite where they are not limited. */
  public double hoursOn(LocalDate date) {
    return hoursPerDay
        + extra.stream().filter(e -> e.isOn(date)).mapToDouble(Extra::hoursPerDay).sum();
  }

  /** The same in minutes. */
  public double minutesOn(LocalDate date) {
    return MINUTES_PER_HOUR * hoursOn(date);
  }

  /** This labour with other usual hours; what is extra stays as it is. */
  public Labour withHoursPerDay(double hours) {
    return new Labour(hours, minutes, extra);
  }
}
