package propcap.evidence.stages;

import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import propcap.evidence.stages.TrayEvidence.Readiness;
import propcap.evidence.stages.TrayEvidence.Ripening;
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

  /**
   * Beta(2s, 2(1 - s)) has the variance of three trials, so that an outbreak weighs as much of its
   * severity.
   */
  static final double OUTBREAK_WEIGHS = 3;

  /** So many times as long on the table as any other. Planning default, not measured. */
  private static final double FORGOTTEN_FROM = 2;

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
    LogKeeping keeping = new LogKeeping(log, scenario.season().days());
    List<CropStages> crops =
        log.stream()
            .map(LoggedTray::crop)
            .distinct()
            .map(name -> Objects.requireNonNull(scenario.crops().get(name), name))
            .map(crop -> crop(crop, log, warmth, keeping, listedTrays))
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
        Math.log(days / takesDays) / Math.max(WarmthRequirement.LEAST_SPREAD, spread));
  }

  private static CropStages crop(
      Crop crop, List<LoggedTray> log, TableWarmth warmth, LogKeeping keeping, double weight) {
    List<TrayReading.Read> read =
        log.stream()
            .filter(t -> t.crop().equals(crop.name()))
            .map(t -> TrayReading.of(t, crop, warmth, keeping))
            .toList();
    Crop.GrowingOn growing = crop.growingOn();
    double perDay = growing.rate(growing.atC());
    WarmthRequirement.Prior listed =
        new WarmthRequirement.Prior(growing.takesDays() * perDay, growing.spread(), weight);
    List<TrayEvidence> trays =
        withoutForgotten(
            read.stream().map(TrayReading.Read::evidence).toList(), listed.degreeDays());
    ReadyTimes ready = ReadyTimes.of(trays);
    WarmthRequirement requirement = WarmthRequirement.fit(ready, listed);
    Learned takes = requirement.degreeDays().times(1 / perDay);
    StageLosses losses =
        StageLosses.fit(
            crop,
            read.stream().map(TrayReading.Read::course).toList(),
            weight,
            listed,
            ready,
            takes.learned().value(),
            Math.log(requirement.degreeDays().learned().value()));
    return new CropStages(
        crop,
        trays,
        keeping.lastDay(),
        takes,
        requirement.spread(),
        losses.loss(),
        losses.chance(),
        losses.severity(),
        losses.outbreaks(),
        crop.pottingOn().when() == Crop.PottingOn.When.NEVER && losses.potting().trays() == 0
            ? null
            : losses.potting(),
        losses.hardening(),
        losses.holdsDays(),
        losses.overheld());
  }

  /**
   * Trays that would have been on the table for twice as long as any other of the crop, and as the
   * list has it, were rather forgotten in the log.
   */
  private static List<TrayEvidence> withoutForgotten(
      List<TrayEvidence> trays, double listedDegreeDays) {
    double longest =
        trays.stream()
            .flatMap(t -> Stream.ofNullable(t.ripening()))
            .mapToDouble(Ripening::upTo)
            .filter(Double::isFinite)
            .reduce(listedDegreeDays, Math::max);
    return trays.stream()
        .map(
            t ->
                t.readiness() == Readiness.NOT_YET
                        && Objects.requireNonNull(t.ripening()).above() > FORGOTTEN_FROM * longest
                    ? t.without(Readiness.FORGOTTEN)
                    : t)
        .toList();
  }
}
