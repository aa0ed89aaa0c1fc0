package propcap.study.review;

import java.time.LocalDate;
import java.util.List;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.study.RunSettings;

/**
 * A season looked back upon: what was forecast, and what came.
 *
 * @param scenario with its season so far
 * @param seasons how many were simulated of each forecast
 * @param looks the forecasts: winter's first, then that of each first of a month
 * @param sowings those that are over, in the plan's order
 * @param notOver the others
 * @param figures what the log gives of each crop, the most wrong first
 * @param byChance how many standard errors the most wrong figure is off in 19 of 20 springs of a
 *     farm whose numbers are all right; infinite where there is none, or springs are too few to
 *     tell
 */
public record Review(
    Scenario scenario,
    RunSettings settings,
    int seasons,
    List<ForecastCheck> looks,
    List<Came> sowings,
    List<Sowing> notOver,
    List<Figure> figures,
    double byChance) {
  public Review {
    looks = List.copyOf(looks);
    sowings = List.copyOf(sowings);
    notOver = List.copyOf(notOver);
    figures = List.copyOf(figures);
  }

  /**
   * A forecast, held against what came of the sowings that were not over then.
   *
   * @param day on whose morning it was made; the season's first: winter's
   * @param sowings how many
   * @param inside of those, whose plants on time came within the range of 8 springs of 10; one that
   *     is not certain by the log counts in parts
   * @param expected how many would on the mean, were all numbers right
   * @param low of 95 springs of 100 then, between this
   * @param high and this
   */
  public record ForecastCheck(
      LocalDate day, int sowings, double inside, double expected, double low, double high) {
    /** Whether its ranges held as often as they should, by what one spring can tell. */
    public boolean isAsItShould() {
      return inside >= low && inside <= high;
    }
  }

  /**
   * A sowing that is over.
   *
   * @param came plants on time; where they were not all counted, the mean of what is likely by the
   *     log
   * @param isCounted whether it is certain
   * @param forecasts one for each look; those made when it was over say what came
   */
  public record Came(Sowing sowing, double came, boolean isCounted, List<Range> forecasts) {
    public Came {
      forecasts = List.copyOf(forecasts);
    }
  }

  /** Plants on time: the mean, and what leaves out the lowest and the highest tenth of springs. */
  public record Range(double mean, int low, int high) {
    boolean holds(int plants) {
      return plants >= low && plants <= high;
    }
  }

  /**
   * A figure of a crop.
   *
   * @param trays that have it by the log, of sowings all of whose trays are past it
   * @param assumed mean of these trays by the crop list, in this spring's weather
   * @param seen by the log
   * @param off how many standard errors apart; above 0 where more was seen
   */
  public record Figure(
      String crop, LogFigure figure, int trays, double assumed, double seen, double off) {}

  /** The figures that are off by more than chance explains, the most wrong first. */
  public List<Figure> wrong() {
    return figures.stream().filter(f -> Math.abs(f.off()) > byChance).toList();
  }
}
