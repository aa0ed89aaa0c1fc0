package propcap.study;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.DoubleConsumer;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;
import propcap.study.SeasonNow.Advice;
import propcap.study.SeasonNow.Chance;
import propcap.study.SeasonNow.Kind;
import propcap.study.SeasonNow.SowingNow;

/**
 * Tries what a grower can still do for the sowings that are short, all on the same springs, and
 * keeps what makes a difference beyond its error.
 */
final class Advising {
  /** Springs on which things are tried; what is kept is told from others. */
  private static final int TRIED_ON = 100;

  private static final int CONFIRMED_ON = 200;
  private static final int DAYS_TOGETHER = 4;
  private static final double CONFIDENCE = 0.95;

  /** A sowing again has at most so many times the trays that its plan had. */
  private static final int MOST_TIMES = 4;

  /** Trays to sow again are tried with so much more than the springs seem to ask for. */
  private static final List<Double> MORE = List.of(1.0, 1.25, 1.6);

  /** Fewer plants on time than this share of the cells of a tray: it is too late. */
  private static final double TOO_FEW = 0.02;

  private final Scenario scenario;
  private final SoFar soFar;
  private final RunSettings settings;
  private final List<SowingNow> sowings;
  private final int tries;
  private final int springs;

  /** On-time plants by spring and sowing as things are, of the springs tried on and the others. */
  private final int[][] before;

  Advising(Scenario scenario, SoFar soFar, RunSettings settings, List<SowingNow> sowings)
      throws InterruptedException {
    this.scenario = scenario;
    this.soFar = soFar;
    this.settings = settings;
    this.sowings = sowings;
    int block = scenario.weather().size();
    tries = Math.min(settings.seasons(), RunSettings.whole(TRIED_ON, block));
    springs = Math.min(settings.seasons(), RunSettings.whole(CONFIRMED_ON, block));
    before = run(List.of(scenario), 0, tries + springs).get(0);
  }

  /** Springs from which advice is told. */
  int springs() {
    return springs;
  }

  List<Advice> advise(DoubleConsumer progress) throws InterruptedException {
    List<SowingNow> isShort = sowings.stream().filter(SowingNow::isShort).toList();
    List<Advice> advice = new ArrayList<>();
    for (int i = 0; i < isShort.size(); i++) {
      SowingNow sowing = isShort.get(i);
      if (canBeSownAgain(sowing)) {
        Advice again = sowAgain(sowing);
        if (again != null) {
          advice.add(again);
        }
      }
      Advice bought = buyIn(sowing);
      if (bought != null) {
        advice.add(bought);
      }
      progress.accept((i + 1.0) / (isShort.size() + 1));
    }
    Advice givenUp = giveUp(isShort);
    if (givenUp != null) {
      advice.add(givenUp);
    }
    advice.addAll(potting());
    advice.sort(Comparator.comparing(Advice::kind).thenComparing(a -> -a.gain().mean()));
    return advice;
  }

  List<Sowing> notHelped(List<Advice> advice) {
    boolean forAll = advice.stream().anyMatch(a -> a.sowing() == null);
    return sowings.stream()
        .filter(SowingNow::isShort)
        .map(SowingNow::sowing)
        .filter(
            s ->
                !forAll
                    && advice.stream()
                        .noneMatch(a -> a.sowing() != null && s.id().equals(a.sowing().id())))
        .toList();
  }

  // Running.

  private List<int[][]> run(List<Scenario> scenarios, int from, int to)
      throws InterruptedException {
    List<Integer> which = IntStream.range(0, scenarios.size()).boxed().toList();
    try (Seasons seasons = new Seasons(scenarios, settings)) {
      return seasons
          .run(which, from, to, (s, outcome) -> AskingNow.onTime(outcome), done -> {})
          .stream()
          .map(of -> of.toArray(int[][]::new))
          .toList();
    }
  }

  /** The springs from which advice is told: others than those on which it was chosen. */
  private int[][] confirming(Scenario changed) throws InterruptedException {
    return run(List.of(changed), tries, tries + springs).get(0);
  }

  private int[][] beforeConfirming() {
    return Arrays.copyOfRange(before, tries, tries + springs);
  }

  private Strata strataConfirming() {
    return Strata.of(scenario, settings.seed(), tries, tries + springs);
  }

  /** Sowings met on time in a spring, but for one; -1: all. */
  private double met(int[] onTime, int except) {
    return IntStream.range(0, sowings.size())
        .filter(s -> s != except && onTime[s] >= sowings.get(s).sowing().plantsNeeded())
        .count();
  }

  private Difference difference(double[] first, double[] second) {
    return Paired.difference(first, second, strataConfirming(), true, CONFIDENCE, 1);
  }

  private Difference others(int[][] changed, int except) {
    return difference(
        Arrays.stream(beforeConfirming()).mapToDouble(o -> met(o, except)).toArray(),
        Arrays.stream(changed).mapToDouble(o -> met(o, except)).toArray());
  }

  // Sowing again.

