package propcap.study.size;

import java.util.List;
import org.apache.commons.math3.util.ResizableDoubleArray;
import propcap.farm.Scenario;
import propcap.study.size.Sizing.Candidate;
import propcap.study.size.Sizing.Found;
import propcap.study.statistics.MeanLimits;
import propcap.study.statistics.Samples;

/** A size, or a pair of sizes, and what has been seen of it so far. */
final class Rung {
  final int number;
  final List<Integer> spaces;
  final Scenario scenario;
  private final double yearlyCost;
  private final ResizableDoubleArray seen = new ResizableDoubleArray();
  MeanLimits limits = new MeanLimits(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
  Found found = Found.NEAR;

  Rung(int number, List<Integer> spaces, Scenario scenario, double yearlyCost) {
    this.number = number;
    this.spaces = spaces;
    this.scenario = scenario;
    this.yearlyCost = yearlyCost;
  }

  void see(List<Double> numbers) {
    numbers.forEach(seen::addElement);
  }

  /** The goal's measure, season by season. */
  double[] numbers() {
    return seen.getElements();
  }

  double mean() {
    return Samples.mean(numbers());
  }

  Candidate candidate() {
    return new Candidate(
        spaces, seen.getNumElements(), mean(), limits.low(), limits.high(), found, yearlyCost);
  }
}
