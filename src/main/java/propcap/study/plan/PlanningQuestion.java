package propcap.study.plan;

import java.util.List;
import propcap.study.BadQuestionException;

/**
 * What is asked of a better plan where a sowing does not say otherwise.
 *
 * @param goal chance, above 0 and below 1, with which each sowing must have its plants on time
 * @param earlierDays by which a sowing may be sown before its date
 * @param laterDays by which it may be sown after it
 * @param mostTrays so many times its trays a sowing may have
 * @param giveUp sowings that may be given up for the sake of others, by id, where * stands for any
 *     letters
 */
public record PlanningQuestion(
    double goal, int earlierDays, int laterDays, double mostTrays, List<String> giveUp) {
  /** Planning default, not measured. */
  public static final int DEFAULT_DAYS = 14;

  /** Planning default, not measured. */
  public static final double DEFAULT_MOST_TRAYS = 2;

  public PlanningQuestion {
    giveUp = List.copyOf(giveUp);
  }

  /**
   * Refuses what cannot be asked.
   *
   * @throws BadQuestionException saying what would be right
   */
  void check() throws BadQuestionException {
    BadQuestionException.unlessChance(goal);
    if (earlierDays < 0 || laterDays < 0) {
      throw new BadQuestionException("days earlier and later are 0 or more, such as 14");
    }
    if (!(mostTrays >= 1 && mostTrays <= 10)) {
      throw new BadQuestionException("a sowing may have from 1 to 10 times its trays, such as 2");
    }
  }
}
