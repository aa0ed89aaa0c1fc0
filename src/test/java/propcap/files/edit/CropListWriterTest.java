package propcap.files.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Crop;
import propcap.files.scenario.CropBook;
import propcap.files.text.FaultsException;

/** A crop list in which values are changed and nothing else. */
class CropListWriterTest {
  private static final String LIST =
      """
      # Our crops — Tern Hill, with an emoji 🌱 beyond one char
      crops:
        zinnia:   # cut flower
          cells: 128
          germination: {rate: 86 %,   # by the packet
                        tested-seeds: 100}   # last year
          emergence: {base: 8 C, optimum: 26 C, ceiling: 38 C, at: 21 C, half-by: 5.5 days, most-by: 7.5 days}
          germinate-in: [Chamber]
          growing-on: {base: 5 C, optimum: 24 C, at: 18 C, takes: 24 days, holds: 10 days}
          hardening: {takes: 7 days}
        "sweet pea":
          cells: 50
          germination:
            # from the notebook
            rate: "80 %"   # quoted
          emergence:
            base: 2 C
            optimum: 20 C
            ceiling: 30 C   # guessed
            at: 16 C
            half-by: 9 days
            most-by: 12 days   # slow ones

          # where it stands
          germinate-in: [Chamber]
          growing-on: {base: 5 C, optimum: 24 C, at: 18 C, takes: 24 days, holds: 10 days}
          hardening: {takes: 7 days}
      """;

  @TempDir Path folder;
  private Path list;

  @BeforeEach
  void aList() throws IOException {
    list = Files.writeString(folder.resolve("crops.yaml"), LIST);
  }

  private static Path change(Path list, Map<String, Map<String, Map<String, String>>> values)
      throws FaultsException, IOException {
    return CropListWriter.of(list, values).write();
  }

  private static Map<String, String> of(String... keysAndValues) {
    Map<String, String> map = new LinkedHashMap<>();
    for (int i = 0; i < keysAndValues.length; i += 2) {
      map.put(keysAndValues[i], keysAndValues[i + 1]);
    }
    return map;
  }

  private static Map<String, Map<String, String>> test(String base) {
    return Map.of(
        "germination", of("rate", "91.5 %", "tested-seeds", "200", "tray-correlation", "0.02"),
        "emergence", of("base", base, "at", "22 C", "half-by", "6.4 days", "most-by", "9.1 days"));
  }

  @Test
  void onlyTheValuesChangeInAListOnOneLine() throws Exception {
    change(list, Map.of("zinnia", test("8.3 C")));
    assertThat(list)
        .hasContent(
            LIST.replace("{rate: 86 %,   # by", "{rate: 91.5 %,   # by")
                .replace("tested-seeds: 100}", "tested-seeds: 200, tray-correlation: 0.02}")
                .replace(
                    "{base: 8 C, optimum: 26 C, ceiling: 38 C, at: 21 C, half-by: 5.5 days, most-by:"
                        + " 7.5 days}",
                    "{base: 8.3 C, optimum: 26 C, ceiling: 38 C, at: 22 C, half-by: 6.4 days,"
                        + " most-by: 9.1 days}"));
    Crop zinnia = Objects.requireNonNull(CropBook.read(list, d -> {}).crops().get("zinnia"));
    assertThat(zinnia.germination()).isEqualTo(new Crop.Germination(0.915, 200, 0.02));
    assertThat(zinnia.emergence()).isEqualTo(new Crop.Emergence(8.3, 26, 38, 22, 6.4, 9.1));
  }

  @Test
  void onlyTheValuesChangeInAListOfManyLines() throws Exception {
    change(list, Map.of("sweet pea", test("3 C")));
    assertThat(list)
        .hasContent(
            LIST.replace(
                    "rate: \"80 %\"   # quoted\n",
                    """
                    rate: "91.5 %"   # quoted
                          tested-seeds: 200
                          tray-correlation: 0.02
                    """)
                .replace("base: 2 C\n", "base: 3 C\n")
                .replace("at: 16 C\n", "at: 22 C\n")
                .replace("half-by: 9 days", "half-by: 6.4 days")
                .replace("most-by: 12 days", "most-by: 9.1 days"));
    Crop sweetPea = Objects.requireNonNull(CropBook.read(list, d -> {}).crops().get("sweet pea"));
    assertThat(sweetPea.germination()).isEqualTo(new Crop.Germination(0.915, 200, 0.02));
  }

  @Test
  void severalCropsChangeAtOnceWithOneCopy() throws Exception {
    Path backup = change(list, Map.of("zinnia", test("8 C"), "sweet pea", test("3 C")));
    assertThat(backup).hasFileName("crops.yaml.bak").hasContent(LIST);
    assertThat(CropBook.read(list, d -> {}).crops().values())
        .allMatch(crop -> crop.germination().rate() == 0.915);
  }

  @Test
  void anEarlierCopyIsNotOverwritten() throws Exception {
    change(list, Map.of("zinnia", test("8 C")));
    String once = Files.readString(list);
    Path second = change(list, Map.of("zinnia", test("7 C")));
    assertThat(folder.resolve("crops.yaml.bak")).hasContent(LIST);
    assertThat(second).hasFileName("crops.yaml.bak2").hasContent(once);
  }

  /** A base above the optimum of the list: the list is left, and no copy or half file stays. */
  @Test
  void valuesThatDoNotGoWithTheListAreRefused() throws Exception {
    FaultsException e =
        catchThrowableOfType(
            FaultsException.class, () -> change(list, Map.of("zinnia", test("27 C"))));
    assertThat(e.faults()).isNotEmpty().allMatch(f -> f.file().equals(list));
    assertOnlyTheList();
  }

  @Test
  void aCropThatTheListLacksIsRefused() throws Exception {
    FaultsException e =
        catchThrowableOfType(
            FaultsException.class, () -> change(list, Map.of("zinia", test("8 C"))));
    assertThat(e.getMessage()).contains("no crop 'zinia'").contains("did you mean zinnia?");
    assertOnlyTheList();
  }

  @Test
  void aListWithFaultsIsRefused() throws Exception {
    Files.writeString(list, LIST.replace("cells: 50", "cells: many"));
    assertThat(
            catchThrowableOfType(
                    FaultsException.class, () -> change(list, Map.of("zinnia", test("8 C"))))
                .faults())
        .hasSize(1);
  }

  @Test
  void lineEndsAndTheByteOrderMarkStay() throws Exception {
    Files.writeString(list, "\uFEFF" + LIST.replace("\n", "\r\n"));
    change(list, Map.of("zinnia", test("8 C")));
    String changed = Files.readString(list);
    assertThat(changed).startsWith("\uFEFF#").contains("{rate: 91.5 %,   # by the packet\r\n");
    assertThat(changed.replace("\r\n", "")).doesNotContain("\n");
  }

  private void assertOnlyTheList() throws IOException {
    assertThat(list).hasContent(LIST);
    try (Stream<Path> files = Files.list(folder)) {
      assertThat(files.toList()).isEqualTo(List.of(list));
    }
  }
}
