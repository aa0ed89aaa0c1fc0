package propcap.evidence;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import propcap.evidence.TrayEvidence.Count;
import propcap.farm.Crop;
import propcap.farm.LoggedTray;
import propcap.farm.Scenario;
import umontreal.ssj.probdist.NormalDist;

/**
 * What a log of trays says of the stages after germination.
 *
 * @param listedTrays how many trays a figure of the crop list weighs
 * @param allRecorded whether the weather record has the rows of all dates on which trays grew on
 * @param crops that the log has trays of, in the order in which they come first
 */
public record Stages(
    Scenario scenario, double listedTrays, boolean allRecorded, List<CropStages> crops) {
  /** Planning default, not measured: three trays shift a figure a little, 300 replace it. */
  public static final double DEFAULT_LISTED_TRAYS = 10;

  /** Planning default, not measured: outbreaks that the listed severity weighs. */
  public static final double LISTED_OUTBREAKS = 3;

  /**
   * Of a crop whose list has no damping-off. Planning default, not measured; when present it takes
   * 5 to 80 % of seedlings (Lamichhane et al. 2017, Agron. Sustain. Dev. 37:10).
   */
  static final double UNLISTED_SEVERITY = 0.4;

  public Stages {
    crops = List.copyOf(crops);
  }

  /**
   * Fits every crop that the log has trays of.
   *
   * @param listedTrays how many trays a figure of the crop list weighs, 1 or more
   */
  public static Stages fit(Scenario scenario, List<LoggedTray> log, double listedTrays) {
    if (!(listedTrays >= 1 && Double.isFinite(listedTrays))) {
      throw new IllegalArgumentException(
          "the crop list must weigh 1 tray or more, was " + listedTrays);
    }
    TableWarmth warmth = new TableWarmth(scenario);
    List<CropStages> crops =
        log.stream()
            .map(LoggedTray::crop)
            .distinct()
            .map(name -> Objects.requireNonNull(scenario.crops().get(name), name))
            .map(crop -> crop(crop, log, warmth, listedTrays))
            .toList();
    boolean allRecorded =
        log.stream()
            .flatMap(t -> t.entries().stream())
            .filter(e -> e.event().isTimed())
            .allMatch(e -> warmth.isRecorded(e.date()));
    return new Stages(scenario, listedTrays, allRecorded, crops);
  }

  /** The share of trays that are ready by a day, of a median and a spread. */
  public static double readyBy(double days, double takesDays, double spread) {
    return NormalDist.cdf01(
        Math.log(days / takesDays) / Math.max(Requirement.LEAST_SPREAD, spread));
  }

  /** Twice, since what a stage lost is known once it is known how long its plugs keep. */
  private static CropStages crop(
      Crop crop, List<LoggedTray> log, TableWarmth warmth, double weight) {
    CropStages first = crop(crop, log, warmth, weight, crop.growingOn().holdsDays());
    Learned holds = first.holdsDays();
    return holds.trays() == 0 ? first : crop(crop, log, warmth, weight, holds.learned().value());
  }

  private static CropStages crop(
      Crop crop, List<LoggedTray> log, TableWarmth warmth, double weight, double holdsDays) {
    List<TrayEvidence> trays =
        log.stream()
            .filter(t -> t.crop().equals(crop.name()))
            .map(t -> TrayReading.of(t, crop, warmth, holdsDays))
            .toList();
    Crop.GrowingOn growing = crop.growingOn();
    double perDay = growing.rate(growing.atC());
    Requirement requirement =
        Requirement.fit(
            present(trays.stream().map(TrayEvidence::ripening).toList()),
            growing.takesDays() * perDay,
            growing.spread(),
            weight);
    double plants = weight * crop.cells();
    Learned potting =
        counted(
            crop.pottingOn().loss(),
            plants,
            present(trays.stream().map(TrayEvidence::potting).toList()));
    Learned hardening =
        counted(
            crop.hardening().loss(),
            plants,
            present(trays.stream().map(TrayEvidence::hardening).toList()));
    Table table = Table.of(crop, trays, weight);
    Learned takes = inDays(requirement.degreeDays(), perDay);
    double days = takes.learned().value();
    Holding holding =
        holding(
            crop,
            trays,
            weight,
            new Holding.Besides(
                1 - Math.pow(1 - table.loss().learned().value(), 1 / days),
                potting.learned().value(),
                hardening.learned().value()));
    return new CropStages(
        crop,
        trays,
        takes,
        requirement.spread(),
        table.loss(),
        table.chance(),
        table.severity(),
        table.outbreaks(),
        crop.pottingOn().when() == Crop.PottingOn.When.NEVER && potting.trays() == 0
            ? null
            : potting,
        hardening,
        holding.holdsDays(),
        holding.lossPerDay());
  }

  private static <T> List<T> present(List<@Nullable T> things) {
    return things.stream().filter(Objects::nonNull).map(Objects::requireNonNull).toList();
  }

  private static Learned inDays(Learned degreeDays, double perDay) {
    Estimate alone = degreeDays.alone();
    return new Learned(
        degreeDays.listed().times(1 / perDay),
        alone == null ? null : alone.times(1 / perDay),
        degreeDays.learned().times(1 / perDay),
        degreeDays.trays());
  }

  /** A loss of which counts tell, plant by plant. */
  static Learned counted(double listed, double weight, List<Count> counts) {
    BetaBelief belief = BetaBelief.of(listed, weight);
    int plants = counts.stream().mapToInt(Count::plants).sum();
    int lost = counts.stream().mapToInt(Count::lost).sum();
    if (plants == 0) {
      return Learned.nothing(belief.around(listed));
    }
    return new Learned(
        belief.around(listed),
        exact(lost, plants),
        belief.after(lost, plants - lost).estimate(),
        counts.size());
  }

  /** The exact binomial interval of Clopper and Pearson (1934), Biometrika 26. */
  private static Estimate exact(int lost, int plants) {
    int kept = plants - lost;
    return new Estimate(
        (double) lost / plants,
        lost == 0 ? 0 : new BetaBelief(lost, kept + 1).quantile(Estimate.TAIL),
        kept == 0 ? 1 : new BetaBelief(lost + 1, kept).quantile(1 - Estimate.TAIL));
  }

  private static Holding holding(
      Crop crop, List<TrayEvidence> trays, double weight, Holding.Besides besides) {
    Crop.GrowingOn growing = crop.growingOn();
    return Holding.fit(
        trays.stream().flatMap(t -> t.held().stream()).toList(),
        growing.holdsDays(),
        growing.overheldLossPerDay(),
        weight,
        weight * crop.cells(),
        besides);
  }

  /** What was learned of losses on the table. */
  private record Table(Learned loss, Learned chance, Learned severity, List<Double> outbreaks) {
    static Table of(Crop crop, List<TrayEvidence> evidence, double weight) {
      Crop.GrowingOn growing = crop.growingOn();
      double chance = growing.dampingOff().chance();
      double severity = chance > 0 ? growing.dampingOff().severity() : UNLISTED_SEVERITY;
      TableLosses.Belief belief =
          new TableLosses.Belief(
              BetaBelief.of(growing.loss(), weight * crop.cells()),
              BetaBelief.of(chance, weight),
              BetaBelief.of(severity, LISTED_OUTBREAKS * TableLosses.SEVERITY_WEIGHT));
      List<TableLosses.Tray> trays = TableLosses.of(evidence);
      Estimate listedLoss = belief.loss().around(growing.loss());
      Estimate listedChance = belief.chance().around(chance);
      Estimate listedSeverity = belief.severity().around(severity);
      if (trays.isEmpty()) {
        return new Table(
            Learned.nothing(listedLoss),
            Learned.nothing(listedChance),
            Learned.nothing(listedSeverity),
            List.of());
      }
      TableLosses both = TableLosses.fit(trays, belief);
      TableLosses alone = TableLosses.fit(trays, belief.ofSeverityAlone());
      boolean hasOutbreak = alone.expectedOutbreaks() >= 0.5;
      return new Table(
          new Learned(listedLoss, alone.loss(), both.loss(), trays.size()),
          new Learned(listedChance, alone.chance(), both.chance(), trays.size()),
          hasOutbreak
              ? new Learned(
                  listedSeverity,
                  null,
                  both.severity(),
                  (int) Math.max(1, Math.round(both.expectedOutbreaks())))
              : Learned.nothing(listedSeverity),
          both.outbreaks());
    }
  }
}
