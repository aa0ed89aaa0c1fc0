package propcap.season;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import propcap.Tried;
import propcap.chance.Luck;
import propcap.chance.SeasonLuck;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.Farms;
import propcap.farm.Labour;
import propcap.farm.LoggedEvent;
import propcap.farm.Scenario;
import propcap.past.WrittenTray;

/**
 * The forecast from a log by force: of many simulated seasons those are kept whose log up to today
 * is the same, row by row, and what came of them is held against the forecast from that log. One
 * spring, so that all seasons have the same weather.
 *
 * <p>Outbreaks here seldom kill a whole tray: that one which went on had a plant left is met by
 * leaving it one, not by the law of all its losses, which trays of eight cells would show.
 */
@Tag("guarantees")
class ForecastByForceGuaranteeTest {
  private static final int SEASONS = 60_000;
  private static final int SPRINGS = 20_000;

  /** Standard errors: 6e-5 each, and some twenty are compared. */
  private static final double K = 4;

  /** Seasons with the same log, of which one can tell something. */
  private static final int LEAST = 100;

  private final Farms farm = new Farms();
  private final Crops cosmos = new Crops();

  ForecastByForceGuaranteeTest() {
    farm.sowings.add(Farms.sowing("a", 0, 2, 0, 33));
    farm.stretchLossPerDay = 0.1;
    cosmos.cells = 8;
    cosmos.germination = new Crop.Germination(0.75, 12, 0.1);
    cosmos.emergence = new Crop.Emergence(5, 30, 40, 20, 5, 7.5);
    cosmos.pullAfterDays = 9;
    cosmos.failBelow = 0.3;
    cosmos.standWindowDays = 3;
    cosmos.takesDays = 11;
    cosmos.spread = 0.2;
    cosmos.loss = 0.05;
    cosmos.dampingOff = new Crop.DampingOff(0.1, 0.3);
    cosmos.holdsDays = 4;
    cosmos.overheldLossPerDay = 0.05;
    cosmos.hardening = new Crop.Hardening(4, 2, -1, 0.2, 0.05, 1, 0);
    // A night of frost, and a cold one, late in the season.
    farm.minC[24] = -2;
    farm.minC[28] = 1;
  }

  /** One tray, which comes up on two days and mostly well, so that many have the same log. */
  private void oneTray() {
    farm.sowings.clear();
    farm.sowings.add(Farms.sowing("a", 0, 1, 0, 33));
    cosmos.germination = new Crop.Germination(0.9, 12, 0.1);
    cosmos.emergence = new Crop.Emergence(5, 30, 40, 20, 5, 5.4);
    cosmos.spread = 0.1;
  }

  /** What stood where on the morning of a day: the last event of each tray. */
  private static boolean isAt(List<WrittenTray> log, LoggedEvent... last) {
    return log.size() == last.length
        && IntStream.range(0, last.length)
            .allMatch(
                i -> {
                  List<WrittenTray.Entry> entries = log.get(i).entries();
                  return entries.get(entries.size() - 1).event() == last[i];
                });
  }

  private void compare(
      String what, int today, PretendedLog.Counting counting, LoggedEvent... state) {
    farm.crops = List.of(cosmos.make());
    Scenario scenario = farm.make();
    FromADayOn day = new FromADayOn(scenario, today, counting);
    Map<List<WrittenTray>, List<Integer>> byLog = new HashMap<>();
    Luck.Reader reader = day.plan().luck(71).reader();
    for (int n = 0; n < SEASONS; n++) {
      SeasonLuck luck = reader.season(n);
      List<WrittenTray> log = day.log(luck);
      if (isAt(log, state)) {
        byLog
            .computeIfAbsent(log, k -> new ArrayList<>())
            .add(House.season(day.plan(), luck).onTime(0));
      }
    }
    List<Map.Entry<List<WrittenTray>, List<Integer>>> often =
        byLog.entrySet().stream()
            .sorted((a, b) -> b.getValue().size() - a.getValue().size())
            .filter(e -> e.getValue().size() >= LEAST)
            .limit(2)
            .toList();
    assertThat(often).as(what).isNotEmpty();
    List<String> told = new ArrayList<>();
    for (Map.Entry<List<WrittenTray>, List<Integer>> same : often) {
      told.add(compare(what, day, same.getKey(), same.getValue()));
    }
    Tried.row(
        "guarantees",
        "what is forecast from a log is what came of the seasons that had the same log: " + what,
        SEASONS
            + " simulated springs of "
            + state.length
            + (state.length == 1 ? " tray" : " trays")
            + ", of which so many had the commonest such logs: "
            + often.stream()
                .map(e -> String.valueOf(e.getValue().size()))
                .collect(Collectors.joining(", ")),
        String.join("; ", told));
  }

