package propcap.study.latest;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.study.BadQuestionException;
import propcap.study.NamesInQuestions;
import propcap.study.RunSettings;
import propcap.study.latest.Latest.Course;
import propcap.study.latest.Latest.ForSowing;

/**
 * Until when may it be sown? Each sowing is moved by itself over the working days up to its bed's,
 * with nothing else in the house and with all that the plan has in it, on the same springs.
 */
public final class LatestSowing {
  /**
   * Springs that one day takes at most, where no other number is asked for: a chance of 9 in 10 is
   * then known to 3 in 100, and a day more or less changes it by more than that.
   */
  public static final int DEFAULT_SEASONS = 500;

  /** Of the work for a sowing, that of looking at it alone. */
  private static final double ALONE = 0.2;

  private LatestSowing() {}

  /**
   * Finds the last days to sow.
   *
   * @param settings the seasons are the most that one day takes
   * @param progress told the share done, 0 to 1
   * @throws BadQuestionException where a match names no sowing, none of those named needs plants or
   *     all are sown already, the goal is no chance, or there is but one season
   */
  public static Latest latest(
      Scenario scenario, LatestQuestion question, RunSettings settings, DoubleConsumer progress)
      throws BadQuestionException, InterruptedException {
    question.check();
    settings.forDifferences();
    TreeSet<Integer> asked = new TreeSet<>();
    for (String match : question.matches()) {
      asked.addAll(NamesInQuestions.sowings(scenario, match));
    }
    List<Sowing> sowings = scenario.sowings();
    SoFar soFar = scenario.soFar();
    List<Integer> begun =
        asked.stream().filter(s -> soFar != null && !soFar.of(sowings.get(s)).isEmpty()).toList();
    asked.removeAll(begun);
    if (asked.isEmpty()) {
      throw new BadQuestionException(
          "what is asked about is sown already; the question “now” tells whether to sow it again");
    }
    List<Integer> needing = asked.stream().filter(s -> sowings.get(s).plantsNeeded() > 0).toList();
    if (needing.isEmpty()) {
      throw new BadQuestionException(
          "none of the sowings asked about needs plants, so that none is ever too late; write"
              + " plants-needed in the sowing plan");
    }
    List<ForSowing> answers = new ArrayList<>();
    for (int s : needing) {
      int done = answers.size();
      answers.add(
          forSowing(
              scenario,
              s,
              question,
              settings,
              share -> progress.accept((done + share) / needing.size())));
    }
    return new Latest(
        scenario,
        question,
        settings,
        answers,
        asked.stream().filter(s -> !needing.contains(s)).map(s -> sowings.get(s).id()).toList(),
        begun.stream().map(s -> sowings.get(s).id()).toList());
  }

  private static ForSowing forSowing(
      Scenario scenario,
      int s,
      LatestQuestion question,
      RunSettings settings,
      DoubleConsumer progress)
      throws InterruptedException {
    Sowing sowing = scenario.sowings().get(s);
    double goal = sowing.leeway().goalOr(question.goal());
    List<Integer> days = days(scenario, sowing, question.earliest());
    Course alone =
        new SowDays(scenario.withSowings(List.of(sowing)), 0, days, goal, settings)
            .whole(share -> progress.accept(ALONE * share));
    Course inHouse =
        new SowDays(scenario, s, days, goal, settings)
            .fromTheLast(share -> progress.accept(ALONE + (1 - ALONE) * share));
    return new ForSowing(sowing, goal, alone, inHouse);
  }

  /** The working days from one on up to the bed's last, as numbers of the season's days. */
  public static List<Integer> days(Scenario scenario, Sowing sowing, LocalDate earliest) {
    return IntStream.range(0, scenario.season().days())
        .filter(
            d -> {
              LocalDate date = scenario.season().date(d);
              return !date.isBefore(earliest)
                  && !date.isAfter(sowing.bedBy())
                  && scenario.rounds().isWorkingDay(date);
            })
        .boxed()
        .toList();
  }
}
