package propcap.evidence.stages;

import java.util.List;
import java.util.function.ToDoubleFunction;
import propcap.evidence.Estimate;

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

  /** The mean and the middle 95 %. */
  Estimate estimate(ToDoubleFunction<StageParameters> figure) {
    WeightedPoints points = points(figure);
    return points.around(points.mean());
  }

  private WeightedPoints points(ToDoubleFunction<StageParameters> figure) {
    return draws.of(figures -> figure.applyAsDouble(belief.guess(figures)));
  }

  /** The guess in the middle: each figure's own median. */
  StageParameters middle() {
    return belief.guess(draws.medians());
  }
}
