package propcap.evidence;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import propcap.evidence.TrayEvidence.Count;
import propcap.evidence.TrayEvidence.Overheld;
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
  private final boolean wasPotted;

  private TrayReading(LoggedTray tray, Crop crop, TableWarmth warmth) {
    this.tray = tray;
    this.crop = crop;
    this.warmth = warmth;
    this.wasPotted = tray.had(TrayEvent.POTTED_ON);
  }

  static TrayEvidence of(LoggedTray tray, Crop crop, TableWarmth warmth) {
    return new TrayReading(tray, crop, warmth).read();
  }

  private TrayEvidence read() {
    List<Overheld> overheld = new ArrayList<>();
    Count potting = null;
    Count hardening = null;
    Optional<Count> potted = Count.between(readyForTheMove(), tray.plants(TrayEvent.POTTED_ON));
    if (potted.isPresent()) {
      double days = overheldDays(TrayEvent.POTTED_ON);
      if (days > 0) {
        overheld.add(new Overheld(potted.get(), days, Loss.POTTING));
      } else {
        potting = potted.get();
      }
    }
    waitedTooLong().ifPresent(overheld::add);
    Optional<Count> hardened = Count.between(tray.plants(TrayEvent.MOVED_OUT), atTheEnd());
    if (hardened.isPresent() && !hadKillingNight()) {
      double days = overheldDays(end()) - overheldDays(TrayEvent.MOVED_OUT);
      if (days > 0) {
        overheld.add(new Overheld(hardened.get(), days, Loss.HARDENING));
      } else {
        hardening = hardened.get();
      }
    }
    return new TrayEvidence(
        tray,
        ripening().orElse(null),
        growingOn().orElse(null),
        tray.had(TrayEvent.OUTBREAK),
        potting,
        hardening,
        waited(),
        overheld);
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
    return tray.entries().stream()
        .filter(e -> e.event() == TrayEvent.READY || e.event() == TrayEvent.OUTBREAK)
        .flatMap(e -> tray.plants(e.event()).stream())
        .reduce((earlier, later) -> later);
  }

  /** What a plug that was not potted on lost on the table by being held too long. */
  private Optional<Overheld> waitedTooLong() {
    TrayEvent left = diedOnTheTable() ? TrayEvent.THROWN_OUT : TrayEvent.MOVED_OUT;
    double days = overheldDays(left);
    return days > 0
        ? Count.between(readyForTheMove(), tray.plants(left))
            .map(count -> new Overheld(count, days, Loss.OVERHELD))
        : Optional.empty();
  }

  private boolean isOverheldAt(TrayEvent event) {
    return overheldDays(event) > 0;
  }

  /** Days beyond those that the ready plug keeps, up to an event; 0 for pots, not known of them. */
  private double overheldDays(TrayEvent event) {
    Optional<LocalDate> ready = tray.date(TrayEvent.READY);
    Optional<LocalDate> then = tray.date(event);
    if (ready.isEmpty() || then.isEmpty() || (wasPotted && event != TrayEvent.POTTED_ON)) {
      return 0;
    }
    double waited = ChronoUnit.DAYS.between(ready.get(), then.get());
    return Math.max(0, waited - crop.growingOn().holdsDays());
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
