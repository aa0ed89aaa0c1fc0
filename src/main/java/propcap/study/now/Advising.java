package propcap.study.now;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleConsumer;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import propcap.farm.Crop;
import propcap.farm.Crop.PottingOn.When;
import propcap.farm.LoggedEvent;
import propcap.farm.Prices;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.farm.Sowing;
import propcap.farm.TrayPast;
import propcap.study.RunSettings;
import propcap.study.now.SeasonNow.Advice;
import propcap.study.now.SeasonNow.Kind;
import propcap.study.now.SeasonNow.SowingNow;
import propcap.study.statistics.Difference;

/**
 * Tries what a grower can still do for the sowings that are short, each by itself and all on the
 * same springs, and keeps what makes a difference beyond its error.
 */
final class Advising {
  private final Scenario scenario;
  private final SoFar soFar;
  private final List<SowingNow> sowings;
  private final List<SowingNow> isShort;

  /** Of those, the ones that are begun and not over: for them alone something can be tried. */
  private final List<SowingNow> open;

  private final AdviceSprings springs;

  Advising(Scenario scenario, SoFar soFar, RunSettings settings, List<SowingNow> sowings)
      throws InterruptedException {
    this.scenario = scenario;
    this.soFar = soFar;
    this.sowings = sowings;
    isShort = sowings.stream().filter(SowingNow::isShort).toList();
    open =
        isShort.stream()
            .filter(s -> s.isBegun() && !scenario.today().isAfter(s.sowing().bedBy()))
            .toList();
    springs = new AdviceSprings(scenario, settings, sowings);
  }

  /** How many springs advice is told from. */
  int springs() {
    return springs.told();
  }

  List<Advice> advise(DoubleConsumer progress) throws InterruptedException {
    List<Advice> advice = new ArrayList<>();
    for (int i = 0; i < open.size(); i++) {
      new SowingAgain(scenario, springs, open.get(i)).advice().ifPresent(advice::add);
      buyIn(open.get(i)).ifPresent(advice::add);
      progress.accept((i + 1.0) / (open.size() + 1));
    }
    advice.addAll(forSeveral());
    return byUse(advice);
  }

  /** All for one sowing together, the most useful first; what is for several counts as one. */
  static List<Advice> byUse(List<Advice> advice) {
    Comparator<Advice> useful = Comparator.comparingDouble(a -> -a.use());
    Map<Optional<Sowing>, List<Advice>> bySowing =
        advice.stream()
            .sorted(useful)
            .collect(
                Collectors.groupingBy(
                    a -> Optional.ofNullable(a.sowing()), LinkedHashMap::new, Collectors.toList()));
    return bySowing.values().stream().flatMap(List::stream).toList();
  }

  /** Sowings that are short, for which something was tried, and that no advice helps. */
  List<Sowing> notHelped(List<Advice> advice) {
    return open.stream()
        .map(SowingNow::sowing)
        .filter(s -> advice.stream().noneMatch(a -> a.isFor(s)))
        .toList();
  }

  private Optional<Advice> buyIn(SowingNow of) {
    Prices prices = scenario.prices();
    if (prices == null) {
      return Optional.empty();
    }
    int plants = (int) springs.lacking(of);
    double price = prices.of(of.sowing().crop()).lacking().doubleValue();
    if (plants == 0 || price == 0) {
      return Optional.empty();
    }
    int[][] told = springs.beforeTelling();
    double[] then = springs.met(told, of, plants);
    return Optional.of(
        new Advice(
            Kind.BUY_IN,
            of.sowing(),
            List.of(),
            List.of(),
            plants,
            Advice.NO_DAY,
            springs.chance(then),
            springs.difference(springs.met(told, of, 0), then, 1),
            Difference.NONE,
            plants * price));
  }

  // What may help several sowings.

  /** A change of the house or of a crop. */
  private record Change(Kind kind, List<String> what, int trays, Scenario scenario) {}

