package propcap.spark;

import java.util.List;
import propcap.study.SeasonEngine;
import scala.runtime.AbstractFunction2;
import scala.runtime.BoxedUnit;

/**
 * Takes the seasons of a block here, on the machine that asked. Spark calls it once for a block.
 */
final class BlockTaken extends AbstractFunction2<Object, List<SeasonBlock.Run>, BoxedUnit> {
  private final SeasonEngine.Taking taking;

  BlockTaken(SeasonEngine.Taking taking) {
    this.taking = taking;
  }

  @Override
  public BoxedUnit apply(Object block, List<SeasonBlock.Run> runs) {
    runs.forEach(run -> taking.take(run.number(), run.outcomes()));
    return BoxedUnit.UNIT;
  }
}
