package propcap.evidence.stages;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import propcap.evidence.stages.TrayEvidence.Count;
import propcap.evidence.stages.TrayEvidence.Leg;
import propcap.evidence.stages.TrayEvidence.Readiness;
import propcap.evidence.stages.TrayEvidence.Ripening;
import propcap.evidence.stages.TrayEvidence.Untold;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.LoggedTray;
import propcap.farm.Loss;

/** Reads what a tray tells out of its lines of the log. */
final class TrayReading {

  private final LoggedTray tray;
  private final Crop crop;
  private final TableWarmth warmth;
  private final LogKeeping keeping;
  private final Set<Untold> untold = EnumSet.noneOf(Untold.class);

  private TrayReading(LoggedTray tray, Crop crop, TableWarmth warmth, LogKeeping keeping) {
    this.tray = tray;
    this.crop = crop;
    this.warmth = warmth;
    this.keeping = keeping;
  }

  /** What was read: for the grower, and for the sums. */
  record Read(TrayEvidence evidence, TrayCourse course) {}

  static Read of(LoggedTray tray, Crop crop, TableWarmth warmth, LogKeeping keeping) {
    return new TrayReading(tray, crop, warmth, keeping).read();
  }

  private Read read() {
    Readiness readiness = readiness();
    boolean isWritten = tray.had(LoggedEvent.READY);
    Optional<LocalDate> readyBy = tray.date(LoggedEvent.READY).or(this::firstMove);
    Optional<LocalDate> readyAfter =
        isWritten ? Optional.of(roundBeforeReady()) : readyBy.map(warmth::roundBefore);
    List<Leg> legs = legs(new CountedRows(tray).kept());
    boolean lawIsAsked =
        !isWritten && legs.stream().anyMatch(leg -> leg.from() < at(LoggedEvent.POTTED_ON));
    TrayCourse course =
        new TrayCourse(
            legs,
            tray.had(LoggedEvent.OUTBREAK),
            readyAfter.map(warmth::roundAt).orElse(Double.POSITIVE_INFINITY),
            readyBy.map(warmth::roundAt).orElse(Double.POSITIVE_INFINITY),
            lawIsAsked ? course(LoggedEvent.OFF_HEAT) : null,
            at(LoggedEvent.POTTED_ON),
            potReadyAt(),
            at(LoggedEvent.MOVED_OUT));
    TrayEvidence evidence =
        new TrayEvidence(
            tray,
            readiness,
            ripening(readiness),
            tray.had(LoggedEvent.OUTBREAK),
            legs,
            untold,
            waited());
    return new Read(evidence, course);
  }

  // When it was ready.

  private Readiness readiness() {
    if (!tray.had(LoggedEvent.OFF_HEAT)) {
      return Readiness.NO_OFF_HEAT;
    }
    Optional<LocalDate> by = tray.date(LoggedEvent.READY).or(this::firstMove);
    if (by.isPresent()) {
      return degreeDays(by.get()) <= 0
          ? Readiness.AT_ONCE
          : tray.had(LoggedEvent.READY) ? Readiness.WRITTEN : Readiness.MOVED;
    }
    boolean isTold =
        keeping.writesReady(tray)
            && (tray.had(LoggedEvent.THROWN_OUT) || keeping.isOfTheLastSeason(tray));
    return isTold && degreeDays(lastSeen()) > 0 ? Readiness.NOT_YET : Readiness.NOT_SAID;
  }

  /**
   * A day of being judged ready stands for the time since the round before it. A move alone says
   * that the plugs were ready by then, for they may have waited.
   */
  private @Nullable Ripening ripening(Readiness readiness) {
    return switch (readiness) {
      case WRITTEN -> {
        LocalDate ready = tray.date(LoggedEvent.READY).orElseThrow();
        yield new Ripening(degreeDays(roundBeforeReady()), degreeDays(ready));
      }
      case MOVED -> new Ripening(0, degreeDays(firstMove().orElseThrow()));
      case NOT_YET -> new Ripening(degreeDays(lastSeen()), Double.POSITIVE_INFINITY);
      default -> null;
    };
  }

  private Optional<LocalDate> firstMove() {
    return LogKeeping.MOVES.stream()
        .flatMap(move -> tray.date(move).stream())
        .min(LocalDate::compareTo);
  }

  /** The day on which it was last seen not to be ready. */
  private LocalDate lastSeen() {
    return tray.date(LoggedEvent.THROWN_OUT).orElse(keeping.lastDay());
  }

  private double degreeDays(LocalDate to) {
    LocalDate offHeat = tray.date(LoggedEvent.OFF_HEAT).orElseThrow();
    return warmth.degreeDays(crop.growingOn(), tray.table().climate(), offHeat, to);
  }

