package propcap.files.weather;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiPredicate;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import propcap.farm.WeatherRecord.Day;
import propcap.files.text.Faults;
import propcap.files.text.FilePosition;

/**
 * Whether the temperatures of a record can be those of a place on earth, in the unit that its
 * header says. What no place has is a fault; what hardly any farm has is a warning. Each is told
 * once for the whole record, at the first of its rows.
 *
 * <p>The bounds of what can be are those of {@link Day}. The others are planning bounds, set wide
 * of what temperate and subtropical farms see: common practice in checking station records, the
 * figures our own.
 */
final class WeatherDoubts {
  private static final double WARM_NIGHT_C = 35;
  private static final double JUMP_K = 30;
  private static final double DAILY_RANGE_K = 40;
  private static final double ANNUAL_RANGE_K = 45;

  /** Verkhoyansk, the widest on earth, has some 62 K (from memory). */
  private static final double MOST_ANNUAL_RANGE_K = 70;

  private static final double YEAR_APART_K = 6;
  private static final double WARMEST_DAY_C = 12;

  /** Rows below which a record is too short to tell its kind. */
  private static final int FEW = 30;

  private static final int MOST_OF_A_YEAR = 330;
  private static final int MONTHS = 12;

  /** In the words of a fault. */
  static final String IMPOSSIBLE = ", which no air ever had";

  /** What a row of the record stands for. */
  enum Each {
    DAY("day", "on"),
    /** The means of a month; its date is any day of it, the same in each. */
    MONTH("month", "in");

    private final String word;
    private final String at;

    Each(String word, String at) {
      this.word = word;
      this.at = at;
    }

    private LocalDate before(LocalDate date) {
      return this == DAY ? date.minusDays(1) : date.minusMonths(1);
    }
  }

  private final NavigableMap<LocalDate, Day> days = new TreeMap<>();
  private final Each each;
  private final Map<LocalDate, FilePosition> spots;
  private final boolean inF;
  private final String otherUnit;
  private final Faults faults;

  /**
   * Doubts about a record.
   *
   * @param spots where each row is written
   * @param inF whether it was written in degrees F
   * @param otherUnit how a record in another unit is read; empty where its form leaves none
   */
  WeatherDoubts(
      Collection<Day> days,
      Each each,
      Map<LocalDate, FilePosition> spots,
      boolean inF,
      String otherUnit,
      Faults faults) {
    days.forEach(day -> this.days.put(day.date(), day));
    this.each = each;
    this.spots = spots;
    this.inF = inF;
    this.otherUnit = otherUnit;
    this.faults = faults;
  }

  /** Tells what is unlikely, in the order of the checks. */
  void tell() {
    doubt(d -> d.minC() > WARM_NIGHT_C, "a night above " + inUnit(WARM_NIGHT_C), Day::minC);
    doubt(
        d -> d.maxC() - d.minC() > DAILY_RANGE_K,
        "tmax more than " + difference(DAILY_RANGE_K) + " above tmin",
        Day::maxC);
    jumps();
    annualRange();
    yearsApart();
    oneKind();
    coldAlways();
  }

  private interface Value {
    double of(Day day);
  }

  private void doubt(Predicate<Day> is, String what, Value value) {
    List<Day> such = days.values().stream().filter(is).toList();
    such.stream()
        .findFirst()
        .ifPresent(
            day ->
                warn(
                    day.date(),
                    what + ", " + written(value.of(day)) + times(such.size()),
                    otherUnit.isEmpty()
                        ? "a slip of the pen?"
                        : "a slip of the pen, or another unit? " + otherUnit));
  }

  private void jumps() {
    List<LocalDate> at = new ArrayList<>();
    BiPredicate<Double, Double> apart = (a, b) -> Math.abs(a - b) >= JUMP_K;
    for (Day day : days.values()) {
      Day before = days.get(each.before(day.date()));
      if (before != null
          && (apart.test(day.minC(), before.minC()) || apart.test(day.maxC(), before.maxC()))) {
        at.add(day.date());
      }
    }
    if (!at.isEmpty()) {
      warn(
          at.get(0),
          "a change of %s or more from one %s to the next%s"
              .formatted(difference(JUMP_K), each.word, times(at.size())),
          "a slip of the pen, or rows of two units?");
    }
  }

