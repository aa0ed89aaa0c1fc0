package propcap.study.sweep;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.StringJoiner;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.IntStream;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.season.SeasonOutcome;
import propcap.study.SeasonTotals;
import propcap.study.forecast.Safety;
import propcap.study.money.Accounts;

/**
 * What is kept of the seasons of one scenario of a sweep: four numbers a season, and two counts
 * over all of them. As text it is some 20 bytes a season.
 */
final class SweptSeasons {
  private static final int ON_TIME = 0;
  private static final int LATE = 1;
  private static final int MET = 2;
  private static final int MARGIN = 3;
  private static final int NUMBERS = 4;

  /** Of each season, in memory. */
  static final int BYTES = Double.BYTES * NUMBERS;

  private final double[][] numbers;

  /** By place, days with no space left, of all seasons together. */
  private final double[] fullDays;

  /** By sowing, seasons in which it has the plants that it needs on time. */
  private final double[] metOf;

  private SweptSeasons(double[][] numbers, double[] fullDays, double[] metOf) {
    this.numbers = numbers;
    this.fullDays = fullDays;
    this.metOf = metOf;
  }

  /** None yet, of so many. */
  static SweptSeasons none(Scenario scenario, int seasons) {
    return new SweptSeasons(
        new double[NUMBERS][seasons],
        new double[scenario.places().size()],
        new double[scenario.sowings().size()]);
  }

  /** What is read of a season: its numbers, then the places' full days, then the sowings met. */
  static Function<SeasonOutcome, double[]> reading(Scenario scenario) {
    ToDoubleFunction<SeasonOutcome> margin =
        scenario.prices() == null ? o -> 0 : Accounts.marginOf(scenario);
    int places = scenario.places().size();
    int sowings = scenario.sowings().size();
    return o -> {
      double[] read = new double[NUMBERS + places + sowings];
      read[ON_TIME] = SeasonTotals.onTime(o);
      read[LATE] = SeasonTotals.late(o);
      for (int p = 0; p < places; p++) {
        read[NUMBERS + p] = fullDays(scenario, o, p);
      }
      for (int n = 0; n < sowings; n++) {
        read[NUMBERS + places + n] = SeasonTotals.isMet(scenario, o, n) ? 1 : 0;
        read[MET] += read[NUMBERS + places + n];
      }
      read[MARGIN] = margin.applyAsDouble(o);
      return read;
    };
  }

  /** A closed place is never full. */
  private static long fullDays(Scenario scenario, SeasonOutcome season, int place) {
    int spaces = scenario.places().get(place).spaces();
    return IntStream.range(0, scenario.season().days())
        .filter(day -> spaces > 0 && season.use(place, day) >= spaces)
        .count();
  }

  /** Takes in seasons from a number on. */
  void add(int from, List<double[]> seasons) {
    for (int n = 0; n < seasons.size(); n++) {
      double[] read = seasons.get(n);
      for (int number = 0; number < NUMBERS; number++) {
        numbers[number][from + n] = read[number];
      }
      for (int p = 0; p < fullDays.length; p++) {
        fullDays[p] += read[NUMBERS + p];
      }
      for (int s = 0; s < metOf.length; s++) {
        metOf[s] += read[NUMBERS + fullDays.length + s];
      }
    }
  }

  double[] onTime() {
    return numbers[ON_TIME];
  }

  double[] late() {
    return numbers[LATE];
  }

  double[] met() {
    return numbers[MET];
  }

  /** 0 where no money is asked. */
  double[] margin() {
    return numbers[MARGIN];
  }

  /** Mean of a season. */
  double fullDays(int place) {
    return fullDays[place] / onTime().length;
  }

  /** How many of its sowings are safe. */
  int safe(List<Sowing> sowings) {
    return Safety.count(sowings, s -> metOf[s] / onTime().length);
  }

  /** As it is kept: a line for each row of numbers, in every digit. */
  String text() {
    StringBuilder text = new StringBuilder();
    Arrays.stream(numbers).forEach(row -> text.append(line(row)));
    return text.append(line(fullDays)).append(line(metOf)).toString();
  }

  private static String line(double[] row) {
    StringJoiner line = new StringJoiner(" ", "", "\n");
    Arrays.stream(row)
        .forEach(n -> line.add(n == (long) n ? Long.toString((long) n) : Double.toString(n)));
    return line.toString();
  }

  /** What a text holds; empty where it is of no such scenario and number of seasons. */
  static Optional<SweptSeasons> of(String text, Scenario scenario, int seasons) {
    try {
      List<double[]> rows =
          text.lines()
              .map(line -> line.isEmpty() ? new String[0] : line.split(" ", -1))
              .map(words -> Arrays.stream(words).mapToDouble(Double::parseDouble).toArray())
              .toList();
      boolean fits =
          rows.size() == NUMBERS + 2
              && rows.stream().limit(NUMBERS).allMatch(row -> row.length == seasons)
              && rows.get(NUMBERS).length == scenario.places().size()
              && rows.get(NUMBERS + 1).length == scenario.sowings().size();
      return fits
          ? Optional.of(
              new SweptSeasons(
                  rows.subList(0, NUMBERS).toArray(double[][]::new),
                  rows.get(NUMBERS),
                  rows.get(NUMBERS + 1)))
          : Optional.empty();
    } catch (NumberFormatException e) {
      return Optional.empty();
    }
  }
}
