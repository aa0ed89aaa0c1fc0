package propcap.study.forecast;

import java.util.Map;
import propcap.farm.Loss;
import propcap.study.statistics.Difference;

/**
 * What a sowing lacks of the plants needed, and why: a full account in plants, means of a spring,
 * over the springs that were run with endless room too.
 *
 * <p>What room takes is measured: the plants lacking, less those lacking on the same springs with
 * endless room. What the trays cannot be expected to give, by the median spring, is too few of
 * them. What is lacking even so is shared out, spring by spring, among all that took plants in that
 * spring, each by what it took: the plants that came late and every cause of loss.
 *
 * @param springs on which both were run
 * @param lacking of the plants needed on time; what is left over in one spring makes up for none in
 *     another
 * @param room of them, those that endless room would give; below 0 where it would take some
 * @param ordinary plants that its trays give in a median spring, on time or late, with no hard
 *     frost and nothing kept too long
 * @param tooFewTrays of those that it lacks, as many as it needs more than that; likewise what is
 *     not lost to room below
 * @param late that came too late with room enough
 * @param lost to each cause with room enough; each is present
 * @param chance that its plants are on time, on these springs
 * @param chanceWithRoom the same with endless room
 */
public record Shortfall(
    int springs,
    double lacking,
    Difference room,
    double ordinary,
    double tooFewTrays,
    double late,
    Map<Loss, Double> lost,
    double chance,
    double chanceWithRoom) {
  public Shortfall {
    lost = Map.copyOf(lost);
  }
}
