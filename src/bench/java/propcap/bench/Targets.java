package propcap.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import propcap.files.FaultsException;
import propcap.files.LogReading;
import propcap.files.Nursery;
import propcap.web.Redraw;

/** What a grower waits for, each figure beside its target. Against an older jar by turns. */
final class Targets {
  private static final String SCENARIO = "scenarios/spring.yaml";
  private static final int TURNS = 5;

  private final Path folder;
  private final Command now = Command.propcap();
  private final String older;

  /** Takes an older jar, or nothing. */
  Targets(String older) throws IOException {
    this.older = older;
    folder = Files.createTempDirectory("bench");
  }

  static void tell(String what, double figure, double most, String unit) {
    tell(what, figure, most, figure <= most, unit);
  }

  static void tellAtLeast(String what, double figure, double least, String unit) {
    tell(what, figure, least, figure >= least, unit);
  }

  private static void tell(String what, double figure, double target, boolean met, String unit) {
    System.out.printf(
        Locale.ROOT,
        "%-58s %10.2f %-6s target %8.2f  %s%n",
        what,
        figure,
        unit,
        target,
        met ? "met" : "MISSED");
  }

  /** Runs them all, a few minutes. */
  void measure() throws IOException, InterruptedException, FaultsException {
    String out = folder.resolve("out").toString();
    String[] help = {"--help"};
    tell("--help, median of 5", seconds(help), 0.2, "s");
    String[] run = {"run", SCENARIO, "--seasons", "1000", "--out", out};
    tell("run of 1,000 springs, median of 5", seconds(run), 2, "s");
    String[] plan = {"plan", SCENARIO, "--tries", "200", "--seasons", "100", "--out", out};
    if (older.isEmpty()) {
      System.out.println("Against an older Propcap: say -Dolder=JAR");
    } else {
      tell(
          "the same, of an older one's, by turns",
          ratio(TURNS, Command.Took::seconds, run),
          0.6,
          "");
      tell(
          "processor time of 200 plans, the same",
          ratio(2, Command.Took::processor, plan),
          0.75,
          "");
    }
    double[] redraw = Redraw.medians(Files.createDirectory(folder.resolve("page")));
    System.out.printf(
        Locale.ROOT,
        "page after a change: first forecast %.2f s, all springs %.2f s, medians of 9%n",
        redraw[0],
        redraw[1]);
    double log = LogReading.median(Files.createDirectory(folder.resolve("log")));
    tell("a season's log of 5,000 rows is read, median of 9", log, 1, "s");
    Path nursery = Nursery.write(folder, 5000, 1_000_000, 200);
    String[] large = {
      "run", nursery.toString(), "--seasons", "100", "--threads", "2", "--out", out
    };
    tellWhole("100 springs of a nursery of 1,000,000 trays, 1.8 GB", "-Xmx1800m", 10, large);
    String[] many = {"run", SCENARIO, "--seasons", "100000", "--threads", "2", "--out", out};
    tellWhole("100,000 springs in 512 MB", "", Double.POSITIVE_INFINITY, many);
  }

  /** Minutes, which are none where it did not end well. */
  private void tellWhole(String what, String options, double most, String... words)
      throws IOException, InterruptedException {
    Command.Took took = now.run(options, folder, words);
    double minutes = took.exitCode() == 0 ? took.seconds() / 60 : Double.NaN;
    tell(what, minutes, most, "min");
  }

  private double seconds(String... words) throws IOException, InterruptedException {
    double[] seconds = new double[TURNS];
    for (int i = 0; i < TURNS; i++) {
      seconds[i] = whole(now, words).seconds();
    }
    return median(seconds);
  }

  /** The median ratio of pairs, each of which is run in the other order. */
  private double ratio(int turns, ToDoubleFunction<Command.Took> of, String... words)
      throws IOException, InterruptedException {
    double[] ratios = new double[turns];
    Command before = Command.older(older);
    for (int i = 0; i < turns; i++) {
      double[] took = new double[2];
      for (int j = 0; j < 2; j++) {
        int which = (i + j) % 2;
        took[which] = of.applyAsDouble(whole(which == 0 ? before : now, words));
      }
      ratios[i] = took[1] / took[0];
    }
    return median(ratios);
  }

  private Command.Took whole(Command command, String... words)
      throws IOException, InterruptedException {
    Command.Took took = command.run("", folder, words);
    if (took.exitCode() > 1) {
      throw new IllegalStateException(Files.readString(folder.resolve("said")));
    }
    return took;
  }

  private static double median(double[] numbers) {
    Arrays.sort(numbers);
    return (numbers[(numbers.length - 1) / 2] + numbers[numbers.length / 2]) / 2;
  }
}
