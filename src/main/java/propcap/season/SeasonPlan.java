package propcap.season;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.chance.Luck;
import propcap.farm.Crop;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Scenario;
import propcap.farm.Sowing;
import propcap.farm.WeatherYear;

/**
 * A scenario made ready to run: names are positions in lists, dates are day numbers, and each
 * weather year has its clocks. Immutable, shared by all threads.
 */
public final class SeasonPlan {
  /** Later than any day that a season can have. */
  static final int NEVER = Integer.MAX_VALUE;

  /**
   * What falls due this many days (some 0.1 ms) after a round is found on it: 21 days after 08:00
   * is 08:00, whatever the rounding.
   */
  static final double ROUNDING = 1e-9;

  private final Scenario scenario;
  private final List<Crop> crops;
  private final Line[] lines;
  private final int[] tables;
  private final int[] hardeningAreas;
  private final int[] bySowDay;
  private final int[] byBedUntil;
  private final int ranks;
  private final int[] monthOf;
  private final double roundAt;

  /** By day, the first working day from it on. */
  private final int[] workingDays;

  private final WorkRates workRates;
  private final Conditions conditions;
  private final Past past;

  public SeasonPlan(Scenario scenario) {
    this(scenario, null);
  }

  /** A plan that shares with another what is the same in both: only spaces or dates may differ. */
  public SeasonPlan(Scenario scenario, @Nullable SeasonPlan like) {
    this.scenario = scenario;
    crops = scenario.sowings().stream().map(scenario::cropOf).distinct().toList();
    lines = lines();
    ranks = IntStream.range(0, lines.length).map(s -> 2 * lines[s].trays).sum();
    workingDays = workingDays();
    monthOf = IntStream.range(0, days()).map(this::monthNumber).toArray();
    roundAt = scenario.rounds().shareOfDay();
    workRates = new WorkRates(scenario);
    tables = places(PlaceKind.TABLE);
    hardeningAreas = places(PlaceKind.HARDENING);
    bySowDay = order(Comparator.comparingInt(s -> lines[s].sowDay));
    byBedUntil = order(Comparator.comparingInt(s -> lines[s].bedUntil));
    List<WeatherYear> weather = scenario.weatherFromToday();
    conditions =
        like != null && like.conditions.fit(crops, scenario.places(), weather)
            ? like.conditions
            : new Conditions(crops, scenario.places(), weather);
    past = new Past(this, scenario.soFar());
  }

  /** A line of the sowing plan, by numbers. */
  static final class Line {
    final int sowing;
    final int cropNumber;
    final Crop crop;
    final int trays;
    final int needed;
    final int[] germinateIn;
    final int sowDay;
    final int releaseDay;
    final int bedFrom;
    final int bedBy;
    final int bedUntil;
    final int resowUntil;

    /** Rank of tray 0: trays with a lower rank go first. */
    private int firstRank;

    private Line(SeasonPlan plan, int sowing) {
      Sowing s = plan.scenario.sowings().get(sowing);
      this.sowing = sowing;
      crop = plan.scenario.cropOf(s);
      cropNumber = plan.crops.indexOf(crop);
      trays = s.trays();
      needed = s.plantsNeeded();
      germinateIn = firstOf(s, crop).mapToInt(plan::placeNamed).toArray();
      sowDay = plan.day(s.sow());
      releaseDay = plan.scenario.releaseDate(crop).map(plan::day).orElse(NEVER);
      bedFrom = plan.day(s.bedFrom());
      bedBy = plan.day(s.bedBy());
      LocalDate until = s.bedUntil();
      bedUntil = until == null ? NEVER : plan.day(until);
      LocalDate resow = s.resowUntil();
      resowUntil = resow == null ? -1 : plan.day(resow);
    }

    /** Where it germinates, best first: the sowing's own choice, then its crop's order. */
    private static Stream<String> firstOf(Sowing sowing, Crop crop) {
      return Stream.concat(Stream.ofNullable(sowing.germinateIn()), crop.germinateIn().stream())
          .distinct();
    }

