package propcap.report;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import propcap.farm.Labour;
import propcap.farm.Loss;
import propcap.farm.Place;
import propcap.farm.PlaceKind;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.study.Capacity;
import propcap.study.RunSettings;
import propcap.study.Stats;
import propcap.study.bottleneck.Bottlenecks;
import propcap.study.bottleneck.Bottlenecks.Trial;
import propcap.study.bottleneck.Bottlenecks.Worth;
import propcap.study.compare.Comparison;
import propcap.study.compare.Comparison.Kind;
import propcap.study.compare.Comparison.Outcome;
import propcap.study.money.Investment;
import propcap.study.money.Investment.Change;
import propcap.study.money.Investment.Pays;
import propcap.study.shift.Shifts;
import propcap.study.shift.Shifts.Group;
import propcap.study.shift.Shifts.Point;
import propcap.study.size.FurnishingList;
import propcap.study.size.Goal;
import propcap.study.size.Sizing;
import propcap.study.size.Sizing.Candidate;
import propcap.study.size.Sizing.Found;
import propcap.study.statistics.Difference;
import propcap.study.statistics.Stat;

/** Answers made up by hand, in the shape of real ones, to see what is written of them. */
public final class Questions {
  public static final RunSettings SETTINGS = new RunSettings(7, 400, null, 2);
  public static final List<String> CROPS = List.of("tomato", "pepper", "kale", "zinnia");

  private static final Prices PRICES =
      new Prices(
          "EUR",
          Map.of(),
          new Prices.PlantPrices(
              new BigDecimal("0.30"), new BigDecimal("0.10"), new BigDecimal("0.45"), null),
          new BigDecimal("1.10"),
          new BigDecimal("2.40"),
          0.06,
          false,
          BigDecimal.ZERO);

  private Questions() {}

  public static Scenario scenario(String name) {
    return Scenarios.spring(name, CROPS);
  }

  public static Scenario withMoney(Scenario s) {
    return new Scenario(
        s.name(),
        s.season(),
        s.frostAtC(),
        s.rounds(),
        s.places().stream().map(Questions::priced).toList(),
        s.crops(),
        s.sowings(),
        s.weather(),
        PRICES,
        Labour.NOT_LIMITED);
  }

  private static Place priced(Place p) {
    return new Place(
        p.name(),
        p.kind(),
        p.spaces(),
        p.climate(),
        p.stretchLossPerDay(),
        new Place.Cost(new BigDecimal("5200"), 12, new BigDecimal("150"), new BigDecimal("3.60")));
  }

  public static Difference d(double mean, double halfWidth) {
    return new Difference(
        mean,
        halfWidth,
        halfWidth / 2,
        mean == 0 ? 0.4 : mean > 0 ? 0.87 : 0.12,
        halfWidth == 0 ? null : Double.valueOf(4.6),
        mean == 0 && halfWidth == 0 ? 0 : 300);
  }

  public static Stat stat(double mean) {
    return Stats.of(mean, 0.004 * mean, 0.88 * mean, 1.01 * mean, 1.09 * mean);
  }

  private static Outcome outcome(
      Kind kind, String subject, boolean moreIsBetter, double first, Difference... differences) {
    List<Stat> levels = new ArrayList<>();
    levels.add(stat(first));
    for (Difference d : differences) {
      levels.add(stat(first + d.mean()));
    }
    return new Outcome(kind, subject, moreIsBetter, levels, List.of(differences));
  }

