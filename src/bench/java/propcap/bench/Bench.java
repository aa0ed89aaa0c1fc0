package propcap.bench;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import propcap.files.FaultsException;

/** Runs the benchmark and prints rates and their ratios: the machine differs, the ratios less. */
public final class Bench {
  private Bench() {}

  /** Takes the scenario's file, and from the system property {@code older} an older jar. */
  public static void main(String[] args)
      throws RunnerException, IOException, InterruptedException, FaultsException {
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
    System.out.printf(
        "%n%s %s, %d processors, load %.1f%n",
        System.getProperty("java.vm.name"),
        System.getProperty("java.version"),
        Runtime.getRuntime().availableProcessors(),
        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
    double rate = rates.getOrDefault("oneThread x1", 0.0);
    Targets.tellAtLeast("seasons a second, one thread", rate, 2000, "");
    Targets.tell("time of a plan 10 times as long", ratio(rates, "oneThread x10"), 10.3, "times");
    Targets.tell("time of a plan 100 times as long", ratio(rates, "oneThread x100"), 110, "times");
    System.out.printf("two threads over one %.2f%n", 1 / ratio(rates, "twoThreads x1"));
    System.out.printf("share of time that goes to luck %.2f%n", ratio(rates, "luckAlone x1"));
    new Targets(System.getProperty("older", "")).measure();
  }

  /** How many times as long as a season of one thread. */
  private static double ratio(Map<String, Double> rates, String under) {
    return rates.getOrDefault("oneThread x1", 0.0) / rates.getOrDefault(under, 1.0);
  }
}