  /** Its plan has begun; what is yet to be sown is for a better plan. */
  private boolean canBeSownAgain(SowingNow sowing) {
    return sowing.trays().sown() > 0
        && scenario.today().isBefore(sowing.sowing().bedBy())
        && scenario.season().contains(scenario.today());
  }

  private int index(SowingNow sowing) {
    return sowings.indexOf(sowing);
  }

  private Scenario sowingAgain(SowingNow of, int trays, LocalDate day) {
    Sowing first = of.sowing();
    List<Sowing> more = new ArrayList<>(scenario.sowings());
    more.add(
        new Sowing(
            first.id() + " again",
            first.crop(),
            first.lot(),
            day,
            trays,
            0,
            first.bedFrom(),
            first.bedBy(),
            first.bedUntil(),
            null,
            first.germinateIn(),
            Sowing.Leeway.NOT_SAID));
    return scenario.withSowings(more);
  }

  private double[] met(int[][] onTime, SowingNow of, boolean again) {
    int s = index(of);
    return Arrays.stream(onTime)
        .mapToDouble(
            o -> o[s] + (again ? o[sowings.size()] : 0) >= of.sowing().plantsNeeded() ? 1 : 0)
        .toArray();
  }

  private @Nullable Advice sowAgain(SowingNow of) throws InterruptedException {
    int s = index(of);
    LocalDate today = scenario.today();
    int cells = scenario.cropOf(of.sowing()).cells();
    int probe = Math.max(1, of.sowing().trays() / 2);
    double perTray =
        Arrays.stream(run(List.of(sowingAgain(of, probe, today)), 0, tries).get(0))
                .mapToInt(o -> o[sowings.size()])
                .average()
                .orElse(0)
            / probe;
    if (perTray < TOO_FEW * cells) {
      return null;
    }
    double[] lacking =
        Arrays.stream(before)
            .limit(tries)
            .mapToDouble(o -> Math.max(0, of.sowing().plantsNeeded() - o[s]))
            .sorted()
            .toArray();
    double most = lacking[(int) Math.min(tries - 1, Math.ceil(of.goal() * tries))];
    int least = (int) Math.ceil(Math.max(most, 1) / perTray);
    int limit = MOST_TIMES * of.sowing().trays();
    List<Integer> numbers =
        MORE.stream().map(m -> (int) Math.min(limit, Math.ceil(m * least))).distinct().toList();
    List<int[][]> tried =
        run(numbers.stream().map(n -> sowingAgain(of, n, today)).toList(), 0, tries);
    int chosen = numbers.size() - 1;
    for (int i = numbers.size() - 1; i >= 0; i--) {
      if (mean(met(tried.get(i), of, true)) >= of.goal()) {
        chosen = i;
      }
    }
    boolean reaches = mean(met(tried.get(chosen), of, true)) >= of.goal();
    int trays = numbers.get(chosen);
    int byDay = reaches ? lastDay(of, trays) : -1;
    int[][] after = confirming(sowingAgain(of, trays, today));
    double[] met = met(after, of, true);
    Difference gain = difference(met(beforeConfirming(), of, false), met);
    if (!gain.isMore()) {
      return null;
    }
    return new Advice(
        Kind.SOW_AGAIN,
        of.sowing(),
        List.of(),
        trays,
        byDay,
        chance(met),
        gain,
        others(after, s),
        null);
  }

  private static double mean(double[] numbers) {
    return Arrays.stream(numbers).average().orElse(0);
  }

  private Chance chance(double[] met) {
    MeanLimits limits = MeanLimits.ofChance(met, strataConfirming(), CONFIDENCE);
    return new Chance(mean(met), limits.low(), limits.high());
  }

  /**
   * The last working day on which so many trays still reach the goal, as far as days were tried: a
   * few between today and the bed's, then each between the last that does and the next that doesn't.
   */
  private int lastDay(SowingNow of, int trays) throws InterruptedException {
    int end =
        scenario.season().dayOf(of.sowing().bedBy())
            - (int) (scenario.cropOf(of.sowing()).quickestDays() / 2);
    List<Integer> days =
        IntStream.range(scenario.firstDay() + 1, Math.max(scenario.firstDay() + 2, end))
            .filter(d -> scenario.rounds().isWorkingDay(scenario.season().date(d)))
            .boxed()
            .toList();
    int[] between = {-1, days.size()};
    while (between[1] - between[0] > 1) {
      narrow(of, trays, days, between);
    }
    return between[0] < 0 ? scenario.firstDay() : days.get(between[0]);
  }

  /** Tries a few of the days between one that does and one that doesn't, on the same luck. */
  private void narrow(SowingNow of, int trays, List<Integer> days, int[] between)
      throws InterruptedException {
    int step = Math.max(1, (between[1] - between[0]) / (DAYS_TOGETHER + 1));
    List<Integer> which =
        IntStream.rangeClosed(1, DAYS_TOGETHER)
            .map(i -> between[0] + i * step)
            .filter(d -> d < between[1])
            .boxed()
            .toList();
    List<int[][]> tried =
        run(
            which.stream()
                .map(d -> sowingAgain(of, trays, scenario.season().date(days.get(d))))
                .toList(),
            0,
            tries);
    for (int i = 0; i < which.size(); i++) {
      if (mean(met(tried.get(i), of, true)) < of.goal()) {
        between[1] = which.get(i);
        return;
      }
      between[0] = which.get(i);
    }
  }