  /** A second chamber that adds nothing, a third house that does, and one house less. */
  public static Comparison comparison() {
    List<Outcome> outcomes = new ArrayList<>();
    outcomes.add(outcome(Kind.ON_TIME, "", true, 26_400, d(-40, 210), d(1240, 90), d(-3120, 260)));
    outcomes.add(
        outcome(Kind.ON_TIME_OF_CROP, "tomato", true, 9000, d(-20, 90), d(700, 60), d(-900, 120)));
    outcomes.add(
        outcome(Kind.ON_TIME_OF_CROP, "pepper", true, 7000, d(-30, 80), d(340, 50), d(-1200, 140)));
    outcomes.add(
        outcome(Kind.ON_TIME_OF_CROP, "kale", true, 6400, d(10, 40), d(120, 30), d(-600, 90)));
    outcomes.add(
        outcome(Kind.ON_TIME_OF_CROP, "zinnia", true, 4000, d(0, 0), d(80, 20), d(-420, 60)));
    outcomes.add(outcome(Kind.LATE, "", false, 1900, d(15, 60), d(-410, 50), d(620, 80)));
    outcomes.add(
        outcome(Kind.SOWINGS_MET, "", true, 8.4, d(-0.1, 0.32), d(1.7, 0.21), d(-2.4, 0.4)));
    outcomes.add(outcome(Kind.WAITING, "sow", false, 412, d(-310, 22), d(-290, 20), d(240, 31)));
    outcomes.add(outcome(Kind.WAITING, "leave", false, 380, d(286, 25), d(-330, 24), d(530, 48)));
    outcomes.add(outcome(Kind.WAITING, "pot", false, 96, d(4, 9), d(-80, 8), d(110, 15)));
    outcomes.add(outcome(Kind.WAITING, "harden", false, 41, d(0, 0), d(12, 6), d(-14, 7)));
    outcomes.add(outcome(Kind.LOST, "no-seedling", false, 4100, d(0, 0), d(0, 0), d(0, 0)));
    outcomes.add(outcome(Kind.LOST, "stretched", false, 720, d(240, 40), d(-610, 35), d(960, 90)));
    outcomes.add(outcome(Kind.LOST, "overheld", false, 1350, d(-190, 38), d(-170, 41), d(710, 85)));
    outcomes.add(outcome(Kind.LOST, "dumped", false, 0, d(0, 0), d(0, 0), d(0, 0)));
    outcomes.add(outcome(Kind.MARGIN, "", true, 6210.4, d(-132.5, 71), d(411.5, 33), d(-1100, 80)));
    Place chamber = priced(new Place("Chamber 2", PlaceKind.CHAMBER, 60, climate(), 0, null));
    Place house = priced(new Place("House 3", PlaceKind.TABLE, 120, climate(), 0, null));
    List<Investment> investments =
        List.of(
            investment(chamber, 5200, d(-132.5, 71), -7600, 590, null, 0),
            investment(house, 2600.5, d(411.5, 33), 840.5, 276, 7.9, 0.973),
            new Investment(List.of(), d(-1100, 80), null));
    return new Comparison(
        List.of(
            withMoney(scenario("Base spring")),
            withMoney(scenario("A second chamber")),
            withMoney(scenario("House 3")),
            withMoney(scenario("Without House 2"))),
        SETTINGS,
        400,
        0.95,
        outcomes,
        List.of(30, 29, 36, 21),
        investments);
  }

  private static propcap.farm.Climate climate() {
    return new propcap.farm.Climate.Constant(20);
  }

  private static Investment investment(
      Place place,
      double buy,
      Difference gain,
      double value,
      double halfWidth,
      @Nullable Double payback,
      double pays) {
    return new Investment(
        List.of(new Change(place, 0, price(buy, 150))),
        gain,
        worth(buy, value, halfWidth, payback, pays));
  }

  public static Investment.Price price(double buy, double keep) {
    return new Investment.Price(BigDecimal.valueOf(buy), false, 12, BigDecimal.valueOf(keep));
  }

  public static Investment.Worth worth(
      double buy, double value, double halfWidth, @Nullable Double payback, double pays) {
    return new Investment.Worth(
        BigDecimal.valueOf(buy),
        BigDecimal.valueOf(770.5),
        12,
        value,
        halfWidth,
        true,
        payback,
        pays);
  }

  /** One alternative, no money, and these plants on time; nothing waits and nothing is lost. */
  public static Comparison plain(String first, String second, Difference onTime) {
    return new Comparison(
        List.of(scenario(first), scenario(second)),
        SETTINGS,
        400,
        0.95,
        List.of(
            outcome(Kind.ON_TIME, "", true, 26_400, onTime),
            outcome(Kind.WAITING, "sow", false, 0, d(0, 0)),
            outcome(Kind.LOST, Loss.FROST.word(), false, 0, d(0, 0))),
        List.of(30, 30),
        List.of());
  }

  private static Worth worth(
      Place place, int spaces, Difference more, Difference less, Pays pays, double... waits) {
    List<Difference> waiting = new ArrayList<>();
    for (double wait : waits) {
      waiting.add(d(wait, 9));
    }
    boolean money = pays != Pays.NOT_KNOWN;
    return new Worth(
        Capacity.of(place),
        new Trial(
            spaces,
            more,
            money ? d(0.31 * more.mean(), 0.35 * more.halfWidth()) : null,
            money ? value(pays) : null,
            pays,
            11),
        new Trial(
            spaces,
            less,
            money ? d(0.34 * less.mean(), 0.36 * less.halfWidth()) : null,
            null,
            Pays.NOT_TOLD,
            9),
        waiting);
  }

  private static Investment.Worth value(Pays pays) {
    double value = pays == Pays.YES ? 1900 : pays == Pays.NO ? -420 : 80;
    return worth(520, value, 130, pays == Pays.NO ? null : 4.5, 0.5);
  }

