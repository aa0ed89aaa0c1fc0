package propcap.disk;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Another process with the tests' classes, which may be killed. */
public final class Child implements AutoCloseable {
  private final Process process;
  private final BufferedReader out;

  private Child(Process process) {
    this.process = process;
    this.out =
        new BufferedReader(new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
  }

  public static List<String> java(Class<?> main, String... args) {
    List<String> command =
        new ArrayList<>(
            List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path", ""),
                "-Xmx256m",
                "-XX:TieredStopAtLevel=1",
                main.getName()));
    command.addAll(List.of(args));
    return command;
  }

  public static Child start(Class<?> main, String... args) throws IOException {
    return start(java(main, args));
  }

  /** What it prints, faults too, is read by lines. */
  public static Child start(List<String> command) throws IOException {
    return new Child(new ProcessBuilder(command).redirectErrorStream(true).start());
  }

  public long pid() {
    return process.pid();
  }

  /** Waits for its next line; empty where it has ended. */
  public String line() throws IOException {
    String line = out.readLine();
    return line == null ? "" : line;
  }

  /** Waits for its end, and says all that it printed. */
  public String rest() throws IOException {
    StringBuilder rest = new StringBuilder();
    for (String line = out.readLine(); line != null; line = out.readLine()) {
      rest.append(line).append('\n');
    }
    return rest.toString();
  }

  public int exitCode() throws InterruptedException {
    return process.waitFor();
  }

  /** Ends it so that it can do nothing more. */
  public void kill() throws InterruptedException {
    process.destroyForcibly();
    int unused = process.waitFor();
  }

  @Override
  public void close() {
    process.destroyForcibly();
  }
}
