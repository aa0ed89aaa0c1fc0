package propcap.study.latest;

import java.time.LocalDate;
import java.util.List;
import propcap.study.BadQuestionException;

/**
 * What is asked of the last day to sow.
 *
 * @param goal chance, above 0 and below 1, with which a sowing must have its plants on time, where
 *     the sowing plan says no other
 * @param matches ids of the sowings asked about, where * stands for any letters
 * @param earliest no day before it is looked at; the season's first day for all that are left
 */
public record LatestQuestion(double goal, List<String> matches, LocalDate earliest) {
  public LatestQuestion {
    matches = List.copyOf(matches);
  }

  /**
   * Refuses what cannot be asked.
   *
   * @throws BadQuestionException saying what would be right
   */
  void check() throws BadQuestionException {
    BadQuestionException.unlessChance(goal);
    if (matches.isEmpty()) {
      throw new BadQuestionException("no sowings are named; say such as --match \"tomato*\"");
    }
  }
}
