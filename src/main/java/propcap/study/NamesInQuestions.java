package propcap.study;

import java.util.List;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import propcap.farm.Place;
import propcap.farm.Scenario;
import propcap.farm.Sowing;

/** Which places and sowings a question names. */
public final class NamesInQuestions {
  /** What tells a crop's sowings apart, at the end of their ids. */
  private static final Pattern NUMBER = Pattern.compile("-\\d+$");

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
   * The numbers of the sowings that are meant: those whose ids a pattern names, where * stands for
   * any letters; for a name that is no id, all sowings of the crop of that name, or else those with
   * ids of it and a number, such as {@code tomato-1} for {@code Tomato}.
   *
   * @throws BadQuestionException where there is none
   */
  public static List<Integer> sowings(Scenario scenario, String match) throws BadQuestionException {
    List<Integer> found = matching(scenario, match);
    if (found.isEmpty()) {
      throw new BadQuestionException(
          "no sowing's id matches '%s', and no crop that is sown has that name; a match is such as %s"
              .formatted(match, example(scenario)));
    }
    return found;
  }

  /**
   * Looks whether each of these names a sowing, before anything is simulated.
   *
   * @throws BadQuestionException where one does not
   */
  public static void check(Scenario scenario, List<String> matches) throws BadQuestionException {
    for (String match : matches) {
      var unused = sowings(scenario, match);
    }
  }

  private static String example(Scenario scenario) {
    return scenario.sowings().stream()
        .findFirst()
        .map(s -> "\"" + s.crop() + "*\", " + s.crop() + " or " + s.id())
        .orElse("\"tomato*\" or tomato-1");
  }

  /** The numbers of the sowings that are meant; none where there is none. */
  public static List<Integer> matching(Scenario scenario, String match) {
    List<Predicate<Sowing>> readings =
        List.of(
            s -> Sowing.matches(match, s.id()),
            s -> s.crop().equalsIgnoreCase(match),
            s -> NUMBER.matcher(s.id()).replaceFirst("").equalsIgnoreCase(match));
    return readings.stream()
        .map(meant -> numbers(scenario, meant))
        .filter(found -> !found.isEmpty())
        .findFirst()
        .orElse(List.of());
  }

  private static List<Integer> numbers(Scenario scenario, Predicate<Sowing> meant) {
    return IntStream.range(0, scenario.sowings().size())
        .filter(s -> meant.test(scenario.sowings().get(s)))
        .boxed()
        .toList();
  }
}
