package propcap.spark;

import java.io.Serializable;
import java.util.ArrayList;
import java.util.List;
import org.apache.spark.broadcast.Broadcast;
import propcap.season.SeasonOutcome;
import propcap.study.SeasonsAsked;
import scala.collection.Iterator;
import scala.runtime.AbstractFunction1;

/** A task: a block of season numbers, run one after the other on an executor. */
final class SeasonBlock extends AbstractFunction1<Iterator<Integer>, List<SeasonBlock.Run>>
    implements Serializable {
  private static final long serialVersionUID = 1;

  private final Broadcast<SeasonsSent> sent;
  private final List<Integer> which;

  SeasonBlock(Broadcast<SeasonsSent> sent, List<Integer> which) {
    this.sent = sent;
    this.which = which;
  }

  /** A season and what came of it in each scenario. */
  record Run(int number, List<SeasonOutcome> outcomes) implements Serializable {}

  @Override
  public List<Run> apply(Iterator<Integer> numbers) {
    SeasonsSent here = sent.value();
    SeasonsAsked.Runner runner = here.take();
    List<Run> runs = new ArrayList<>();
    // Spark ends the numbers by an exception where the job was called off.
    while (numbers.hasNext()) {
      int number = numbers.next();
      runs.add(new Run(number, List.copyOf(runner.season(which, number))));
    }
    here.giveBack(runner);
    return runs;
  }
}
