package propcap.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;

/**
 * A real cluster of this machine's loopback: a master and workers, each a process of its own, of
 * the Spark that {@code -Pspark} puts beside the jar. Propcap is not among their classes.
 */
final class SparkCluster implements AutoCloseable {
  static final Path JAR = Path.of("target", "propcap-spark.jar").toAbsolutePath();
  private static final Path PARTS = Path.of("target", "spark-jars").toAbsolutePath();

  /** What Spark's own launcher opens. */
  private static final List<String> ROOMS =
      List.of(
          "java.lang",
          "java.lang.invoke",
          "java.lang.reflect",
          "java.io",
          "java.net",
          "java.nio",
          "java.util",
          "java.util.concurrent",
          "java.util.concurrent.atomic",
          "sun.nio.ch",
          "sun.nio.cs",
          "sun.security.action",
          "sun.util.calendar");

  private final Path home;
  private final int port;
  private final List<Started> processes = new ArrayList<>();

  /** With so many workers of so many cores each, and 600 MB for each core. */
  SparkCluster(Path home, int workers, int cores) throws IOException, InterruptedException {
    this.home = home;
    Files.createSymbolicLink(home.resolve("jars"), PARTS);
    try (ServerSocket free = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      port = free.getLocalPort();
    }
    start("master.Master", "I have been elected leader", "--port", String.valueOf(port));
    for (int w = 0; w < workers; w++) {
      start(
          "worker.Worker",
          "Successfully registered with master",
          "--cores",
          String.valueOf(cores),
          "--memory",
          600 * cores + "m",
          "--work-dir",
          home.resolve("work" + w).toString(),
          address());
    }
  }

  String address() {
    return "spark://127.0.0.1:" + port;
  }

  private void start(String what, String ready, String... args)
      throws IOException, InterruptedException {
    List<String> java = java(List.of("-Xmx256m"), PARTS + "/*", "org.apache.spark.deploy." + what);
    java.addAll(List.of("--host", "127.0.0.1", "--webui-port", "0"));
    java.addAll(Arrays.asList(args));
    Started started = new Started(home, java);
    processes.add(started);
    started.await(ready, 1);
  }

  /** Ends a worker and the executor that it started, as when its machine loses power. */
  void killWorker(int worker) throws InterruptedException {
    Process process = processes.get(1 + worker).process;
    List<ProcessHandle> executors = process.descendants().toList();
    process.destroyForcibly().waitFor();
    executors.forEach(ProcessHandle::destroyForcibly);
  }

  /** Starts Propcap as the launcher does. */
  Started propcap(List<String> options, String... args) throws IOException {
    List<String> java = java(options, JAR + ":" + PARTS + "/*", "propcap.cli.Propcap");
    java.addAll(Arrays.asList(args));
    return new Started(home, java);
  }

  /** Starts Propcap by Spark's own starter. */
  Started submitted(String... args) throws IOException {
    List<String> java = java(List.of(), PARTS + "/*", "org.apache.spark.deploy.SparkSubmit");
    java.addAll(List.of("--master", address(), "--class", "propcap.cli.Propcap"));
    java.addAll(List.of("--executor-memory", "512m", JAR.toString()));
    java.addAll(Arrays.asList(args));
    return new Started(home, java);
  }

  private static List<String> java(List<String> options, String classes, String main) {
    List<String> java = new ArrayList<>();
    java.addAll(
        List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx512m"));
    java.add("-XX:+UseSerialGC");
    java.addAll(options);
    ROOMS.forEach(room -> java.add("--add-opens=java.base/" + room + "=ALL-UNNAMED"));
    java.addAll(List.of("-cp", classes, main));
    return java;
  }

  @Override
  public void close() {
    for (int p = processes.size() - 1; p >= 0; p--) {
      Process process = processes.get(p).process;
      List<ProcessHandle> executors = process.descendants().toList();
      process.destroyForcibly().onExit().join();
      executors.forEach(ProcessHandle::destroyForcibly);
    }
  }

  /** A process, and the lines that it has printed. */
  static final class Started {
    final Process process;
    private final List<String> lines = new ArrayList<>();
    private final Thread reader;
    private String awaited = "";
    private CountDownLatch come = new CountDownLatch(0);

    Started(Path home, List<String> command) throws IOException {
      ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
      builder.environment().put("SPARK_HOME", home.toString());
      builder.environment().put("SPARK_SCALA_VERSION", "2.13");
      builder.environment().put("SPARK_LOCAL_IP", "127.0.0.1");
      process = builder.start();
      process.getOutputStream().close();
      reader = new Thread(this::read);
      reader.start();
    }

    private void read() {
      try (BufferedReader out = process.inputReader(StandardCharsets.UTF_8)) {
        for (String line = out.readLine(); line != null; line = out.readLine()) {
          take(line);
        }
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      } finally {
        ended();
      }
    }

    private synchronized void take(String line) {
      lines.add(line);
      if (line.contains(awaited)) {
        come.countDown();
      }
    }

    /** Nothing more will come. */
    private synchronized void ended() {
      while (come.getCount() > 0) {
        come.countDown();
      }
    }

    /** Waits until so many lines with some words in them have been printed, or it has ended. */
    void await(String words, int times) throws InterruptedException {
      CountDownLatch latch;
      synchronized (this) {
        awaited = words;
        long already = lines.stream().filter(line -> line.contains(words)).count();
        latch = new CountDownLatch((int) Math.max(0, times - already));
        come = latch;
      }
      if (!latch.await(5, TimeUnit.MINUTES)) {
        throw new IllegalStateException("never came: " + words + "\n" + printed());
      }
    }

    /** Waits for its end. */
    int exitCode() throws InterruptedException {
      int code = process.waitFor();
      reader.join();
      return code;
    }

    synchronized String printed() {
      return String.join("\n", lines);
    }
  }
}
