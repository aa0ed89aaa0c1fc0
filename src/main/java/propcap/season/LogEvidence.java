package propcap.season;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import propcap.chance.KnownLuck;
import propcap.chance.KnownShowing;
import propcap.chance.KnownTray;
import propcap.chance.ThermalClock;
import propcap.farm.Crop;
import propcap.farm.LoggedEvent;
import propcap.farm.SoFar;
import propcap.farm.TrayPast;

/** What a log says of luck: its days become thermal times, by the weather that there was. */
final class LogEvidence {
  private final SeasonPlan plan;
  private final Past past;

  LogEvidence(SeasonPlan plan) {
    this.plan = plan;
    past = plan.past();
  }

  /** Each weather year for itself, unless this season's own weather is known to the last day. */
  KnownLuck known() {
    SoFar soFar = plan.scenario().soFar();
    boolean isSame =
        past.trays().isEmpty()
            || (soFar != null
                && soFar.weather().size() >= plan.scenario().season().dayOf(soFar.today()));
    int years = isSame ? 1 : plan.scenario().weather().size();
    return new KnownLuck(IntStream.range(0, years).mapToObj(this::in).toList());
  }

  private Map<KnownLuck.Tray, KnownTray> in(int year) {
    Clocks clocks = plan.clocks(year);
    Map<KnownLuck.Tray, KnownTray> known = new HashMap<>();
    for (Past.Known tray : past.trays()) {
      known.put(
          new KnownLuck.Tray(tray.line().sowing, tray.tray().number(), tray.tray().attempt()),
          new OfTray(clocks, tray).known());
    }
    return known;
  }

  /** The times of one tray. */
  private final class OfTray {
    private final Clocks clocks;
    private final SeasonPlan.Line line;
    private final Crop crop;
    private final TrayPast tray;
    private final TrayPast.Move sown;
    private final ThermalClock inHeat;
    private final TrayPast.@Nullable Move offHeat;

    OfTray(Clocks clocks, Past.Known known) {
      this.clocks = clocks;
      line = known.line();
      crop = line.crop;
      tray = known.tray();
      sown = tray.at(LoggedEvent.SOWN).orElseThrow();
      inHeat = clocks.emergence(line.cropNumber, placeOf(sown));
      offHeat = tray.at(LoggedEvent.OFF_HEAT).orElse(null);
    }

    private int placeOf(TrayPast.Move move) {
      String place = move.place();
      if (place == null) {
        throw new IllegalStateException("a tray that was " + move.event() + " stands nowhere");
      }
      return plan.placeNamed(place);
    }

    private double warmthBy(double time) {
      return Math.max(0, inHeat.at(time) - inHeat.at(plan.roundAt(sown.day())));
    }

    KnownTray known() {
      double after = 0;
      double by = Double.POSITIVE_INFINITY;
      if (offHeat != null) {
        ThermalClock onTable = clocks.growingOn(line.cropNumber, placeOf(offHeat));
        after = pace(onTable, tray.readyAfter());
        by = pace(onTable, tray.readyBy());
      }
      return new KnownTray(showing(), after, by, tray.at(LoggedEvent.OUTBREAK).isPresent());
    }

    /** How many times the median warmth of growing on a table gave by a day's round. */
    private double pace(ThermalClock onTable, double day) {
      if (Double.isInfinite(day)) {
        return day < 0 ? 0 : day;
      }
      double from = plan.roundAt(offHeat == null ? 0 : offHeat.day());
      double to = Math.max(from, day + plan.roundAt(0) + SeasonPlan.ROUNDING);
      return (onTable.at(to) - onTable.at(from)) / crop.growingOnDegreeDays();
    }

    private KnownShowing showing() {
      List<KnownShowing.Count> counts = new ArrayList<>();
      for (TrayPast.Move move : tray.moves()) {
        Integer plants = move.plants();
        if (move.event() == LoggedEvent.COUNTED && plants != null) {
          double at = warmthBy(plan.roundAt(move.day()));
          counts.add(new KnownShowing.Count(at, plants));
        }
      }
      double notBy = tray.notDueInHeat() < 0 ? 0 : warmthBy(plan.roundAt(tray.notDueInHeat()));
      double pulledAt = plan.roundAt(sown.day()) + crop.pullAfterDays() - SeasonPlan.ROUNDING;
      if (offHeat != null) {
        double left = plan.roundAt(offHeat.day());
        int atLeast =
            pulledAt <= left
                ? Math.min(crop.cellsToLeave(), crop.cellsNotToFail())
                : crop.cellsToLeave();
        return new KnownShowing(
            counts, notBy, warmthBy(left), atLeast, KnownShowing.NOT_FAILED, stand(left, pulledAt));
      }
      int thrownOut = tray.day(LoggedEvent.THROWN_OUT).orElse(-1);
      if (thrownOut >= 0 && pulledAt <= plan.roundAt(thrownOut)) {
        return new KnownShowing(
            counts, notBy, warmthBy(plan.roundAt(thrownOut)), 0, crop.cellsNotToFail(), null);
      }
      int pulledOn = plan.workingDay((int) Math.ceil(pulledAt - plan.roundAt(0)));
      if (thrownOut < 0 && pulledOn < plan.firstDay()) {
        return inHeatThoughPulled(counts, notBy, warmthBy(plan.roundAt(pulledOn)));
      }
      // Still in the heat; or thrown out before its time, which says nothing of its seed.
      return new KnownShowing(
          counts, notBy, Double.POSITIVE_INFINITY, 0, KnownShowing.NOT_FAILED, null);
    }

    /** It was due to be pulled and found no table: too thin, it would have been thrown out. */
    private KnownShowing inHeatThoughPulled(
        List<KnownShowing.Count> counts, double notBy, double pulled) {
      double by =
          counts.stream().mapToDouble(KnownShowing.Count::degreeDays).reduce(pulled, Math::max);
      int atLeast = Math.min(crop.cellsToLeave(), crop.cellsNotToFail());
      return new KnownShowing(counts, notBy, by, atLeast, KnownShowing.NOT_FAILED, null);
    }

    private KnownShowing.@Nullable Stand stand(double left, double pulledAt) {
      Integer plants = offHeat == null ? null : offHeat.plants();
      if (offHeat == null || plants == null) {
        return null;
      }
      ThermalClock onTable = clocks.emergence(line.cropNumber, placeOf(offHeat));
      double window = onTable.at(left + crop.standWindowDays()) - onTable.at(left);
      return new KnownShowing.Stand(
          warmthBy(left) + window, plants, slices(left), kept(left - pulledAt));
    }

    /** Of what showed, the share that has not grown leggy in so many days that it was overdue. */
    private double kept(double overdue) {
      double loss = plan.place(placeOf(sown)).stretchLossPerDay();
      return Math.pow(1 - loss, Math.max(0, overdue - 1));
    }

    /** A day each, the oldest first; a tray that was due within the last day kept all. */
    private List<KnownShowing.Slice> slices(double left) {
      double from =
          tray.notDueInHeat() < 0 ? plan.roundAt(sown.day()) : plan.roundAt(tray.notDueInHeat());
      List<KnownShowing.Slice> slices = new ArrayList<>();
      int days = kept(left - from) == 1 ? 0 : (int) Math.ceil(left - from - 1);
      for (int day = days; day > 0; day--) {
        slices.add(new KnownShowing.Slice(warmthBy(left - day), kept(day + 0.5)));
      }
      slices.add(new KnownShowing.Slice(warmthBy(left), 1));
      return slices;
    }
  }
}