    /** A tray sown again comes after all the first ones of its sowing, whatever the attempt. */
    int rank(int tray, int attempt) {
      return firstRank + tray + (attempt == 0 ? 0 : trays);
    }
  }

  private Line[] lines() {
    Line[] made =
        IntStream.range(0, scenario.sowings().size())
            .mapToObj(s -> new Line(this, s))
            .toArray(Line[]::new);
    List<Line> byBed = new ArrayList<>(List.of(made));
    byBed.sort(Comparator.comparingInt(line -> line.bedBy));
    int next = 0;
    for (Line line : byBed) {
      line.firstRank = next;
      next += 2 * line.trays;
    }
    return made;
  }

  private int[] order(Comparator<Integer> by) {
    return IntStream.range(0, lines.length).boxed().sorted(by).mapToInt(s -> s).toArray();
  }

  private int[] workingDays() {
    int[] from = new int[scenario.season().days()];
    int next = NEVER;
    for (int day = from.length - 1; day >= 0; day--) {
      next = scenario.rounds().isWorkingDay(scenario.season().date(day)) ? day : next;
      from[day] = next;
    }
    return from;
  }

  int placeNamed(String name) {
    return IntStream.range(0, scenario.places().size())
        .filter(p -> scenario.places().get(p).name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  private int[] places(PlaceKind kind) {
    return IntStream.range(0, scenario.places().size())
        .filter(p -> place(p).kind() == kind && place(p).isOpen())
        .toArray();
  }

  private int day(LocalDate date) {
    return scenario.season().dayOf(date);
  }

  public Scenario scenario() {
    return scenario;
  }

  /** The first day that is simulated; those before it are past. */
  int firstDay() {
    return Math.max(0, Math.min(days(), scenario.firstDay()));
  }

  /** What was done on the days before the first. */
  Past past() {
    return past;
  }

  /** The luck of its seasons under a seed, given what is known of the one that has begun. */
  public Luck luck(long seed) {
    return new Luck(scenario, seed, scenario.soFar() == null ? null : LogEvidence.of(this));
  }

  int days() {
    return workingDays.length;
  }

  /** The months that the season touches. */
  int months() {
    return 1 + month(days() - 1);
  }

  /** A day's month, counted from that of the season's first day. */
  int month(int day) {
    return monthOf[day];
  }

  private int monthNumber(int day) {
    LocalDate date = scenario.season().date(day);
    LocalDate start = scenario.season().start();
    return 12 * (date.getYear() - start.getYear()) + date.getMonthValue() - start.getMonthValue();
  }

  /** The first working day from a day on; {@link #NEVER} where the season has none. */
  int workingDay(int from) {
    return from < workingDays.length ? workingDays[from] : NEVER;
  }

  /**
   * The day on whose round it is found that something fell due at a time: one after today, or
   * {@link #NEVER}.
   */
  int roundBy(double time, int today) {
    double found = Math.ceil(time - ROUNDING - roundAt);
    return workingDay(Math.max(today + 1, (int) Math.min(found, days())));
  }

  /** Time of a day's round. */
  double roundAt(int day) {
    return day + roundAt;
  }

  Line line(int sowing) {
    return lines[sowing];
  }

  int sowings() {
    return lines.length;
  }

  /** How many ranks there are: two a tray, for its first sowing and for a later one. */
  int ranks() {
    return ranks;
  }

  Place place(int number) {
    return scenario.places().get(number);
  }

  int places() {
    return scenario.places().size();
  }

  /** Open tables, in the scenario's order. */
  int[] tables() {
    return tables;
  }

  /** Open hardening areas, in the scenario's order. */
  int[] hardeningAreas() {
    return hardeningAreas;
  }

  /** Sowings by the day on which they are due. */
  int[] bySowDay() {
    return bySowDay;
  }

  /** Sowings by the last day before they are thrown out. */
  int[] byBedUntil() {
    return byBedUntil;
  }

  WorkRates workRates() {
    return workRates;
  }

  Clocks clocks(int year) {
    return conditions.clocks(year);
  }

  Nights nights(int year, Line line) {
    return conditions.nights(year, line.cropNumber);
  }
}