  private List<Advice> forSeveral() throws InterruptedException {
    List<Change> changes = new ArrayList<>(potting());
    Change givenUp = givingUp();
    if (givenUp != null) {
      changes.add(givenUp);
    }
    List<Advice> advice = new ArrayList<>();
    for (Change change : changes) {
      int[][] after = springs.telling(change.scenario());
      Difference gain = springs.met(after, -1, changes.size());
      if (gain.isMore()) {
        advice.add(
            new Advice(
                change.kind(),
                null,
                change.what(),
                helped(after),
                change.trays(),
                Advice.NO_DAY,
                null,
                gain,
                Difference.NONE,
                null));
      }
    }
    return advice;
  }

  /** Of the sowings that are short, those that a change helps beyond its error. */
  private List<String> helped(int[][] after) {
    return isShort.stream()
        .filter(
            of ->
                springs
                    .difference(
                        springs.met(springs.beforeTelling(), of, 0),
                        springs.met(after, of, 0),
                        isShort.size())
                    .isMore())
        .map(of -> of.sowing().id())
        .toList();
  }

  /** Throwing out what stands on the tables and is not needed; null where all is. */
  private @Nullable Change givingUp() {
    Map<SowingNow, List<TrayPast>> spare = new LinkedHashMap<>();
    for (SowingNow of : sowings) {
      List<TrayPast> trays = spare(of);
      if (!trays.isEmpty()) {
        spare.put(of, trays);
      }
    }
    if (spare.isEmpty()) {
      return null;
    }
    int yesterday = scenario.firstDay() - 1;
    List<TrayPast> out = spare.values().stream().flatMap(List::stream).toList();
    return new Change(
        Kind.GIVE_UP,
        spare.entrySet().stream()
            .map(e -> e.getValue().size() + " of " + e.getKey().sowing().id())
            .toList(),
        out.size(),
        scenario.withSoFar(
            soFar.withTrays(
                soFar.trays().stream()
                    .map(t -> out.contains(t) ? t.thrownOut(yesterday) : t)
                    .toList())));
  }

  /** Trays of a sowing on the tables, the last ones first, without which it still has enough. */
  private List<TrayPast> spare(SowingNow of) {
    List<TrayPast> onTables =
        soFar.of(of.sowing()).stream()
            .filter(
                t -> t.lastMove() == LoggedEvent.OFF_HEAT || t.lastMove() == LoggedEvent.POTTED_ON)
            .sorted(Comparator.comparingInt(TrayPast::number).reversed())
            .toList();
    int trays = of.trays().sown() - of.trays().gone() + of.trays().toSow();
    if (onTables.isEmpty() || of.isShort()) {
      return List.of();
    }
    int s = sowings.indexOf(of);
    double[] plants = AdviceSprings.of(springs.beforeTrying(), o -> o[s]);
    double each = AdviceSprings.mean(plants) / trays;
    Arrays.sort(plants);
    double atLeast = plants[(int) ((1 - of.goal()) * (plants.length - 1))];
    int number = (int) Math.max(0, (atLeast - of.sowing().plantsNeeded()) / Math.max(1, each));
    return onTables.subList(0, Math.min(number, onTables.size()));
  }

  /** Potting on at other times what is potted on only once it has been held. */
  private List<Change> potting() {
    List<Change> changes = new ArrayList<>();
    for (Crop crop : scenario.crops().values()) {
      boolean isToCome =
          sowings.stream()
              .filter(s -> s.sowing().crop().equals(crop.name()))
              .anyMatch(s -> s.trays().inHeat() + s.trays().growingOn() > 0);
      if (isToCome && crop.pottingOn().when() == When.IF_HELD) {
        changes.add(potted(Kind.POT_NOW, crop, When.ALWAYS));
        changes.add(potted(Kind.WAIT, crop, When.NEVER));
      }
    }
    changes.sort(Comparator.comparing(c -> c.what().get(0)));
    return changes;
  }

  private Change potted(Kind kind, Crop crop, When when) {
    Map<String, Crop> crops = new LinkedHashMap<>(scenario.crops());
    crops.put(crop.name(), crop.pottedOn(when));
    return new Change(kind, List.of(crop.name()), 0, scenario.withCrops(crops));
  }
}
