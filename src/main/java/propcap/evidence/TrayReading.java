package propcap.evidence;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.evidence.TrayEvidence.Count;
import propcap.evidence.TrayEvidence.Held;
import propcap.evidence.TrayEvidence.Ripening;
import propcap.farm.Crop;
import propcap.farm.LoggedTray;
import propcap.farm.Loss;
import propcap.farm.TrayEvent;

/** Reads what a tray tells out of its lines of the log. */
final class TrayReading {
  private final LoggedTray tray;
  private final Crop crop;
  private final TableWarmth warmth;
  private final double holdsDays;
  private final boolean wasPotted;

  private TrayReading(LoggedTray tray, Crop crop, TableWarmth warmth, double holdsDays) {
    this.tray = tray;
    this.crop = crop;
    this.warmth = warmth;
    this.holdsDays = holdsDays;
    this.wasPotted = tray.had(TrayEvent.POTTED_ON);
  }

  /**
   * What a tray tells.
   *
   * @param holdsDays that a ready plug keeps: losses after them are nobody's but the holding's
   */
  static TrayEvidence of(LoggedTray tray, Crop crop, TableWarmth warmth, double holdsDays) {
    return new TrayReading(tray, crop, warmth, holdsDays).read();
  }

  private TrayEvidence read() {
    List<Held> held = new ArrayList<>();
    Optional<Count> potted = Count.between(readyForTheMove(), tray.plants(TrayEvent.POTTED_ON));
    potted
        .flatMap(count -> held(count, lastCount(), TrayEvent.POTTED_ON, Loss.POTTING))
        .ifPresent(held::add);
    if (!wasPotted) {
      TrayEvent left = diedOnTheTable() ? TrayEvent.THROWN_OUT : TrayEvent.MOVED_OUT;
      Count.between(readyForTheMove(), tray.plants(left))
          .flatMap(count -> held(count, lastCount(), left, Loss.OVERHELD))
          .ifPresent(held::add);
    }
    Optional<Count> hardened =
        Count.between(tray.plants(TrayEvent.MOVED_OUT), atTheEnd())
            .filter(count -> !hadKillingNight());
    hardened
        .flatMap(count -> held(count, TrayEvent.MOVED_OUT, end(), Loss.HARDENING))
        .ifPresent(held::add);
    Count potting = potted.filter(c -> !isOverheldAt(TrayEvent.POTTED_ON)).orElse(null);
    Count hardening =
        hardened.filter(c -> overheldDays(end()) <= overheldDays(TrayEvent.MOVED_OUT)).orElse(null);
    return new TrayEvidence(
        tray,
        ripening().orElse(null),
        growingOn().orElse(null),
        tray.had(TrayEvent.OUTBREAK),
        potting,
        hardening,
        waited(),
        held);
  }

  /**
   * When it was ready. A day of being judged ready stands for the time since the round before it;
   * where plugs are always potted on as soon as they are ready, potting on is such a day. A move
   * alone only says that the plugs were ready by then, for they may have waited.
   */
  private Optional<Ripening> ripening() {
    Optional<LocalDate> offHeat = tray.date(TrayEvent.OFF_HEAT);
    if (offHeat.isEmpty()) {
      return Optional.empty();
    }
    boolean potsAtOnce = crop.pottingOn().when() == Crop.PottingOn.When.ALWAYS;
    Optional<LocalDate> timed =
        tray.date(TrayEvent.READY)
            .or(() -> potsAtOnce ? tray.date(TrayEvent.POTTED_ON) : Optional.empty());
    Optional<LocalDate> by =
        timed.or(() -> tray.date(TrayEvent.POTTED_ON)).or(() -> tray.date(TrayEvent.MOVED_OUT));
    if (by.isEmpty() || degreeDays(offHeat.get(), by.get()) <= 0) {
      return Optional.empty();
    }
    double upTo = degreeDays(offHeat.get(), by.get());
    double above = 0;
    if (timed.isPresent()) {
      LocalDate before = warmth.roundBefore(timed.get());
      // On days too cold for growth nothing becomes ready: it was, and nobody had noticed.
      while (before.isAfter(offHeat.get()) && degreeDays(offHeat.get(), before) >= upTo) {
        before = warmth.roundBefore(before);
      }
      above = degreeDays(offHeat.get(), before);
    }
    return Optional.of(new Ripening(above, upTo));
  }

