package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.Tried;
import propcap.files.ListedSlips.Kind;
import propcap.files.text.Fault;
import propcap.files.text.FaultsException;

/** What can't be meant, or hardly, is never taken without a word: wherever it stands. */
class ListedKindsTest {
  private static final int SHORT = 2;
  private static final int LONG = 150;

  private static final List<String> FARM = List.of("scenario.yaml", "sowings.csv", "weather.csv");

  @TempDir Path path;

  /** How often a kind was refused, and how often it was worth another look. */
  private static final class Tally {
    int refused;
    int doubted;
  }

  /** Whatever a reader says of its files. */
  @FunctionalInterface
  private interface Reading {
    List<Fault> doubts() throws FaultsException;
  }

  @Test
  void aFewOfEach() throws Exception {
    attack(SHORT);
  }

  @Tag("attack")
  @Test
  void manyOfEach() throws Exception {
    attack(LONG)
        .forEach(
            (kind, tally) ->
                Tried.row(
                    "attack",
                    kind + ": never taken without a word",
                    LONG + " times, at a place and by an amount drawn anew",
                    tally.refused
                        + " times refused, "
                        + tally.doubted
                        + " times worth another look"));
  }

  private Map<String, Tally> attack(int times) throws Exception {
    GrowersFolder folder = new GrowersFolder(path);
    folder.write(
        "weather.csv", GrowersFolder.weather(LocalDate.of(2001, 1, 1), LocalDate.of(2006, 12, 31)));
    SplittableRandom random = new SplittableRandom(1);
    ListedRecordSlips records = new ListedRecordSlips(folder, random);
    Map<String, Tally> tallies = new LinkedHashMap<>();
    attack(folder, new ListedSlips(folder, random).all(), folder::warnings, times, tallies);
    attack(folder, records.all(), records::doubts, times, tallies);
    return tallies;
  }

  private static void attack(
      GrowersFolder folder,
      List<Kind> kinds,
      Reading reading,
      int times,
      Map<String, Tally> tallies)
      throws FaultsException {
    Map<String, String> sound =
        Stream.concat(FARM.stream(), ListedRecordSlips.FILES.stream())
            .collect(Collectors.toMap(file -> file, folder::text));
    assertThat(reading.doubts()).isEmpty();
    for (Kind kind : kinds) {
      Tally tally = tallies.computeIfAbsent(kind.name(), k -> new Tally());
      for (int n = 0; n < times; n++) {
        String what = kind.name() + ": " + kind.slip().make();
        List<Fault> told = new ArrayList<>();
        try {
          told.addAll(reading.doubts());
          tally.doubted++;
        } catch (FaultsException e) {
          told.addAll(e.faults());
          tally.refused++;
        }
        Pattern words = Pattern.compile(kind.told());
        assertThat(told).as(what).anyMatch(fault -> words.matcher(fault.toString()).find());
        sound.forEach(folder::write);
      }
    }
  }
}
