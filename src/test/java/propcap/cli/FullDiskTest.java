package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Tried;
import propcap.disk.Child;

/** Disks that are full, read-only, or let no file grow: the system's own refusals. */
@Tag("attack")
class FullDiskTest {
  @TempDir Path folder;
  private Path scenario;

  @BeforeEach
  void aNewFarm() {
    Path farm = folder.resolve("farm");
    assertThat(Run.of("new", farm.toString()).exitCode()).isZero();
    scenario = farm.resolve("scenario.yaml");
  }

  private String[] command(Path out, int seed) {
    // Few springs, one thread: what is tried is the writing.
    return ("run " + scenario + " --seasons 3 --threads 1 --seed " + seed + " --out " + out)
        .split(" ", -1);
  }

  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> all = Files.walk(folder)) {
      for (Path file : all.filter(Files::isRegularFile).toList()) {
        contents.put(folder.relativize(file).toString(), Files.readString(file));
      }
    }
    return contents;
  }

  private static void assertToldAndKept(
      String told, int exitCode, String words, Map<String, String> old, Path out)
      throws IOException {
    assertThat(told).contains(words).contains("--out").doesNotContain("Exception");
    assertThat(told.lines().count()).isEqualTo(1);
    assertThat(exitCode).isEqualTo(2);
    assertThat(contents(out)).isEqualTo(old);
  }

  /** As {@code ulimit -f} has it: no file may be larger than so many KiB. */
  @Test
  void aFileThatMayNotGrowLeavesTheOldResults() throws Exception {
    assumeThat(Path.of("/bin/bash")).isExecutable();
    Path out = folder.resolve("out");
    assertThat(Run.of(command(out, 1)).exitCode()).isZero();
    Map<String, String> old = contents(out);
    int tried = 0;
    int whole = (int) (Files.size(out.resolve("report.html")) >> 10);
    for (int most : List.of(whole / 4, whole / 2, whole - 1)) {
      List<String> bash =
          new ArrayList<>(
              List.of("/bin/bash", "-c", "ulimit -f " + most + "; exec \"$@\"", "bash"));
      List<String> java = Child.java(Propcap.class, command(out, 2));
      // What the machine itself writes must not be in the way.
      java.add(1, "-XX:-UsePerfData");
      bash.addAll(java);
      try (Child run = Child.start(bash)) {
        assertToldAndKept(run.rest(), run.exitCode(), "report.html: ", old, out);
      }
      tried++;
    }
    Tried.row(
        "attack",
        "a file that the system lets grow no further leaves the old results",
        tried + " runs under ulimit -f",
        "each told which file, exit code 2, the old results to the byte");
  }

  @Test
  void aDiskThatFillsUpLeavesTheOldResultsAndSoDoesOneThatIsReadOnly() throws Exception {
    Path disk = Files.createDirectory(folder.resolve("disk"));
    assumeThat(ends("mount", "-t", "tmpfs", "-o", "size=3m", "tmpfs", disk.toString()))
        .as("a small disk can be mounted here")
        .isZero();
    try {
      Path out = disk.resolve("out");
      assertThat(Run.of(command(out, 1)).exitCode()).isZero();
      Map<String, String> old = contents(out);
      Path filling = disk.resolve("filling");
      int full = 0;
      int went = 0;
      for (int kib = 200; kib < 3000; kib += 50) {
        Files.write(filling, new byte[0]);
        try {
          Files.write(filling, new byte[kib << 10]);
        } catch (IOException e) {
          // As full as it can be.
        }
        Run run = Run.of(command(out, 1 + kib));
        if (run.exitCode() == 0) {
          went++;
          old = contents(out);
        } else {
          full++;
          assertToldAndKept(run.err(), run.exitCode(), "the disk is full", old, out);
        }
      }
      Files.delete(filling);
      assertThat(full).isPositive();
      assertThat(ends("mount", "-o", "remount,ro", disk.toString())).isZero();
      Run run = Run.of(command(out, 7));
      assertToldAndKept(run.err(), run.exitCode(), "this disk can only be read", old, out);
      assertThat(ends("mount", "-o", "remount,rw", disk.toString())).isZero();
      // The results' folder may be the mount point itself.
      Run there = Run.of(command(disk, 7));
      assertThat(there.err()).isEmpty();
      assertThat(there.exitCode()).isZero();
      Tried.row(
          "attack",
          "a full disk leaves the old results, and says so before the springs where it can",
          (full + went) + " runs on a disk of 3 MiB, filled further each time; one read-only",
          went + " were written, " + full + " refused with the old results to the byte");
    } finally {
      int unused = ends("umount", disk.toString());
    }
  }

  private static int ends(String... command) throws IOException, InterruptedException {
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start()
        .waitFor();
  }
}