  /** The last round at which it was not ready, by which some of its warmth was yet to come. */
  private LocalDate roundBeforeReady() {
    LocalDate ready = tray.date(LoggedEvent.READY).orElseThrow();
    LocalDate before = warmth.roundBefore(ready);
    Optional<LocalDate> offHeat = tray.date(LoggedEvent.OFF_HEAT);
    // On days too cold for growth nothing becomes ready: it was, and nobody had noticed.
    while (offHeat.isPresent()
        && before.isAfter(offHeat.get())
        && degreeDays(before) >= degreeDays(ready)) {
      before = warmth.roundBefore(before);
    }
    return offHeat.filter(before::isBefore).orElse(before);
  }

  /**
   * A pot is ready after the warmth that the crop list gives it, and before it leaves the table.
   */
  private double potReadyAt() {
    return tray.had(LoggedEvent.POTTED_ON)
        ? Math.min(
            course(LoggedEvent.POTTED_ON).when(crop.pottedDegreeDays()), at(LoggedEvent.MOVED_OUT))
        : Double.POSITIVE_INFINITY;
  }

  /** Warmth on its table from an event to its last one. */
  private WarmthCourse course(LoggedEvent from) {
    return warmth.course(
        crop.growingOn(),
        tray.table().climate(),
        tray.date(from).orElseThrow(),
        LogKeeping.lastRow(tray));
  }

  private double at(LoggedEvent event) {
    return tray.date(event).map(warmth::roundAt).orElse(Double.POSITIVE_INFINITY);
  }

  // What was lost.

  private List<Leg> legs(List<LoggedTray.Entry> counted) {
    List<Leg> legs = new ArrayList<>();
    if (tray.plants(LoggedEvent.THROWN_OUT).orElse(0) > 0) {
      untold.add(Untold.THROWN_OUT_ALIVE);
    }
    for (int i = 1; i < counted.size(); i++) {
      LoggedTray.Entry from = counted.get(i - 1);
      LoggedTray.Entry to = counted.get(i);
      Leg leg = leg(from, to);
      boolean isInPots =
          from.event().compareTo(LoggedEvent.POTTED_ON) >= 0 && tray.had(LoggedEvent.POTTED_ON);
      boolean isHeldKnown =
          isInPots
              ? crop.pottingOn().when() != Crop.PottingOn.When.NEVER
              : tray.had(LoggedEvent.READY) || tray.had(LoggedEvent.OFF_HEAT);
      if (!isHeldKnown) {
        untold.add(Untold.HELD_NOT_KNOWN);
      } else if (leg.losses().contains(Loss.HARDENING) && hadKillingNight(to.date())) {
        untold.add(Untold.KILLING_NIGHT);
      } else {
        legs.add(leg);
      }
    }
    return legs;
  }

  private Leg leg(LoggedTray.Entry from, LoggedTray.Entry to) {
    int before = Optional.ofNullable(from.plants()).orElseThrow();
    int after = Optional.ofNullable(to.plants()).orElseThrow();
    Set<Loss> losses = EnumSet.noneOf(Loss.class);
    if (from.event() == LoggedEvent.OFF_HEAT) {
      losses.add(Loss.GROWING_ON);
    }
    if (falls(LoggedEvent.POTTED_ON, from, to)) {
      losses.add(Loss.POTTING);
    }
    if (tray.had(LoggedEvent.MOVED_OUT) && to.event().compareTo(LoggedEvent.MOVED_OUT) > 0) {
      losses.add(Loss.HARDENING);
    }
    return new Leg(
        new Count(before, before - after),
        losses,
        warmth.roundAt(from.date()),
        warmth.roundAt(to.date()));
  }

  private boolean falls(LoggedEvent event, LoggedTray.Entry from, LoggedTray.Entry to) {
    return tray.had(event) && from.event().compareTo(event) < 0 && to.event().compareTo(event) >= 0;
  }

  /** Whether frost may have taken a part, which the log cannot tell from other losses. */
  private boolean hadKillingNight(LocalDate out) {
    LocalDate moved = tray.date(LoggedEvent.MOVED_OUT).orElseThrow();
    return moved
        .plusDays(1)
        .datesUntil(out.plusDays(1))
        .flatMapToDouble(night -> warmth.minC(night).stream())
        .anyMatch(minC -> minC <= crop.hardening().killBelowC());
  }

  private @Nullable Integer waited() {
    Optional<LocalDate> left = firstMove();
    Optional<LocalDate> ready = tray.date(LoggedEvent.READY);
    return ready.isPresent() && left.isPresent()
        ? Integer.valueOf(Math.toIntExact(ChronoUnit.DAYS.between(ready.get(), left.get())))
        : null;
  }
}
