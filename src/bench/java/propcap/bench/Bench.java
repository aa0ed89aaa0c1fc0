package propcap.bench;

import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.Locale;

/** Prints each target beside its figure. The machine differs; ratios by turns differ less. */
public final class Bench {
  private Bench() {}

  /**
   * Takes the scenario's file, and from system properties {@code older} an older jar and {@code
   * springs} how many springs of the nursery are tried.
   */
  public static void main(String[] args) throws Exception {
    load();
    SeasonTimes.tell(Path.of(args[0]));
    load();
    new Targets(System.getProperty("older", ""), Integer.getInteger("springs", 100)).measure();
    load();
  }

  static void load() {
    System.out.printf(
        Locale.ROOT,
        "-- %s %s, %d processors, load %.1f%n",
        System.getProperty("java.vm.name"),
        System.getProperty("java.version"),
        Runtime.getRuntime().availableProcessors(),
        ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage());
  }
}