  private static String compare(
      String what, FromADayOn day, List<WrittenTray> log, List<Integer> came) {
    double[] byForce = came.stream().mapToDouble(c -> c).toArray();
    double[] forecast = onTime(day.forecast(log, SPRINGS, 72, FromADayOn.Drawn.GIVEN_THE_LOG));
    double[] anew = onTime(day.forecast(log, SPRINGS, 72, FromADayOn.Drawn.ANEW));
    String as =
        String.format(
            Locale.ROOT,
            "by force %.2f plants on time, forecast %.2f (drawn anew %.2f), shares at most %.1f"
                + " standard errors apart (anew %.1f)",
            Mean.of(byForce).mean(),
            Mean.of(forecast).mean(),
            Mean.of(anew).mean(),
            farthest(byForce, forecast),
            farthest(byForce, anew));
    assertThat(farthest(byForce, forecast)).as(what + ", " + log + ": " + as).isLessThan(K);
    assertThat(Mean.of(byForce).errorsFrom(Mean.of(forecast))).as(what + as).isLessThan(K);
    return as;
  }

  private static double[] onTime(int[][] forecast) {
    return Arrays.stream(forecast).mapToDouble(f -> f[0]).toArray();
  }

  /** Standard errors by which the shares at or below some number of plants lie apart at most. */
  private static double farthest(double[] one, double[] other) {
    TreeMap<Double, double[]> counts = new TreeMap<>();
    for (double v : one) {
      counts.computeIfAbsent(v, k -> new double[2])[0] += 1.0 / one.length;
    }
    for (double v : other) {
      counts.computeIfAbsent(v, k -> new double[2])[1] += 1.0 / other.length;
    }
    double most = 0;
    double a = 0;
    double b = 0;
    for (double[] c : counts.values()) {
      a += c[0];
      b += c[1];
      double share = (a * one.length + b * other.length) / (one.length + other.length);
      double error = Math.sqrt(share * (1 - share) * (1.0 / one.length + 1.0 / other.length));
      if (Math.min(share, 1 - share) * one.length > 10) {
        most = Math.max(most, Math.abs(a - b) / error);
      }
    }
    return most;
  }

  @Test
  void inTheHeatNotCounted() {
    compare(
        "in the heat, not counted",
        6,
        PretendedLog.Counting.NOTHING,
        LoggedEvent.SOWN,
        LoggedEvent.SOWN);
  }

  @Test
  void oneInTheHeatOneOffNotCounted() {
    compare(
        "one still in the heat, one off it",
        8,
        PretendedLog.Counting.NOTHING,
        LoggedEvent.SOWN,
        LoggedEvent.OFF_HEAT);
  }

  @Test
  void inTheHeatCounted() {
    compare(
        "in the heat, counted",
        6,
        PretendedLog.Counting.ALL,
        LoggedEvent.COUNTED,
        LoggedEvent.COUNTED);
  }

  @Test
  void offTheHeatNotCounted() {
    compare(
        "off the heat, not counted",
        11,
        PretendedLog.Counting.NOTHING,
        LoggedEvent.OFF_HEAT,
        LoggedEvent.OFF_HEAT);
  }

  @Test
  void offTheHeatPerhapsPulled() {
    cosmos.germination = new Crop.Germination(0.5, 12, 0.1);
    compare(
        "off the heat on the day on which trays are pulled",
        12,
        PretendedLog.Counting.STANDS,
        LoggedEvent.OFF_HEAT,
        LoggedEvent.OFF_HEAT);
  }

