package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Tried;

/** Two to four faults at once, of those that are known one by one: all are told at once. */
class FaultsTogetherTest {
  private static final List<String> FILES =
      List.of("scenario.yaml", "crops.yaml", "sowings.csv", "weather.csv");

  /** So many lines lie between two slips, a crop's own, so that neither is part of the other. */
  private static final Map<String, Integer> APART = Map.of("crops.yaml", 11);

  /** What others are judged by: no name of a crop is wrong while the crop list is lacking. */
  private static final Pattern GROUND =
      Pattern.compile("(crops|weather|season|end|kind):\\s.*|  - \\{name: .*", Pattern.DOTALL);

  private static final Pattern TABLES_GROUND =
      Pattern.compile(".*(column|a row of|which the crop list lacks|first on line).*");

  @TempDir Path path;

  /** A fault that is known alone: what stands there, what is put there, and what is told. */
  private record Known(String file, String old, String now, String told, int line) {
    boolean isGround() {
      return GROUND.matcher(old).matches() || TABLES_GROUND.matcher(told).matches();
    }
  }

  @Test
  void aFewSets() throws IOException {
    tried(40, 1);
  }

  @Tag("attack")
  @Test
  void manySets() throws IOException {
    int faults = tried(2_500, 2);
    Tried.row(
        "attack",
        "two to four faults in a scenario's files, none judged by another: all told at once",
        "2,500 sets of the faults that are known one by one",
        String.format(Locale.ENGLISH, "all of %,d faults", faults));
  }

  private int tried(int sets, long seed) throws IOException {
    GrowersFolder folder = new GrowersFolder(path);
    Map<String, String> sound = new TreeMap<>();
    FILES.forEach(name -> sound.put(name, folder.text(name)));
    List<Known> known = known(sound);
    SplittableRandom random = new SplittableRandom(seed);
    List<String> silent = new ArrayList<>();
    int faults = 0;
    for (int set = 0; set < sets; set++) {
      List<Known> chosen = chosen(known, random);
      Map<String, String> texts = new TreeMap<>(sound);
      chosen.forEach(k -> texts.merge(k.file(), "", (t, x) -> t.replace(k.old(), k.now())));
      texts.forEach(folder::write);
      List<String> told = folder.faults();
      for (Known each : chosen) {
        if (told.stream().noneMatch(t -> t.endsWith(each.told()))) {
          silent.add(each.told() + "\n  beside " + chosen + "\n  but " + told);
        }
      }
      faults += chosen.size();
    }
    sound.forEach(folder::write);
    assertThat(silent).isEmpty();
    return faults;
  }

  /** Two to four, none within reach of another. */
  private static List<Known> chosen(List<Known> known, SplittableRandom random) {
    List<Known> chosen = new ArrayList<>();
    int size = 2 + random.nextInt(3);
    while (chosen.size() < size) {
      Known next = known.get(random.nextInt(known.size()));
      if (chosen.stream().noneMatch(k -> isNear(k, next))) {
        chosen.add(next);
      }
    }
    return chosen;
  }

  private static boolean isNear(Known one, Known other) {
    return one.file().equals(other.file())
        && Math.abs(one.line() - other.line()) <= APART.getOrDefault(one.file(), 1);
  }

  private static List<Known> known(Map<String, String> sound) throws IOException {
    List<Known> known = new ArrayList<>();
    for (String line : FaultsTest.oneFaultEach()) {
      String[] parts = line.replace("\\n", "\n").split(" \\| ", -1);
      String text = String.valueOf(sound.get(parts[0]));
      int at = text.indexOf(parts[1]);
      known.add(
          new Known(
              parts[0],
              parts[1],
              parts[2].replace("^", ""),
              parts[3],
              (int) text.substring(0, at).lines().count()));
    }
    known.removeIf(Known::isGround);
    return known;
  }
}
