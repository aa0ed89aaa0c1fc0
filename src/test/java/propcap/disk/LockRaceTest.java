package propcap.disk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Tried;

/** Many programs at once on one folder: each writes alone, or is told that it can't. */
@Tag("attack")
class LockRaceTest {
  private static final int PROGRAMS = 6;
  private static final int TIMES = 40;

  @TempDir Path folder;

  /** Opens the set again and again, and looks whether anyone else writes meanwhile. */
  public static final class Racer {
    private Racer() {}

    public static void main(String[] args) throws IOException {
      Path shared = Path.of(args[0]);
      String me = args[1];
      int wrote = 0;
      int refused = 0;
      while (wrote < TIMES) {
        try (FileSet set = FileSet.open(shared, me)) {
          String mine = me + " " + wrote;
          set.write(Map.of(shared.resolve("a"), mine, shared.resolve("b"), mine), List.of());
          for (String name : List.of("a", "b")) {
            String found = Files.readString(shared.resolve(name));
            if (!found.equals(mine)) {
              System.out.println("trouble: " + found + " in place of " + mine);
            }
          }
          wrote++;
        } catch (CannotWriteException e) {
          if (!e.found().startsWith("in use by ")) {
            System.out.println("trouble: " + e.getMessage());
          }
          refused++;
        }
      }
      System.out.println(wrote + " " + refused);
    }
  }

  @Test
  void noTwoProgramsWriteAtOnce() throws Exception {
    Path shared = folder.resolve("results");
    List<Child> racers = new ArrayList<>();
    for (int i = 0; i < PROGRAMS; i++) {
      racers.add(Child.start(Racer.class, shared.toString(), "racer-" + i));
    }
    int wrote = 0;
    int refused = 0;
    for (Child racer : racers) {
      String told = racer.rest();
      assertThat(told).doesNotContain("trouble").doesNotContain("Exception").endsWith("\n");
      String[] counts = told.strip().split(" ", -1);
      wrote += Integer.parseInt(counts[0]);
      refused += Integer.parseInt(counts[1]);
      assertThat(racer.exitCode()).isZero();
    }
    assertThat(wrote).isEqualTo(PROGRAMS * TIMES);
    assertThat(refused).isPositive();
    assertThat(shared.toFile().list()).containsExactlyInAnyOrder("a", "b");
    Tried.row(
        "attack",
        "two programs never write in one folder at once",
        PROGRAMS + " processes, each until it had written " + TIMES + " times",
        wrote + " wrote, none found another's file in its own; " + refused + " were told to wait");
  }
}
