package propcap.bench;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** A command of a grower's, run as a process of its own and timed. */
final class Command {
  private final List<String> program;

  /**
   * What one run took.
   *
   * @param processor seconds of all its threads, as last seen some milliseconds before its end
   * @param residentMb the most that it held of the machine's memory, seen in the same way, 10^6
   *     bytes; 0 where the machine does not tell
   */
  record Took(double seconds, double processor, double residentMb, int exitCode) {}

  private Command(List<String> program) {
    this.program = program;
  }

  /** As a grower starts it. */
  static Command propcap() {
    return new Command(List.of("./propcap"));
  }

  /** An older Propcap, as its start script ran it. */
  static Command older(String jar) {
    return new Command(List.of("java", "-Xmx512m", "-jar", jar));
  }

  Took run(String options, Path out, String... words) throws IOException, InterruptedException {
    List<String> all = new ArrayList<>(program);
    all.addAll(List.of(words));
    ProcessBuilder builder =
        new ProcessBuilder(all)
            .redirectErrorStream(true)
            .redirectOutput(ProcessBuilder.Redirect.to(out.resolve("said").toFile()))
            .redirectInput(new File("/dev/null"));
    builder.environment().put("PROPCAP_OPTS", options);
    long begun = System.nanoTime();
    Process process = builder.start();
    Path status = Path.of("/proc", Long.toString(process.pid()), "status");
    Duration processor = Duration.ZERO;
    double residentMb = 0;
    while (process.isAlive()) {
      processor = process.info().totalCpuDuration().orElse(processor);
      residentMb = Math.max(residentMb, residentMb(status));
      Thread.sleep(5);
    }
    return new Took(
        (System.nanoTime() - begun) / 1e9,
        processor.toNanos() / 1e9,
        residentMb,
        process.exitValue());
  }

  /** As Linux tells it. */
  private static double residentMb(Path status) {
    try (Stream<String> lines = Files.lines(status)) {
      return lines
          .filter(line -> line.startsWith("VmHWM:"))
          .mapToDouble(line -> Double.parseDouble(line.replaceAll("[^0-9]", "")) * 1024 / 1e6)
          .findFirst()
          .orElse(0);
    } catch (IOException | UncheckedIOException e) {
      return 0;
    }
  }
}
