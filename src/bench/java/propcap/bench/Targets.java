package propcap.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import propcap.bench.Command.Took;
import propcap.files.Nursery;
import propcap.files.text.FaultsException;
import propcap.web.Redraw;

/** What a grower waits for, each figure beside its target. Against an older jar by turns. */
final class Targets {
  private static final String SCENARIO = "scenarios/spring.yaml";
  private static final int TURNS = 5;

  private final Path folder;
  private final Command now = Command.propcap();
  private final String older;
  private final int springs;

  /**
   * Takes an older jar, or nothing.
   *
   * @param springs of the nursery; 0 leaves out what takes many minutes
   */
  Targets(String older, int springs) throws IOException {
    this.older = older;
    this.springs = springs;
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

  /** Runs them all, the longest last. */
  void measure() throws IOException, InterruptedException, FaultsException {
    // Each kind of answer has a folder of its own: no other's files are replaced.
    String out = folder.resolve("run").toString();
    List<Took[]> help = turns(TURNS, "--help");
    tell("--help", median(help, pair -> pair[0].seconds()), 0.2, "s");
    System.out.printf(
        Locale.ROOT, "  %.2f s of processor time%n", median(help, pair -> pair[0].processor()));
    List<Took[]> run = turns(TURNS, "run", SCENARIO, "--seasons", "1000", "--out", out);
    tell("run of 1,000 springs", median(run, pair -> pair[0].seconds()), 2, "s");
    System.out.printf(
        Locale.ROOT,
        "  %.2f s of processor time, %.0f MB resident%n",
        median(run, pair -> pair[0].processor()),
        median(run, pair -> pair[0].residentMb()));
    if (older.isEmpty()) {
      System.out.println("Against an older Propcap: say -Dolder=JAR");
    } else {
      tellRatio("run of 1,000 springs over the older, by the clock", run, Took::seconds, 0.6);
      tellRatio("the same in processor time", run, Took::processor, 0.6);
      List<Took[]> plan =
          turns(
              2,
              "plan",
              SCENARIO,
              "--tries",
              "50",
              "--seasons",
              "100",
              "--out",
              folder.resolve("plan").toString());
      tellRatio("plan of 50 tries over the older, processor time", plan, Took::processor, 0.75);
    }
    Bench.load();
    double[] redraw = Redraw.medians(Files.createDirectory(folder.resolve("page")));
    tell("page after a change: first forecast", redraw[0], 0.2, "s");
    tell("page after a change: all 1,000 springs", redraw[1], 0.7, "s");
    System.out.printf(
        Locale.ROOT,
        "  %.2f s and %.2f s of processor time, on two threads%n",
        redraw[2],
        redraw[3]);
    double log = LogReading.median(Files.createDirectory(folder.resolve("log")));
    tell("a season's log of 5,000 rows is read", log, 1, "s");
    Bench.load();
    tellWhole("run --precision 0.03%", "run", SCENARIO, "--precision", "0.03%", "--out", out);
    if (springs > 0) {
      tellLong(out);
    }
  }

  private void tellLong(String out) throws IOException, InterruptedException {
    tellWhole("run of 100,000 springs", "run", SCENARIO, "--seasons", "100000", "--out", out);
    tellWhole(
        "compare of two, 100,000 springs of each",
        "compare",
        SCENARIO,
        "scenarios/second-chamber.yaml",
        "--seasons",
        "100000",
        "--out",
        folder.resolve("compare").toString());
    tellNursery(Nursery.write(folder, 5000, 1_000_000, 200).toString(), out);
  }

  private void tellNursery(String nursery, String out) throws IOException, InterruptedException {
    Bench.load();
    Took took =
        now.run(
            "-Xmx1800m",
            folder,
            "run",
            nursery,
            "--seasons",
            Integer.toString(springs),
            "--exactly",
            "--threads",
            "2",
            "--out",
            out);
    String what = springs + " springs of a nursery of 1,000,000 trays";
    tell(what, endedWell(took) ? took.seconds() / 60 : Double.NaN, 10, "min");
    tell("its memory, resident", endedWell(took) ? took.residentMb() : Double.NaN, 2000, "MB");
    System.out.printf(Locale.ROOT, "  %.0f s of processor time%n", took.processor());
  }

  /** Whether it goes in the 512 MB of heap that a grower's start script gives it. */
  private void tellWhole(String what, String... words) throws IOException, InterruptedException {
    Bench.load();
    Took took = now.run("", folder, words);
    System.out.printf(
        Locale.ROOT,
        "%-58s %s: %.0f s, %.0f s of processor time, %.0f MB resident%n",
        what + " in a heap of 512 MB",
        endedWell(took) ? "met" : "MISSED",
        took.seconds(),
        took.processor(),
        took.residentMb());
  }

  /** Exit code 3 is an answer, too: no. */
  private static boolean endedWell(Took took) {
    return took.exitCode() == 0 || took.exitCode() == 3;
  }

  /** This Propcap and, where there is one, the older, in pairs of which each second is turned. */
  private List<Took[]> turns(int pairs, String... words) throws IOException, InterruptedException {
    List<Took[]> all = new ArrayList<>();
    Command before = older.isEmpty() ? now : Command.older(older);
    for (int i = 0; i < pairs; i++) {
      Took[] pair = new Took[2];
      for (int j = 0; j < 2; j++) {
        int which = (i + j) % 2;
        if (which == 0 || !older.isEmpty()) {
          pair[which] = whole(which == 0 ? now : before, words);
        }
      }
      all.add(pair);
    }
    return all;
  }

  private static void tellRatio(
      String what, List<Took[]> pairs, ToDoubleFunction<Took> of, double most) {
    double[] ratios =
        pairs.stream()
            .mapToDouble(pair -> of.applyAsDouble(pair[0]) / of.applyAsDouble(pair[1]))
            .sorted()
            .toArray();
    tell(what, median(ratios), most, "");
    System.out.printf(
        Locale.ROOT,
        "  median of %d pairs, %.2f to %.2f%n",
        ratios.length,
        ratios[0],
        ratios[ratios.length - 1]);
  }

  private static double median(List<Took[]> pairs, ToDoubleFunction<Took[]> of) {
    return median(pairs.stream().mapToDouble(of).sorted().toArray());
  }

  private Took whole(Command command, String... words) throws IOException, InterruptedException {
    Took took = command.run("", folder, words);
    if (!endedWell(took)) {
      throw new IllegalStateException(Files.readString(folder.resolve("said")));
    }
    return took;
  }

  private static double median(double[] numbers) {
    return (numbers[(numbers.length - 1) / 2] + numbers[numbers.length / 2]) / 2;
  }
}
