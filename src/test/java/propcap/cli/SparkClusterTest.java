package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.Tried;

/** What is told of a cluster, tried on a real one: a master and two workers on the loopback. */
@Tag("spark")
class SparkClusterTest {
  private static final String EXAMPLE =
      Path.of("src/test/resources/propcap/example/scenario.yaml").toAbsolutePath().toString();

  /** An executor writes so when a block is done. */
  private static final String BLOCK_DONE = "Finished task ";

  @TempDir private Path home;

  private Path made(String name) {
    return home.resolve(name);
  }

  private Map<String, String> files(String folder) throws IOException {
    try (Stream<Path> all = Files.walk(made(folder))) {
      Map<String, String> texts = new TreeMap<>();
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        // The feed says when it was written, and so does the record of it.
        boolean hasMoment = file.endsWith("calendar.ics") || file.endsWith(".propcap-calendar");
        if (!hasMoment) {
          texts.put(made(folder).relativize(file).toString(), Files.readString(file));
        }
      }
      return texts;
    }
  }

  private Path larger() throws IOException {
    return Files.writeString(
        made("larger.yaml"),
        "extends: "
            + EXAMPLE
            + "\nname: larger\nplaces:\n  - {name: Chamber 2, like: Chamber, after: Chamber}\n");
  }

  /** Waits until executors have written that so many blocks are done. */
  private void awaitBlocks(SparkCluster.Started run, int blocks)
      throws IOException, InterruptedException {
    long done = 0;
    while (done < blocks) {
      boolean isOver = run.process.waitFor(100, TimeUnit.MILLISECONDS);
      assertThat(isOver).as(run.printed()).isFalse();
      done = 0;
      try (Stream<Path> all = Files.walk(home)) {
        for (Path log : all.filter(file -> file.endsWith("stderr")).toList()) {
          done += Files.readString(log).lines().filter(l -> l.contains(BLOCK_DONE)).count();
        }
      }
    }
  }

  private static void assertDone(SparkCluster.Started run) throws InterruptedException {
    int code = run.exitCode();
    assertThat(code).as(run.printed()).isZero();
  }

  @Test
  void everyQuestionIsAnsweredWithTheSameDigits() throws Exception {
    String larger = larger().toString();
    List<String> run = List.of("run", EXAMPLE, "--seasons", "200");
    String changes =
        Files.writeString(made("changes.csv"), "spaces of House 1\n330\n360\n").toString();
    List<String> size =
        List.of("size", EXAMPLE, "--place", "House 1", "--from", "300", "--to", "360");
    Map<String, List<String>> questions =
        Map.of(
            "run", run,
            "compare", List.of("compare", EXAMPLE, larger, "--seasons", "100"),
            "bottleneck", List.of("bottleneck", EXAMPLE, "--steps", "1", "--seasons", "30"),
            "shift", List.of("shift", EXAMPLE, "--match", "lettuce*", "--seasons", "30"),
            "calendar", List.of("calendar", EXAMPLE, "--seasons", "30"),
            "order", List.of("order", EXAMPLE, "--seasons", "30"),
            "sweep", List.of("sweep", EXAMPLE, "--changes", changes, "--seasons", "30"),
            "size",
                List.of(args(size, "--step", "60", "--goal", "on-time>=50%", "--seasons", "60")));
    try (SparkCluster cluster = new SparkCluster(home, 2, 1)) {
      for (Map.Entry<String, List<String>> question : questions.entrySet()) {
        String here = question.getKey() + "-here";
        String there = question.getKey() + "-there";
        assertDone(cluster.propcap(List.of(), args(question.getValue(), "--out", made(here))));
        assertDone(
            cluster.propcap(
                List.of(),
                args(question.getValue(), "--out", made(there), "--on", cluster.address())));
        assertThat(files(there)).isNotEmpty().isEqualTo(files(here));
      }
      assertDone(cluster.submitted(args(run, "--out", made("run-submitted"))));
      assertThat(files("run-submitted")).isEqualTo(files("run-here"));
    }
    Tried.row(
        "spark",
        "The same digits as on this machine's threads",
        "a master and two workers on the loopback; the tests' example; "
            + questions.keySet().stream().sorted().collect(Collectors.joining(", "))
            + ", and run by spark-submit",
        "every file the same to the byte");
  }

  private static String[] args(List<String> question, Object... more) {
    return Stream.concat(question.stream(), Stream.of(more).map(Object::toString))
        .toArray(String[]::new);
  }

  @Test
  void aWorkerKilledInTheMiddleLosesNothing() throws Exception {
    List<String> question = List.of("compare", EXAMPLE, larger().toString(), "--seasons", "3000");
    try (SparkCluster cluster = new SparkCluster(home, 2, 1)) {
      SparkCluster.Started run =
          cluster.propcap(
              List.of(), args(question, "--out", made("there"), "--on", cluster.address()));
      awaitBlocks(run, 3);
      cluster.killWorker(0);
      assertThat(run.process.isAlive()).isTrue();
      assertDone(run);
      assertDone(cluster.propcap(List.of(), args(question, "--out", made("here"))));
      assertThat(files("there")).isNotEmpty().isEqualTo(files("here"));
    }
    Tried.row(
        "spark",
        "A worker that dies in the middle loses nothing",
        "compare of two scenarios on 3,000 springs; one of two workers and its executor killed after"
            + " three blocks",
        "Spark ran its blocks again on the other; every file the same to the byte");
  }

  @Test
  void aRunThatIsStoppedCallsOffTheJobAndWritesNothing() throws Exception {
    try (SparkCluster cluster = new SparkCluster(home, 2, 1)) {
      SparkCluster.Started run =
          cluster.propcap(
              List.of(),
              "compare",
              EXAMPLE,
              larger().toString(),
              "--seasons",
              "100000",
              "--out",
              made("there").toString(),
              "--on",
              cluster.address());
      awaitBlocks(run, 1);
      // Not by the process itself, which would close what it prints into.
      assertThat(run.process.toHandle().destroy()).isTrue();
      var unused = run.exitCode();
      assertThat(run.printed()).contains("Stopped. Nothing was written.");
      assertThat(made("there")).doesNotExist();
    }
  }

  @ParameterizedTest
  @CsvSource({
    "spark://no-such-host.invalid:7077, no machine is known as no-such-host.invalid",
    "spark://127.0.0.1:1, nothing answers there",
    "the-cluster:7077, is written spark://HOST:PORT"
  })
  void anAddressWhereNoClusterIsIsToldInALine(String address, String told) throws Exception {
    try (SparkCluster cluster = new SparkCluster(home, 0, 1)) {
      assertTold(cluster, address, told);
    }
  }

  @Test
  void aClusterWithoutAWorkerIsToldInALine() throws Exception {
    try (SparkCluster cluster = new SparkCluster(home, 0, 1)) {
      assertTold(cluster, cluster.address(), "no worker of the cluster has taken the work");
    }
  }

  private void assertTold(SparkCluster cluster, String address, String told) throws Exception {
    SparkCluster.Started run =
        cluster.propcap(
            List.of(), "run", EXAMPLE, "--out", made("none").toString(), "--on", address);
    assertThat(run.exitCode()).isEqualTo(Propcap.BAD_INPUT);
    assertThat(run.printed().lines()).singleElement().asString().contains(told);
    assertThat(made("none")).doesNotExist();
  }

  /**
   * Measures and tests nothing but the digits: on two processors four executors can't be faster.
   */
  @Test
  void oneTwoAndFourExecutorsTellTheSame() throws Exception {
    StringBuilder ratios = new StringBuilder();
    List<String> question = List.of("run", EXAMPLE, "--seasons", "6000");
    try (SparkCluster cluster = new SparkCluster(home, 2, 2)) {
      double one = 0;
      for (int executors : new int[] {1, 2, 4}) {
        long began = System.nanoTime();
        assertDone(
            cluster.propcap(
                List.of("-Dspark.executor.cores=1", "-Dspark.cores.max=" + executors),
                args(question, "--out", made("on" + executors), "--on", cluster.address())));
        double took = System.nanoTime() - began;
        one = executors == 1 ? took : one;
        ratios.append(String.format("%d: %.2f; ", executors, one / took));
        assertThat(files("on" + executors)).isEqualTo(files("on1"));
      }
    }
    Tried.row(
        "spark",
        "Speed by executors of one core, from start to end, one executor = 1",
        "run of 6,000 springs of the tests' example on "
            + Runtime.getRuntime().availableProcessors()
            + " processors, which master, workers and asking program share",
        ratios + "the digits the same");
  }
}