  private static Place place(Scenario scenario, String name) {
    return scenario.places().stream().filter(p -> p.name().equals(name)).findFirst().orElseThrow();
  }

  /** House 1 helps most and pays, House 2 helps and does not; less of the chamber helps. */
  public static Bottlenecks bottlenecks() {
    Scenario s = withMoney(scenario("Base spring"));
    Place house1 = place(s, "House 1");
    Place house2 = place(s, "House 2");
    Place chamber = place(s, "Chamber");
    return new Bottlenecks(
        s,
        SETTINGS,
        400,
        0.95,
        100,
        stat(26_400),
        10,
        List.of(
            worth(house1, 33, d(1240, 90), d(-1410, 96), Pays.YES, -44, -96, -31, 3),
            worth(house2, 12, d(440, 70), d(-460, 66), Pays.NO, -12, -37, -8, 2),
            worth(chamber, 6, d(-12, 60), d(210, 58), Pays.NO, -71, 66, 2, 1),
            worth(place(s, "Yard"), 16, d(0, 0), d(-8, 14), Pays.NO, 0, 0, 0, -4),
            worth(place(s, "Mats"), 4, d(-161, 30), d(22, 31), Pays.NO, -33, 41, 0, 0)),
        List.of(
            step(house1, 33, 33, d(1240, 90), d(1240, 90), Pays.YES),
            step(house1, 36, 69, d(790, 84), d(2030, 120), Pays.YES),
            step(chamber, 6, 75, d(410, 70), d(2440, 140), Pays.NOT_TOLD),
            step(chamber, 7, 82, d(95, 52), d(2535, 158), Pays.NOT_TOLD)),
        false);
  }

  private static Bottlenecks.Step step(
      Place place, int spaces, int added, Difference gain, Difference soFar, Pays pays) {
    Difference margin = d(pays == Pays.YES ? 380 : 34, 28);
    return new Bottlenecks.Step(
        Capacity.of(place), new Trial(spaces, gain, margin, value(pays), pays, 11), added, soFar);
  }

  /** No place helps, no money is asked, and the mats have but one space. */
  public static Bottlenecks noBottleneck() {
    Scenario s = scenario("Roomy");
    return new Bottlenecks(
        s,
        SETTINGS,
        400,
        0.95,
        30,
        stat(26_400),
        10,
        s.places().stream()
            .filter(Place::isOpen)
            .map(p -> worth(p, 5, d(12, 31), d(0, 0), Pays.NOT_KNOWN, 0, 0, 0, 0))
            .map(
                w ->
                    w.place().name().equals("Mats")
                        ? new Worth(w.place(), w.more(), null, w.moreWaiting())
                        : w)
            .toList(),
        List.of(),
        true);
  }

  /** A table of which one space was tried, a step that helps, and nothing known of its cost. */
  public static Bottlenecks oneSpace(boolean money) {
    Scenario s = money ? withMoney(scenario("Base spring")) : scenario("Base spring");
    Place house = place(s, "House 1");
    Trial trial = new Trial(1, d(30, 2), money ? d(9, 3) : null, null, Pays.NOT_KNOWN, 11);
    return new Bottlenecks(
        s,
        SETTINGS,
        400,
        0.95,
        30,
        stat(26_400),
        10,
        List.of(new Worth(Capacity.of(house), trial, null, List.of())),
        List.of(new Bottlenecks.Step(Capacity.of(house), trial, 1, trial.onTime())),
        false);
  }

  /** 21 sizes of House 2, of which 120 is the smallest with 90 % or more. */
  public static Sizing sizing() {
    List<Candidate> candidates = new ArrayList<>();
    for (int size = 0; size <= 400; size += 20) {
      double met = 1 / (1 + Math.exp(-(size - 70) / 22.0));
      int seasons = (int) Math.round(40 + 900 * Math.exp(-Math.abs(met - 0.9) * 16));
      Found found = size == 120 ? Found.NEAR : met >= 0.9 ? Found.HOLDS : Found.FAILS;
      boolean isAlike = size >= 300;
      candidates.add(
          new Candidate(
              List.of(size),
              seasons,
              isAlike ? 1 : met,
              isAlike ? 0.97 : met - error(met, seasons),
              isAlike ? 1 : met + error(met, seasons),
              found,
              610 + 2.4 * size));
    }
    return new Sizing(
        withMoney(scenario("Base spring")),
        SETTINGS,
        List.of("House 2"),
        new Goal(Goal.Measure.MET, 0.9),
        "*",
        0.02,
        0.034,
        0.95,
        candidates,
        candidates.get(6),
        null,
        null,
        candidates.stream().mapToLong(Candidate::seasons).sum(),
        2000);
  }

