package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Mutated;
import propcap.Tried;

/**
 * Whatever becomes of what a grower hands in, a command answers or says what is wrong; it never
 * fails, never hangs, and never leaves a file half-written.
 */
class InputsUnderAttackTest {
  private static final int SHORT = 2;
  private static final int LONG = 10_000;
  private static final int MOST_SLIPS = 4;
  private static final int MOST_SHOWN = 20;

  /** Far more than the slowest needs, on any machine: what takes longer hangs. */
  private static final Duration HANGS = Duration.ofSeconds(30);

  @TempDir Path folder;

  /** What came of the cases of a kind. */
  private static final class Tally {
    int answered;
    int refused;
  }

  @Test
  void aFewOfEachKind() throws IOException {
    Map<String, Tally> tallies = attack(SHORT, 1);
    // Both ends were tried: some slips do no harm, most do.
    assertThat(tallies.values().stream().mapToInt(t -> t.answered).sum()).isPositive();
    assertThat(tallies.values().stream().mapToInt(t -> t.refused).sum()).isPositive();
  }

  @Tag("attack")
  @Test
  void tenThousandOfAllKinds() throws IOException {
    int kinds = Attacked.all().size();
    Map<String, Tally> tallies = attack((LONG + kinds - 1) / kinds, 2);
    tallies.forEach(
        (kind, tally) -> {
          assertThat(tally.answered).as("answered of %s", kind).isPositive();
          assertThat(tally.refused).as("refused of %s", kind).isPositive();
          Tried.row(
              "attack",
              kind + ", with 1 to " + MOST_SLIPS + " slips: an answer, or what is wrong",
              String.format(Locale.ENGLISH, "%,d commands", tally.answered + tally.refused),
              String.format(
                  Locale.ENGLISH,
                  "%,d answered, %,d refused; no failure, no hang, no half-written file",
                  tally.answered,
                  tally.refused));
        });
  }

  private Map<String, Tally> attack(int each, long seed) throws IOException {
    SplittableRandom random = new SplittableRandom(seed);
    Map<String, Tally> tallies = new LinkedHashMap<>();
    List<String> troubles = new ArrayList<>();
    int number = 0;
    for (Attacked attacked : Attacked.all()) {
      Path desk = Files.createDirectory(folder.resolve("kind" + ++number));
      for (var file : attacked.files().entrySet()) {
        put(desk.resolve(file.getKey()), file.getValue());
      }
      Run sound = run(desk, attacked.command());
      assertThat(sound.exitCode()).as(attacked.kind() + ": " + sound.err()).isZero();
      Map<String, String> names = contents(desk.resolve("out"));
      Tally tally = tallies.computeIfAbsent(attacked.kind(), k -> new Tally());
      for (int n = 0; n < each; n++) {
        try {
          attack(attacked, desk, random, names, tally);
        } catch (AssertionError e) {
          troubles.add(attacked.kind() + ": " + e.getMessage());
        }
      }
    }
    assertThat(troubles.stream().limit(MOST_SHOWN)).as(troubles.size() + " in all").isEmpty();
    return tallies;
  }

  private static void attack(
      Attacked attacked, Path desk, SplittableRandom random, Map<String, String> names, Tally tally)
      throws IOException {
    for (String name : attacked.mutated()) {
      put(desk.resolve(name), String.valueOf(attacked.files().get(name)));
    }
    List<String> command = new ArrayList<>(attacked.command());
    int slips = 1 + random.nextInt(MOST_SLIPS);
    String text;
    if (attacked.mutated().isEmpty()) {
      text = mutate(command, slips, random);
    } else {
      String name = attacked.mutated().get(random.nextInt(attacked.mutated().size()));
      String sound = String.valueOf(attacked.files().get(name));
      text = Mutated.of(sound, slips, random);
      put(desk.resolve(name), text);
    }
    if (command.get(0).equals("weather")) {
      Files.deleteIfExists(desk.resolve("out/weather.csv"));
    }
    Map<String, String> before = contents(desk.resolve("out"));
    Run run = run(desk, command);
    Map<String, String> after = contents(desk.resolve("out"));
    String seen = command + "\n" + run.err() + "\nof:\n" + text + "\n----\n";
    assertThat(run.exitCode()).as(seen).isIn(0, 2, 3);
    assertThat(run.err()).as(seen).doesNotContain("has failed", "Exception", "\tat ", "Error:");
    if (run.exitCode() != 2) {
      tally.answered++;
      assertThat(kinds(after)).as(seen).isEqualTo(kinds(names));
      if (!text.toLowerCase(Locale.ROOT).matches("(?s).*(nan|inf).*")) {
        assertThat(run.out()).as(seen).doesNotContain("NaN", "Infinity", "null");
        assertThat(after.values()).as(seen).noneMatch(f -> f.contains("NaN"));
      }
    } else {
      tally.refused++;
      assertThat(run.err().strip()).as(seen).isNotEmpty();
      assertThat(after).as(seen).isEqualTo(before);
    }
  }

  /** The names of files, where those that are named after what is in them are one. */
  private static Set<String> kinds(Map<String, String> files) {
    return files.keySet().stream()
        .map(name -> name.replaceAll("[0-9a-f]{64}", "SHA-256"))
        .collect(Collectors.toSet());
  }

  /** Changes the values of options, and says what they are now. */
  private static String mutate(List<String> command, int slips, SplittableRandom random) {
    for (int slip = 0; slip < slips; slip++) {
      int at = 2 + random.nextInt(command.size() - 2);
      if (!command.get(at).startsWith("--") && !command.get(at).startsWith("@")) {
        command.set(at, Mutated.of(command.get(at), 1, random));
      }
    }
    return String.join(" ", command);
  }

  private static Run run(Path desk, List<String> command) {
    String[] args =
        command.stream().map(a -> a.replaceFirst("^@", desk.toString())).toArray(String[]::new);
    return assertTimeoutPreemptively(HANGS, () -> Run.of(args), () -> "hangs: " + command);
  }

  private static void put(Path file, String text) throws IOException {
    Files.write(file, text.getBytes(StandardCharsets.ISO_8859_1));
  }

  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    if (Files.exists(folder, LinkOption.NOFOLLOW_LINKS)) {
      try (Stream<Path> all = Files.walk(folder)) {
        for (Path file : all.filter(f -> !Files.isDirectory(f)).toList()) {
          contents.put(folder.relativize(file).toString(), Files.readString(file));
        }
      }
    }
    return contents;
  }
}
