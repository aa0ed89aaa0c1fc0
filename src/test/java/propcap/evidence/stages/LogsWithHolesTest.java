package propcap.evidence.stages;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import propcap.evidence.Dice;
import propcap.evidence.stages.MadeLog.Habits;
import propcap.evidence.stages.MadeLog.Truth;
import propcap.evidence.stages.TrayEvidence.Readiness;
import propcap.farm.Crop;
import propcap.farm.Crops;
import propcap.farm.LoggedTray;

/** Logs of any crop with rows and counts missing at random: each is answered, and in bounds. */
class LogsWithHolesTest {
  private static Crop crop(Dice dice) {
    Crops crops = new Crops();
    crops.cells = 6 + (int) (200 * dice.uniform());
    crops.takesDays = 3 + 40 * dice.uniform();
    crops.spread = dice.uniform() < 0.2 ? 0 : 0.3 * dice.uniform();
    crops.loss = dice.uniform() < 0.2 ? 0 : 0.2 * dice.uniform();
    crops.dampingOff =
        dice.uniform() < 0.3
            ? Crop.DampingOff.NONE
            : new Crop.DampingOff(dice.uniform(), 0.05 + 0.9 * dice.uniform());
    crops.holdsDays = dice.uniform() < 0.2 ? 0 : 30 * dice.uniform();
    crops.overheldLossPerDay = dice.uniform() < 0.2 ? 0 : 0.2 * dice.uniform();
    if (dice.uniform() < 0.5) {
      crops.pottingOn =
          new Crop.PottingOn(
              Crop.PottingOn.When.ALWAYS, 18, 20 * dice.uniform(), 20 * dice.uniform(), 0.02);
    }
    crops.hardening = new Crop.Hardening(7, 2, 0, 0.1, 0.3 * dice.uniform(), 1, 0);
    return crops.make();
  }

  /** Figures that may have nothing to do with those listed. */
  private static Truth truth(Crop listed, Dice dice) {
    return dice.uniform() < 0.5 ? Truth.drawn(listed, dice) : Truth.listed(crop(dice));
  }

  private static List<LoggedTray> withHoles(List<LoggedTray> trays, Dice dice) {
    double rows = dice.uniform();
    double counts = dice.uniform();
    List<LoggedTray> holed = new ArrayList<>();
    for (LoggedTray tray : trays) {
      List<LoggedTray.Entry> kept =
          tray.entries().stream()
              .filter(e -> dice.uniform() < rows)
              .map(
                  e ->
                      dice.uniform() < counts ? e : new LoggedTray.Entry(e.event(), e.date(), null))
              .toList();
      if (!kept.isEmpty()) {
        holed.add(new LoggedTray(tray.sowing(), tray.tray(), tray.crop(), tray.table(), kept));
      }
    }
    return holed;
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 4, 5, 6})
  void everyLogIsAnswered(int seed) {
    answer(seed);
  }

  static void answer(int seed) {
    Dice dice = new Dice(40_000 + seed);
    Crop crop = crop(dice);
    Habits habits =
        Habits.PLENTY
            .of(1 + (int) (12 * dice.uniform()))
            .releasedOn((int) (120 * dice.uniform()))
            .readOn(25 + (int) (150 * dice.uniform()));
    MadeLog log =
        MadeLog.of(
            crop, truth(crop, dice), dice.uniform() < 0.5 ? habits : habits.withoutReady(), dice);
    List<LoggedTray> trays = withHoles(log.trays(), dice);
    if (trays.isEmpty()) {
      return;
    }
    double weight = List.of(1.0, 10.0, 1e6).get(seed % 3);
    CropStages fit = Stages.fit(log.scenario(), trays, weight).crops().get(0);
    assertThat(Stream.of(Readiness.values()).mapToInt(fit::count).sum()).isEqualTo(trays.size());
    Stream.of(
            fit.loss(),
            fit.outbreakChance(),
            fit.severity(),
            fit.hardeningLoss(),
            fit.overheldLoss(),
            fit.pottingLoss())
        .filter(Objects::nonNull)
        .flatMap(l -> Stream.of(l.listed(), l.alone(), l.learned()))
        .filter(Objects::nonNull)
        .forEach(e -> assertThat(List.of(e.low(), e.high())).allMatch(v -> v >= 0 && v <= 1));
    assertThat(fit.holdsDays().learned().low()).isNotNegative();
    assertThat(fit.takesDays().learned().low()).isPositive();
    assertThat(fit.outbreaks()).allMatch(chance -> chance >= 0 && chance <= 1);
    assertThat(fit.learned().growingOn().takesDays()).isPositive();
  }
}
