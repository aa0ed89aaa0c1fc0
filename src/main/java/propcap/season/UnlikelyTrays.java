package propcap.season;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.chance.KnownTray;
import propcap.chance.UsualTray;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.farm.TrayPast;
import propcap.farm.UnlikelyTray;
import propcap.farm.UnlikelyTray.Kind;

/**
 * The trays of a log that were far too early or too late by the plan's figures, before the log
 * teaches otherwise. A count that is low is no matter of this: it was seen.
 */
public final class UnlikelyTrays {
  /** Of so many trays one is as early or as late. */
  private static final double ONE_OF = 100_000;

  private final SeasonPlan plan;
  private final Map<Crop, UsualTray> usual = new HashMap<>();

  private UnlikelyTrays(SeasonPlan plan) {
    this.plan = plan;
  }

  /** In the log's order; none of a season that has not begun. */
  public static List<UnlikelyTray> of(Scenario scenario) {
    UnlikelyTrays trays = new UnlikelyTrays(new SeasonPlan(scenario));
    List<UnlikelyTray> found = new ArrayList<>();
    for (Past.Known known : trays.plan.past().trays()) {
      Kind kind = trays.kind(known);
      if (kind != null) {
        found.add(trays.told(known, kind));
      }
    }
    return found;
  }

  private UsualTray usual(Past.Known known) {
    return usual.computeIfAbsent(known.line().crop, UsualTray::new);
  }

  private TrayEvidence evidence(Past.Known known, int year) {
    return new TrayEvidence(plan, plan.clocks(year), known);
  }

  /** Unlikely in every year's weather that it may have had. */
  private @Nullable Kind kind(Past.Known known) {
    Kind kind = null;
    for (int year : IntStream.range(0, LogEvidence.years(plan)).toArray()) {
      kind = kind(known.tray(), evidence(known, year), usual(known));
      if (kind == null) {
        return null;
      }
    }
    return kind;
  }

  private static @Nullable Kind kind(TrayPast tray, TrayEvidence evidence, UsualTray usual) {
    KnownTray known = evidence.known();
    boolean hasLeft = tray.at(LoggedEvent.OFF_HEAT).isPresent();
    double notBy = known.showing().notBy();
    if (evidence.isLeftInHeat() || (notBy > 0 && isNever(1 - usual.canLeaveBy(notBy)))) {
      return hasLeft ? Kind.LATE_OFF_HEAT : tray.isGone() ? null : Kind.STILL_IN_HEAT;
    }
    if (hasLeft
        && !evidence.mayHaveBeenPulled()
        && isNever(usual.canLeaveBy(known.showing().by()))) {
      return Kind.EARLY_OFF_HEAT;
    }
    if (isNever(1 - usual.canMoveOnBy(known.paceAfter()))) {
      return movedOn(tray).isPresent() ? Kind.LATE_FROM_TABLE : Kind.STILL_ON_TABLE;
    }
    return isNever(usual.canMoveOnBy(known.paceBy())) ? Kind.EARLY_FROM_TABLE : null;
  }

  private static boolean isNever(double chance) {
    return chance < 1 / ONE_OF;
  }

  private static OptionalInt movedOn(TrayPast tray) {
    int left = tray.day(LoggedEvent.OFF_HEAT).orElseThrow();
    return tray.moves().stream()
        .filter(m -> m.event().isMove() && m.event() != LoggedEvent.OFF_HEAT && m.day() >= left)
        .mapToInt(TrayPast.Move::day)
        .findFirst();
  }

  private UnlikelyTray told(Past.Known known, Kind kind) {
    TrayPast tray = known.tray();
    TrayEvidence evidence = evidence(known, 0);
    OptionalInt left = tray.day(LoggedEvent.OFF_HEAT);
    boolean isOfHeat =
        switch (kind) {
          case STILL_IN_HEAT, LATE_OFF_HEAT, EARLY_OFF_HEAT -> true;
          case STILL_ON_TABLE, LATE_FROM_TABLE, EARLY_FROM_TABLE -> false;
        };
    int from = isOfHeat ? tray.day(LoggedEvent.SOWN).orElseThrow() : left.orElseThrow();
    OptionalInt until = isOfHeat ? left : movedOn(tray);
    return new UnlikelyTray(
        tray.sowing(),
        tray.name(),
        kind,
        until.orElse(plan.firstDay()) - from,
        isOfHeat ? evidence.daysInHeat(usual(known).leavesAfter()) : evidence.daysOnTable());
  }
}