  private double degreeDays(LocalDate from, LocalDate to) {
    return warmth.degreeDays(crop.growingOn(), tray.table().climate(), from, to);
  }

  /** From the stand to the last count on the table that neither potting nor holding has touched. */
  private Optional<Count> growingOn() {
    Optional<Integer> last = readyForTheMove();
    if (!wasPotted) {
      if (tray.plants(TrayEvent.MOVED_OUT).isPresent() && !isOverheldAt(TrayEvent.MOVED_OUT)) {
        last = tray.plants(TrayEvent.MOVED_OUT);
      } else if (diedOnTheTable() && !isOverheldAt(TrayEvent.THROWN_OUT)) {
        last = Optional.of(0);
      }
    }
    return Count.between(tray.plants(TrayEvent.OFF_HEAT), last);
  }

  private boolean diedOnTheTable() {
    return isThrownOutDead() && !wasPotted && !tray.had(TrayEvent.MOVED_OUT);
  }

  private boolean isThrownOutDead() {
    return tray.plants(TrayEvent.THROWN_OUT).filter(left -> left == 0).isPresent();
  }

  /** Plants at the last count before any move. */
  private Optional<Integer> readyForTheMove() {
    return tray.plants(lastCount());
  }

  /** The event of that count: ready, or damping-off where that was counted later. */
  private TrayEvent lastCount() {
    return tray.entries().stream()
        .map(LoggedTray.Entry::event)
        .filter(e -> e == TrayEvent.READY || e == TrayEvent.OUTBREAK)
        .filter(e -> tray.plants(e).isPresent())
        .reduce((earlier, later) -> later)
        .orElse(TrayEvent.READY);
  }

  /** Of a plug whose day of being ready is known, and that stood ready between two counts. */
  private Optional<Held> held(Count count, TrayEvent from, TrayEvent to, Loss besides) {
    Optional<Double> since = readyDays(from);
    Optional<Double> until = readyDays(to);
    return since.isPresent() && until.isPresent() && until.get() > Math.max(0, since.get())
        ? Optional.of(new Held(count, Math.max(0, since.get()), until.get(), besides))
        : Optional.empty();
  }

  /** Days from being ready to an event; not known of pots, for theirs is another ripeness. */
  private Optional<Double> readyDays(TrayEvent event) {
    Optional<LocalDate> ready = tray.date(TrayEvent.READY);
    Optional<LocalDate> then = tray.date(event);
    boolean isOfPots = wasPotted && event.compareTo(TrayEvent.POTTED_ON) > 0;
    return ready.isEmpty() || then.isEmpty() || isOfPots
        ? Optional.empty()
        : Optional.of((double) ChronoUnit.DAYS.between(ready.get(), then.get()));
  }

  private boolean isOverheldAt(TrayEvent event) {
    return overheldDays(event) > 0;
  }

  /** Days beyond those that the ready plug keeps, up to an event. */
  private double overheldDays(TrayEvent event) {
    return readyDays(event).map(d -> Math.max(0, d - holdsDays)).orElse(0.0);
  }

  private TrayEvent end() {
    return tray.had(TrayEvent.PLANTED_OUT) ? TrayEvent.PLANTED_OUT : TrayEvent.THROWN_OUT;
  }

  private Optional<Integer> atTheEnd() {
    return tray.plants(TrayEvent.PLANTED_OUT)
        .or(() -> isThrownOutDead() ? Optional.of(0) : Optional.empty());
  }

  /** Whether frost may have taken a part, which the log cannot tell from other losses. */
  private boolean hadKillingNight() {
    LocalDate moved = tray.date(TrayEvent.MOVED_OUT).orElseThrow();
    LocalDate out = tray.date(end()).orElseThrow();
    return moved
        .plusDays(1)
        .datesUntil(out.plusDays(1))
        .flatMapToDouble(night -> warmth.minC(night).stream())
        .anyMatch(minC -> minC <= crop.hardening().killBelowC());
  }

  private @Nullable Integer waited() {
    Optional<LocalDate> left =
        Stream.of(TrayEvent.POTTED_ON, TrayEvent.MOVED_OUT, TrayEvent.PLANTED_OUT)
            .flatMap(e -> tray.date(e).stream())
            .findFirst();
    Optional<LocalDate> ready = tray.date(TrayEvent.READY);
    return ready.isPresent() && left.isPresent()
        ? Integer.valueOf(Math.toIntExact(ChronoUnit.DAYS.between(ready.get(), left.get())))
        : null;
  }
}
