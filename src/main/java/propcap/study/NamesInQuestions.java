package propcap.study;

import java.util.List;
import java.util.stream.IntStream;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

/** Which places and sowings a question names. */
final class NamesInQuestions {
  private NamesInQuestions() {}

  /**
   * The number of a place.
   *
   * @throws BadQuestionException where none has that name
   */
  static int place(Scenario scenario, String name) throws BadQuestionException {
    List<String> names = scenario.places().stream().map(Place::name).toList();
    if (!names.contains(name)) {
      throw new BadQuestionException(
          "no place is named '" + name + "'; there are " + String.join(", ", names));
    }
    return names.indexOf(name);
  }

  /**
   * The numbers of the sowings whose ids a pattern names, where * stands for any letters.
   *
   * @throws BadQuestionException where there is none
   */
  static List<Integer> sowings(Scenario scenario, String match) throws BadQuestionException {
    List<Integer> found = matching(scenario, match);
    if (found.isEmpty()) {
      throw new BadQuestionException(
          "no sowing's id matches '" + match + "'; a match is such as \"tomato*\" or tomato-1");
    }
    return found;
  }

  /** The numbers of the sowings whose ids a pattern names; none where there is none. */
  static List<Integer> matching(Scenario scenario, String match) {
    return IntStream.range(0, scenario.sowings().size())
        .filter(s -> Sowing.matches(match, scenario.sowings().get(s).id()))
        .boxed()
        .toList();
  }
}