  // Buying in.

  private @Nullable Advice buyIn(SowingNow of) {
    Prices prices = scenario.prices();
    if (prices == null) {
      return null;
    }
    int s = index(of);
    double[] lacking =
        Arrays.stream(beforeConfirming())
            .mapToDouble(o -> Math.max(0, of.sowing().plantsNeeded() - o[s]))
            .sorted()
            .toArray();
    int plants = (int) lacking[(int) Math.min(springs - 1, Math.ceil(of.goal() * springs))];
    double price = prices.of(of.sowing().crop()).lacking().doubleValue();
    if (plants == 0 || price == 0) {
      return null;
    }
    double[] met = met(beforeConfirming(), of, false);
    double[] then =
        Arrays.stream(beforeConfirming())
            .mapToDouble(o -> o[s] + plants >= of.sowing().plantsNeeded() ? 1 : 0)
            .toArray();
    return new Advice(
        Kind.BUY_IN,
        of.sowing(),
        List.of(),
        plants,
        -1,
        chance(then),
        difference(met, then),
        Difference.NONE,
        plants * price);
  }

  // Giving up trays.

  /** Trays that could be spared, the last ones first, by sowing. */
  private Map<Integer, List<TrayPast>> spare() {
    Map<Integer, List<TrayPast>> spare = new LinkedHashMap<>();
    for (int s = 0; s < sowings.size(); s++) {
      SowingNow of = sowings.get(s);
      int at = s;
      List<TrayPast> inside =
          soFar.of(of.sowing()).stream()
              .filter(t -> !t.isGone())
              .sorted(Comparator.comparingInt(TrayPast::number).reversed())
              .toList();
      double[] plants =
          Arrays.stream(before).limit(tries).mapToDouble(o -> o[at]).sorted().toArray();
      double low = plants[(int) ((1 - of.goal()) * (tries - 1))];
      int all = of.trays().sown() - of.trays().gone() + of.trays().toSow();
      double each = all == 0 ? 0 : mean(plants) / all;
      int number =
          each == 0 || of.isShort()
              ? 0
              : (int) Math.min(inside.size(), (low - of.sowing().plantsNeeded()) / each);
      if (number > 0) {
        spare.put(s, inside.subList(0, number));
      }
    }
    return spare;
  }

  private @Nullable Advice giveUp(List<SowingNow> isShort) throws InterruptedException {
    Map<Integer, List<TrayPast>> spare = spare();
    if (spare.isEmpty() || isShort.isEmpty()) {
      return null;
    }
    int yesterday = scenario.firstDay() - 1;
    List<TrayPast> out = spare.values().stream().flatMap(List::stream).toList();
    SoFar without =
        soFar.withTrays(
            soFar.trays().stream().map(t -> out.contains(t) ? t.thrownOut(yesterday) : t).toList());
    int[][] after = confirming(scenario.withSoFar(without));
    Difference gain = others(after, -1);
    return gain.isMore()
        ? new Advice(
            Kind.GIVE_UP,
            null,
            spare.entrySet().stream()
                .map(e -> e.getValue().size() + " of " + sowings.get(e.getKey()).sowing().id())
                .toList(),
            out.size(),
            -1,
            null,
            gain,
            Difference.NONE,
            null)
        : null;
  }

  // Potting on.

  private List<Advice> potting() throws InterruptedException {
    List<Advice> advice = new ArrayList<>();
    for (Map.Entry<String, Crop> entry : scenario.crops().entrySet()) {
      Crop crop = entry.getValue();
      boolean stands =
          sowings.stream()
              .anyMatch(
                  s ->
                      s.sowing().crop().equals(entry.getKey())
                          && s.trays().inHeat() + s.trays().growingOn() > 0);
      if (stands && crop.pottingOn().when() == Crop.PottingOn.When.IF_HELD) {
        tryPotting(advice, crop, Crop.PottingOn.When.ALWAYS, Kind.POT_NOW);
        tryPotting(advice, crop, Crop.PottingOn.When.NEVER, Kind.WAIT);
      }
    }
    return advice;
  }

  private void tryPotting(List<Advice> advice, Crop crop, Crop.PottingOn.When when, Kind kind)
      throws InterruptedException {
    Map<String, Crop> crops = new LinkedHashMap<>(scenario.crops());
    crops.put(crop.name(), crop.pottedOn(when));
    int[][] after = confirming(scenario.withCrops(crops));
    Difference gain = others(after, -1);
    if (gain.isMore()) {
      advice.add(
          new Advice(kind, null, List.of(crop.name()), 0, -1, null, gain, Difference.NONE, null));
    }
  }
}