  @Test
  void failedAndSownAgainOrOff() {
    cosmos.germination = new Crop.Germination(0.5, 12, 0.1);
    compare(
        "one thrown out as failed, one off the heat",
        12,
        PretendedLog.Counting.NOTHING,
        LoggedEvent.THROWN_OUT,
        LoggedEvent.OFF_HEAT);
  }

  @Test
  void waitingInTheHeatForATable() {
    // On day 9 a tray with fewer than five of eight would have been thrown out, room or not.
    farm.house = 1;
    cosmos.leaveAt = 0.75;
    cosmos.failBelow = 0.6;
    compare(
        "one off the heat, one that finds no room",
        12,
        PretendedLog.Counting.NOTHING,
        LoggedEvent.OFF_HEAT,
        LoggedEvent.SOWN);
  }

  @Test
  void waitingInTheHeatForHands() {
    // To move a tray takes the hours of five days: the other one waits, due or not.
    farm.labour = new Labour(0.1, new Labour.Minutes(1, 30, 0, 0, 0), List.of());
    cosmos.leaveAt = 0.75;
    cosmos.failBelow = 0.6;
    compare(
        "one off the heat, one that finds no hands",
        11,
        PretendedLog.Counting.NOTHING,
        LoggedEvent.OFF_HEAT,
        LoggedEvent.SOWN);
  }

  @Test
  void growingOnWithoutHandsToPotOn() {
    farm.labour = new Labour(0.1, new Labour.Minutes(0, 0, 0, 5, 0), List.of());
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 4, 6, 4, 0.1);
    cosmos.emergence = new Crop.Emergence(5, 30, 40, 20, 5, 5.4);
    compare(
        "one potted on, one that finds no hands",
        20,
        PretendedLog.Counting.STANDS,
        LoggedEvent.POTTED_ON,
        LoggedEvent.OFF_HEAT);
  }

  @Test
  void aLeggyStandCounted() {
    farm.house = 1;
    cosmos.takesDays = 3;
    compare(
        "one that waited in the heat, its stand counted",
        16,
        PretendedLog.Counting.STANDS,
        LoggedEvent.MOVED_OUT,
        LoggedEvent.OFF_HEAT);
  }

  @Test
  void growingOnWithRoomOutside() {
    compare(
        "growing on, room outside",
        18,
        PretendedLog.Counting.STANDS,
        LoggedEvent.OFF_HEAT,
        LoggedEvent.OFF_HEAT);
  }

  @Test
  void growingOnWithoutRoomOutside() {
    farm.yard = 1;
    compare(
        "growing on, no room outside",
        20,
        PretendedLog.Counting.NOTHING,
        LoggedEvent.MOVED_OUT,
        LoggedEvent.OFF_HEAT);
  }

  @Test
  void inPots() {
    oneTray();
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.ALWAYS, 4, 6, 4, 0.1);
    compare(
        "in pots, those that took counted",
        19,
        PretendedLog.Counting.STANDS,
        LoggedEvent.POTTED_ON);
  }

  @Test
  void inPotsNotCounted() {
    cosmos.pottingOn = new Crop.PottingOn(Crop.PottingOn.When.IF_HELD, 4, 6, 4, 0.1);
    farm.yard = 1;
    cosmos.emergence = new Crop.Emergence(5, 30, 40, 20, 5, 5.4);
    compare(
        "potted on for lack of room outside, not counted",
        24,
        PretendedLog.Counting.NOTHING,
        LoggedEvent.MOVED_OUT,
        LoggedEvent.POTTED_ON);
  }

  @Test
  void hardening() {
    oneTray();
    compare(
        "hardening, plants counted when they were moved",
        27,
        PretendedLog.Counting.STANDS,
        LoggedEvent.MOVED_OUT);
  }

  @Test
  void hardeningNotCounted() {
    oneTray();
    compare("hardening, not counted", 25, PretendedLog.Counting.NOTHING, LoggedEvent.MOVED_OUT);
  }
}
