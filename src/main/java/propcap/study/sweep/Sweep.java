package propcap.study.sweep;

import java.util.List;
import org.jspecify.annotations.Nullable;
import propcap.farm.Variants.Variant;
import propcap.study.RunSettings;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/**
 * Many scenarios on the same seasons.
 *
 * @param columns what differs between them, by the table of changes; none without one
 * @param scenarios in the order asked for; the others are held against the first
 * @param confidence at which all differences of one kind hold together (Bonferroni)
 * @param byMargin whether the best has the highest margin; else it has the most plants on time
 * @param ranking numbers of the scenarios, the best mean first
 * @param notTold those that the seasons do not tell from the best, in that order: with the
 *     confidence, the one that is best in truth is among these and the best
 * @param changesPlaces whether any has other places than the first, whose cost is in no margin
 */
public record Sweep(
    List<String> columns,
    List<Swept> scenarios,
    RunSettings settings,
    double confidence,
    boolean byMargin,
    List<Integer> ranking,
    List<Integer> notTold,
    boolean changesPlaces) {

  /**
   * What came of one scenario, means of a season.
   *
   * @param onTime plants
   * @param late plants
   * @param met sowings that have the plants needed on time
   * @param safe sowings that are safe (see {@link propcap.study.forecast.Safety})
   * @param fullest the place with the most full days; empty where none is ever full
   * @param fullDays days with no space left there
   * @param margin before what added room costs to buy; null where no money is asked
   * @param toFirst plants on time, less those of the first; null: it is the first
   * @param marginToFirst null too where either has no margin
   */
  public record Swept(
      Variant variant,
      Stat onTime,
      Stat late,
      Stat met,
      int safe,
      String fullest,
      double fullDays,
      @Nullable Stat margin,
      @Nullable Difference toFirst,
      @Nullable Difference marginToFirst) {

    /** Against the first, by what the best was chosen by. */
    public @Nullable Difference deciding(boolean byMargin) {
      return byMargin ? marginToFirst : toFirst;
    }
  }

  public Swept first() {
    return scenarios.get(0);
  }

  public Swept best() {
    return scenarios.get(ranking.get(0));
  }
}