  private void annualRange() {
    Map<Integer, Double> months =
        days.values().stream()
            .collect(
                Collectors.groupingBy(
                    d -> d.date().getMonthValue(),
                    TreeMap::new,
                    Collectors.averagingDouble(WeatherDoubts::mean)));
    DoubleSummaryStatistics means =
        months.values().stream().mapToDouble(m -> m).summaryStatistics();
    double range = means.getMax() - means.getMin();
    if (months.size() < MONTHS || range <= ANNUAL_RANGE_K) {
      return;
    }
    String what =
        "the warmest month is " + difference(range) + " warmer than the coldest, on average";
    if (range > MOST_ANNUAL_RANGE_K) {
      faults.add(
          spot(days.firstKey()), what + ", as on no place on earth", inOtherUnit("real days"));
    } else {
      warn(days.firstKey(), what, inOtherUnit("hardly any farm has that"));
    }
  }

  private record Year(LocalDate first, double meanC) {}

  /** A year that was copied in another unit, or from another place. */
  private void yearsApart() {
    List<Year> years =
        days.values().stream()
            .collect(Collectors.groupingBy(d -> d.date().getYear()))
            .values()
            .stream()
            .filter(year -> year.size() >= MOST_OF_A_YEAR)
            .map(
                year ->
                    new Year(
                        year.get(0).date(),
                        year.stream().mapToDouble(WeatherDoubts::mean).average().orElseThrow()))
            .sorted(Comparator.comparingDouble(Year::meanC))
            .toList();
    if (years.size() < 2) {
      return;
    }
    double middle = years.get(years.size() / 2).meanC();
    Year coldest = years.get(0);
    Year warmest = years.get(years.size() - 1);
    Year farthest = warmest.meanC() - middle > middle - coldest.meanC() ? warmest : coldest;
    double apart = farthest.meanC() - middle;
    if (Math.abs(apart) > YEAR_APART_K) {
      warn(
          farthest.first(),
          "%s is %s %s on average than the middle one of the years"
              .formatted(
                  farthest.first().getYear(),
                  difference(Math.abs(apart)),
                  apart > 0 ? "warmer" : "colder"),
          "a year in another unit, or of another station?");
    }
  }

  private void oneKind() {
    if (days.size() < (each == Each.DAY ? FEW : MONTHS)) {
      return;
    }
    Day first = days.firstEntry().getValue();
    if (days.values().stream()
        .allMatch(d -> d.minC() == first.minC() && d.maxC() == first.maxC())) {
      warn(
          first.date(),
          "all " + each.word + "s have the same temperatures",
          "a record of real " + each.word + "s");
    } else if (days.values().stream().allMatch(d -> d.minC() == d.maxC())) {
      warn(
          first.date(),
          "tmin and tmax are the same on every day",
          "the day's lowest and highest; a mean in both hides the frosts");
    }
  }

  private void coldAlways() {
    boolean isWhole =
        days.values().stream().map(d -> d.date().getMonthValue()).distinct().count() == MONTHS;
    double warmest = days.values().stream().mapToDouble(Day::maxC).max().orElse(0);
    if (isWhole && warmest < WARMEST_DAY_C) {
      warn(
          days.firstKey(),
          (each == Each.DAY ? "no day of the year" : "no month")
              + " is warmer than "
              + inUnit(warmest),
          inOtherUnit("a place where plants grow"));
    }
  }

  private void warn(LocalDate date, String what, String meant) {
    faults.warn(spot(date), what, meant);
  }

  private FilePosition spot(LocalDate date) {
    return Optional.ofNullable(spots.get(date)).orElseThrow();
  }

  private static double mean(Day day) {
    return (day.minC() + day.maxC()) / 2;
  }

  private String written(double tempC) {
    String degrees = String.format(Locale.ROOT, "%.1f", inF ? tempC * 9 / 5 + 32 : tempC);
    return degrees.replaceAll("\\.0$", "") + (inF ? " F here" : " C here");
  }

  private String times(int rows) {
    return rows == 1 ? "" : ", " + each.at + " " + rows + " " + each.word + "s, this the first";
  }

  private String inOtherUnit(String otherwise) {
    return otherUnit.isEmpty() ? otherwise : "another unit? " + otherUnit;
  }

  private String inUnit(double tempC) {
    return rounded(inF ? tempC * 9 / 5 + 32 : tempC) + (inF ? " F" : " C");
  }

  private String difference(double kelvin) {
    return rounded(inF ? kelvin * 9 / 5 : kelvin) + (inF ? " degrees F" : " degrees C");
  }

  private static String rounded(double value) {
    return String.format(Locale.ROOT, "%.0f", value);
  }
}
