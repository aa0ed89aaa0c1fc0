package propcap.evidence.stages;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.evidence.stages.TrayEvidence.Count;
import propcap.evidence.stages.TrayEvidence.Readiness;
import propcap.evidence.stages.TrayEvidence.Untold;
import propcap.farm.Crop;
import propcap.farm.Loss;

/**
 * What a log says of one crop's growing on, potting and hardening.
 *
 * @param crop as the crop list has it
 * @param lastDay up to which the log was kept
 * @param takesDays of growing on, at the temperature that the list names
 * @param spread of it between trays, on the log scale
 * @param loss on the table, outbreaks apart
 * @param outbreakChance of damping-off in a tray
 * @param severity mean share that an outbreak takes
 * @param holdsDays that a ready plug keeps
 * @param overheldLoss of a day beyond them
 * @param pottingLoss null: the crop is never potted on
 * @param outbreaks chance that a tray had an outbreak, for each with both counts on the table
 */
public record CropStages(
    Crop crop,
    List<TrayEvidence> trays,
    LocalDate lastDay,
    Learned takesDays,
    Learned spread,
    Learned loss,
    Learned outbreakChance,
    Learned severity,
    List<Double> outbreaks,
    @Nullable Learned pottingLoss,
    Learned hardeningLoss,
    Learned holdsDays,
    Learned overheldLoss) {
  public CropStages {
    trays = List.copyOf(trays);
    outbreaks = List.copyOf(outbreaks);
  }

  /** Trays whose rows say so of when they were ready. */
  public int count(Readiness readiness) {
    return (int) trays.stream().filter(t -> t.readiness() == readiness).count();
  }

  /** Trays of which a count tells nothing of losses for this reason. */
  public int count(Untold reason) {
    return (int) trays.stream().filter(t -> t.untold().contains(reason)).count();
  }

  /**
   * Plants that went out, and those of them that never came to the bed, of trays of which it is not
   * known how long they had been ready. Empty where there are none.
   */
  public Optional<Count> hardenedUnsaid() {
    return trays.stream()
        .filter(t -> t.readiness() == Readiness.MOVED)
        .flatMap(t -> t.of(Loss.HARDENING).stream())
        .reduce((a, b) -> new Count(a.plants() + b.plants(), a.lost() + b.lost()));
  }

  /** Trays whose losses on the table were counted; {@link #outbreaks} has one chance for each. */
  public List<TrayEvidence> counted() {
    return trays.stream().filter(t -> t.of(Loss.GROWING_ON).isPresent()).toList();
  }

  /** Outbreaks to be expected among the trays counted, those written down included. */
  public double expectedOutbreaks() {
    return outbreaks.stream().mapToDouble(Double::doubleValue).sum();
  }

  /** How long ready plugs waited for their first move, in days, in rising order. */
  public List<Integer> waitedDays() {
    return trays.stream().flatMap(t -> Stream.ofNullable(t.waitedDays())).sorted().toList();
  }

  /** The crop with what was learned in the place of what was listed. */
  public Crop learned() {
    Crop.GrowingOn old = crop.growingOn();
    boolean hasOutbreaks = crop.growingOn().dampingOff().chance() > 0 || expectedOutbreaks() >= 0.5;
    return crop.with(
        new Crop.GrowingOn(
            old.baseC(),
            old.optimumC(),
            old.atC(),
            takesDays.learned().value(),
            spread.learned().value(),
            loss.learned().value(),
            hasOutbreaks
                ? new Crop.DampingOff(outbreakChance.learned().value(), severity.learned().value())
                : Crop.DampingOff.NONE,
            holdsDays.learned().value(),
            overheldLoss.learned().value()),
        potting(),
        hardening());
  }

  private Crop.PottingOn potting() {
    Crop.PottingOn old = crop.pottingOn();
    return pottingLoss == null
        ? old
        : new Crop.PottingOn(
            old.when(),
            old.potsPerTray(),
            old.takesDays(),
            old.holdsDays(),
            pottingLoss.learned().value());
  }

  private Crop.Hardening hardening() {
    Crop.Hardening old = crop.hardening();
    return new Crop.Hardening(
        old.takesDays(),
        old.fitAboveC(),
        old.killBelowC(),
        old.frostLoss(),
        hardeningLoss.learned().value(),
        old.frostRisk(),
        old.offsetDays());
  }
}