  /** Twice the standard error of a chance. */
  private static double error(double chance, int seasons) {
    return 2 * Math.sqrt(chance * (1 - chance) / seasons);
  }

  /** The same with other candidates and goal, of places without a cost. */
  public static Sizing sizing(
      List<String> places, Goal goal, List<Candidate> candidates, @Nullable Candidate answer) {
    return new Sizing(
        scenario("Base spring"),
        SETTINGS,
        places,
        goal,
        "*",
        goal.isShare() ? 0.02 : 250,
        goal.isShare() ? 0.034 : 410.2,
        0.95,
        candidates,
        answer,
        null,
        null,
        candidates.stream().mapToLong(Candidate::seasons).sum(),
        2000);
  }

  public static Sizing pairs() {
    List<Candidate> candidates = new ArrayList<>();
    for (int chamber = 40; chamber <= 80; chamber += 10) {
      for (int house = 0; house <= 200; house += 40) {
        double met = 1 / (1 + Math.exp(-(house + 2 * chamber - 210) / 30.0));
        candidates.add(
            new Candidate(
                List.of(chamber, house),
                120,
                met,
                met - error(met, 120),
                met + error(met, 120),
                met >= 0.9 ? Found.HOLDS : met > 0.85 ? Found.NEAR : Found.FAILS,
                chamber + house));
      }
    }
    Candidate cheapest =
        candidates.stream()
            .filter(c -> c.found() == Found.HOLDS)
            .min(java.util.Comparator.comparingDouble(Candidate::yearlyCost))
            .orElseThrow();
    candidates.sort(java.util.Comparator.comparingDouble(Candidate::yearlyCost));
    return sizing(
        List.of("Chamber", "House 2"), new Goal(Goal.Measure.MET, 0.9), candidates, cheapest);
  }

  public static FurnishingList order() {
    return new FurnishingList(
        List.of(
            new FurnishingList.Line("House 2", "table area", 24.1, "m2", "24.1 m2 (260 ft2)"),
            new FurnishingList.Line("House 2", "tables, 1.5 x 3 m", 6, "tables", "6"),
            new FurnishingList.Line("House 2", "trays", 1200, "trays", "1,200"),
            new FurnishingList.Line("Mats", "heat mats", 2, "mats", "2")),
        List.of(
            "A standard tray is about 28 x 54 cm outside: 120 of them cover 18.1 m2.",
            "With 25 % of the floor for aisles that is 24.1 m2."));
  }

  public static final FurnishingList NO_ORDER = new FurnishingList(List.of(), List.of());

  private static Point point(int days, double plants, double halfWidth, boolean money) {
    double onTime = 9000 + plants;
    Difference difference = days == 0 ? d(0, 0) : d(plants, halfWidth);
    Difference all = days == 0 ? d(0, 0) : d(plants - 30, 1.4 * halfWidth);
    Difference margin = days == 0 ? d(0, 0) : d(0.3 * plants, 0.4 * halfWidth);
    return new Point(
        days,
        stat(onTime),
        Stats.of(
            Math.max(0, 400 + 30 * days),
            12,
            Math.max(0, 250 + 22 * days),
            400,
            640 + 40 * Math.abs(days)),
        Stats.of(2.1 + 0.02 * days, 0.05, 1, 2, 3),
        stat(17_400 + onTime),
        money ? stat(6210 + 0.3 * plants) : null,
        difference,
        all,
        money ? margin : null);
  }

  private static Group group(
      String match, boolean money, int best, List<Integer> asGood, double... plants) {
    List<Point> points = new ArrayList<>();
    for (int p = 0; p < plants.length; p++) {
      points.add(point(7 * (p - plants.length / 2), plants[p], 60, money));
    }
    return new Group(
        match, List.of(match.replace("*", "-1"), match.replace("*", "-2")), best, asGood, points);
  }

  public static Shifts shifts(boolean money) {
    Scenario s = scenario("Base spring");
    return new Shifts(
        money ? withMoney(s) : s,
        SETTINGS,
        400,
        0.95,
        List.of(
            group("tomato*", money, -7, List.of(-14, -7), 180, 210, 0, -620, -2100),
            group("kale*", money, 7, List.of(0, 7), -410, -90, 0, 31, -55),
            group("pepper*", money, 0, List.of(0), -900, -420, 0, -510, -1700)));
  }

  /** One group of which only the plan's own day was tried. */
  public static Shifts unshifted() {
    return new Shifts(
        scenario("Base spring"),
        SETTINGS,
        400,
        0.95,
        List.of(group("kale*", false, 0, List.of(0), 0)));
  }
}
