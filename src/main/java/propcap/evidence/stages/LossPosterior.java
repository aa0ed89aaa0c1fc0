package propcap.evidence.stages;

import java.util.List;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import propcap.evidence.Estimate;
import propcap.evidence.stages.StagePrior.Figure;

/** What is believed of the figures that losses hang on after trays were held against them. */
final class LossPosterior {
  private final StagePrior belief;
  private final TemperedDraws draws;

  LossPosterior(StagePrior belief, List<TrayLikelihood> trays) {
    this.belief = belief;
    draws =
        TemperedDraws.of(
            belief::logDensity,
            figures -> {
              StageParameters guess = belief.guess(figures);
              OutbreakChance outbreak = new OutbreakChance(guess.severity());
              double sum = 0;
              for (TrayLikelihood tray : trays) {
                sum += tray.log(guess, outbreak);
              }
              return sum;
            },
            belief.mean(),
            belief.sd());
  }

  /**
   * What is learned of a figure.
   *
   * @param reading of a guess
   * @param alone what the log says by itself; null: nothing
   * @param trays that tell of it
   */
  Learned learned(
      Figure figure,
      ToDoubleFunction<StageParameters> reading,
      @Nullable Estimate alone,
      int trays) {
    Estimate listed = belief.estimate(figure);
    return trays == 0
        ? Learned.nothing(listed)
        : new Learned(listed, alone, estimate(reading), trays);
  }

  /** The mean and the middle 95 %. */
  Estimate estimate(ToDoubleFunction<StageParameters> reading) {
    return draws.of(figures -> reading.applyAsDouble(belief.guess(figures))).estimate();
  }

  /** The guess in the middle: each figure's own median. */
  StageParameters middle() {
    return belief.guess(draws.medians());
  }
}
