package propcap.bench;

import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** A command of a grower's, run as a process of its own and timed. */
final class Command {
  private final List<String> program;

  /**
   * What one run took.
   *
   * @param processor time of all its threads, as last seen some milliseconds before its end
   */
  record Took(double seconds, double processor, int exitCode) {}

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
    Duration processor = Duration.ZERO;
    while (process.isAlive()) {
      processor = process.info().totalCpuDuration().orElse(processor);
      Thread.sleep(5);
    }
    return new Took(
        (System.nanoTime() - begun) / 1e9, processor.toNanos() / 1e9, process.exitValue());
  }
}
