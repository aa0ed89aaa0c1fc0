package propcap.evidence.stages;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import propcap.Tried;
import propcap.evidence.Dice;
import propcap.evidence.stages.MadeLog.Habits;
import propcap.evidence.stages.MadeLog.Truth;
import propcap.farm.Crop;

/**
 * How often the 95 % limits of what a log of trays tells hold: logs made by the rules of
 * docs/model.md, each from figures of its own, drawn from what the crop list is taken to say.
 */
@Tag("guarantees")
class StagesGuaranteesTest {
  private static final int LOGS = 300;

  /** Three standard errors of 300 about 95 %. */
  private static final double LEAST = 91.2;

  private static final double MOST = 98.8;

  private static final Habits LATE = Habits.PLENTY.releasedOn(75);
  private static final Habits CROWDED = Habits.PLENTY.withRoomFor(40, 60);

  static Stream<Arguments> logs() {
    Crop planted = StagesTest.planted();
    Crop potted = StagesTest.potted();
    return Stream.of(
        Arguments.of("with rows ready", planted, Habits.PLENTY),
        Arguments.of("without rows ready", planted, Habits.PLENTY.withoutReady()),
        Arguments.of("with rows ready, out late", planted, LATE),
        Arguments.of("without rows ready, out late", planted, LATE.withoutReady()),
        Arguments.of("with rows ready, read half-way", planted, Habits.PLENTY.readOn(48)),
        Arguments.of(
            "without rows ready, read half-way", planted, Habits.PLENTY.readOn(48).withoutReady()),
        Arguments.of("with rows ready, pots that wait for room", potted, CROWDED),
        Arguments.of("without rows ready, pots that wait for room", potted, CROWDED.withoutReady()),
        Arguments.of(
            "without rows ready, pots out late",
            potted,
            Habits.PLENTY.releasedOn(105).withoutReady()));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("logs")
  void limitsHold(String what, Crop crop, Habits habits) {
    Map<String, Integer> held = new LinkedHashMap<>();
    for (int seed = 0; seed < LOGS; seed++) {
      Dice dice = new Dice(90_000 + seed);
      Truth truth = Truth.drawn(crop, dice);
      MadeLog log = MadeLog.of(crop, truth, habits, dice);
      count(held, Stages.fit(log.scenario(), log.trays(), MadeLog.LIST_WEIGHS), truth);
    }
    Map<String, Double> percents = new LinkedHashMap<>();
    held.forEach((figure, times) -> percents.put(figure, 100.0 * times / LOGS));
    Tried.row(
        "guarantees",
        "95 % limits of what a log of trays tells",
        LOGS + " logs of 30 trays " + what,
        percents.entrySet().stream()
            .map(e -> e.getKey() + String.format(Locale.ROOT, " %.1f %%", e.getValue()))
            .collect(Collectors.joining(", ")));
    assertThat(percents)
        .allSatisfy((figure, percent) -> assertThat(percent).as(figure).isBetween(LEAST, MOST));
  }

  private static void count(Map<String, Integer> held, Stages stages, Truth truth) {
    CropStages fit = stages.crops().get(0);
    count(held, "days on the table", fit.takesDays(), truth.takesDays());
    count(held, "their spread", fit.spread(), truth.spread());
    count(held, "table loss", fit.loss(), truth.loss());
    count(held, "outbreaks", fit.outbreakChance(), truth.chance());
    count(held, "severity", fit.severity(), truth.severity());
    count(held, "days kept", fit.holdsDays(), truth.holdsDays());
    count(held, "held too long", fit.overheldLoss(), truth.overheld());
    Learned potting = fit.pottingLoss();
    if (potting != null) {
      count(held, "potting", potting, truth.potting());
    }
    count(held, "hardening", fit.hardeningLoss(), truth.hardening());
  }

  private static void count(
      Map<String, Integer> held, String figure, Learned learned, double truth) {
    held.merge(figure, learned.learned().holds(truth) ? 1 : 0, Integer::sum);
  }
}
