package propcap.report;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import propcap.farm.Climate;
import propcap.farm.Crop;
import propcap.farm.Labour;
import propcap.farm.Rounds;
import propcap.farm.Scenario;
import propcap.farm.WorkKind;
import propcap.report.kit.ListNumbers;

/** What a key means where nothing is written, as a grower would write it. */
public final class Defaults {
  public static final Map<String, String> CROP =
      Map.ofEntries(
          Map.entry("seeds-per-cell", "1"),
          Map.entry("germination.tray-correlation", "0"),
          Map.entry("leave-at", ListNumbers.percent(Crop.DEFAULT_LEAVE_AT)),
          Map.entry("pull-after", ListNumbers.days(Crop.DEFAULT_PULL_AFTER_DAYS)),
          Map.entry("stand-window", ListNumbers.days(Crop.DEFAULT_STAND_WINDOW_DAYS)),
          Map.entry("fail-below", ListNumbers.percent(Crop.DEFAULT_FAIL_BELOW)),
          Map.entry("growing-on.spread", ListNumbers.percent(Crop.GrowingOn.DEFAULT_SPREAD)),
          Map.entry("growing-on.loss", ListNumbers.percent(Crop.GrowingOn.DEFAULT_LOSS)),
          Map.entry(
              "growing-on.overheld-loss",
              ListNumbers.percent(Crop.GrowingOn.DEFAULT_OVERHELD_LOSS) + "/day"),
          Map.entry("potting-on.loss", ListNumbers.percent(Crop.PottingOn.DEFAULT_LOSS)),
          Map.entry(
              "hardening.fit-above", ListNumbers.temperature(Crop.Hardening.DEFAULT_FIT_ABOVE_C)),
          Map.entry(
              "hardening.kill-below", ListNumbers.temperature(Crop.Hardening.DEFAULT_KILL_BELOW_C)),
          Map.entry("hardening.frost-loss", ListNumbers.percent(Crop.Hardening.DEFAULT_FROST_LOSS)),
          Map.entry("hardening.loss", ListNumbers.percent(Crop.Hardening.DEFAULT_LOSS)),
          Map.entry("hardening.frost-risk", ListNumbers.percent(Crop.Hardening.DEFAULT_FROST_RISK)),
          Map.entry("hardening.offset", "0 days"));

  public static final Map<String, String> PLACE =
      Map.of(
          "climate.lift",
          "0",
          "climate.vent-at",
          ListNumbers.temperature(Climate.Heated.DEFAULT_VENT_AT_C),
          "stretch-loss",
          "0 %/day");

  public static final Map<String, String> HEAD = head();

  private Defaults() {}

  private static Map<String, String> head() {
    Map<String, String> head = new HashMap<>();
    head.put("frost-at", ListNumbers.temperature(Scenario.DEFAULT_FROST_AT_C));
    head.put("rounds.at", Rounds.DEFAULT_AT.toString());
    for (WorkKind work : WorkKind.values()) {
      String minutes =
          BigDecimal.valueOf(Labour.Minutes.DEFAULT.of(work)).stripTrailingZeros().toPlainString();
      head.put("labour.minutes." + work.word(), minutes + "/" + work.unit());
    }
    return Map.copyOf(head);
  }
}
