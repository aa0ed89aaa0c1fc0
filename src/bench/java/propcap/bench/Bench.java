package propcap.bench;

import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;

/** Runs the benchmark and prints rates and their ratios: the machine differs, the ratios less. */
public final class Bench {
  private Bench() {}

  /** Takes the scenario's file. */
  public static void main(String[] args) throws RunnerException {
    Collection<RunResult> results =
        new Runner(
                new OptionsBuilder()
                    .include(SeasonsBenchmark.class.getSimpleName())
                    .jvmArgsAppend("-Dscenario=" + args[0], "-Xmx512m")
                    .build())
            .run();
    Map<String, Double> rates = new HashMap<>();
    System.out.printf("%n%-24s %12s %10s%n", "seasons a second", "rate", "+- 99.9 %");
    for (RunResult result : results) {
      String name =
          result.getPrimaryResult().getLabel() + " x" + result.getParams().getParam("times");
      rates.put(name, result.getPrimaryResult().getScore());
      System.out.printf(
          "%-24s %12.1f %10.1f%n",
          name, result.getPrimaryResult().getScore(), result.getPrimaryResult().getScoreError());
    }
    ratio(rates, "two threads over one", "twoThreads x1", "oneThread x1");
    ratio(rates, "time of a plan 100 times as long", "oneThread x1", "oneThread x100");
    ratio(rates, "share of time that goes to luck", "oneThread x1", "luckAlone x1");
  }

  private static void ratio(Map<String, Double> rates, String what, String over, String under) {
    System.out.printf(
        "%-36s %8.2f%n", what, rates.getOrDefault(over, 0.0) / rates.getOrDefault(under, 1.0));
  }
}
