package propcap.files.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Crop;
import propcap.files.GrowersFolder;
import propcap.files.text.FaultsException;

/** The crop list that Propcap brings, and lists read apart from a scenario. */
class CropBookTest {
  private static final CropBook LIST = CropBook.ofPropcap();

  @TempDir Path folder;

  private static String text() throws IOException {
    try (InputStream in = CropBook.class.getResourceAsStream("/propcap/files/crop-list.yaml")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    }
  }

  @Test
  void theListHoldsSixtyCropsOrMoreAndMostlyFlowers() {
    assertThat(LIST.entries()).hasSizeGreaterThanOrEqualTo(60);
    assertThat(LIST.entries())
        .filteredOn(e -> e.kind().equals("flower"))
        .hasSizeGreaterThanOrEqualTo(LIST.entries().size() / 2);
    assertThat(LIST.entries())
        .extracting(CropBook.Entry::kind)
        .containsOnly("flower", "vegetable", "herb");
  }

  /** Common practice: the names that a grower or a seed shop uses beside the list's own. */
  @Test
  void acropIsFoundByItsOtherEverydayNames() {
    List<String> asked =
        List.of("bell pepper", "Aubergine", "courgette", "zucchini", "cilantro", "antirrhinum");
    assertThat(asked)
        .extracting(name -> LIST.named(name).orElseThrow().crop().name())
        .containsExactly(
            "pepper", "eggplant", "summer-squash", "summer-squash", "coriander", "snapdragon");
    List<String> all = new ArrayList<>();
    for (CropBook.Entry entry : LIST.entries()) {
      all.add(entry.crop().name());
      all.addAll(entry.also());
    }
    assertThat(all).doesNotHaveDuplicates();
  }

  @Test
  void everyCropComesUpBetweenItsBaseAndItsCeilingAndFastestBetweenThem() {
    for (CropBook.Entry entry : LIST.entries()) {
      Crop.Emergence e = entry.crop().emergence();
      assertThat(e.optimumC()).as(entry.crop().name()).isBetween(e.baseC(), e.ceilingC());
      assertThat(e.rate(e.optimumC())).isGreaterThanOrEqualTo(e.rate(e.atC())).isPositive();
      assertThat(e.rate(e.baseC())).isZero();
      assertThat(e.rate(e.ceilingC())).isZero();
    }
  }

  @Test
  void seedThatNeedsLightStaysOutOfTheChamber() {
    assertThat(LIST.entries())
        .filteredOn(e -> String.join(" ", e.text()).matches(".*(needs light| light, ).*"))
        .hasSizeGreaterThan(20)
        .allSatisfy(e -> assertThat(e.crop().germinateIn()).doesNotContain("Chamber"));
  }

  /**
   * A tag may stand beside a number, or in the comment above; a line that goes on shares it. Places
   * alone have no number, and so no source.
   */
  @Test
  void everyNumberHasASource() {
    for (CropBook.Entry entry : LIST.entries()) {
      assertThat(unsourced(entry.text())).as(entry.crop().name()).isEmpty();
    }
    // The twin: a tag taken away is missed.
    List<String> zinnia = LIST.named("zinnia").orElseThrow().text();
    assertThat(unsourced(zinnia.stream().map(l -> l.replace("[CP]", "")).toList()))
        .extracting(l -> l.strip().replaceFirst(":.*", ""))
        .containsExactly("cells", "pull-after");
  }

  private static List<String> unsourced(List<String> lines) {
    List<String> unsourced = new ArrayList<>();
    boolean above = false;
    for (String line : lines.subList(1, lines.size())) {
      boolean tagged = !CropNotes.tags(List.of(line)).isEmpty();
      if (line.strip().startsWith("#")) {
        above |= tagged;
      } else if (!line.startsWith("     ")) {
        // Else it goes on from the line above.
        if (line.replaceFirst("#.*", "").matches(".*\\d.*") && !tagged && !above) {
          unsourced.add(line);
        }
        above = false;
      }
    }
    return unsourced;
  }

  @Test
  void everyTagIsInTheKeyAndEverySourceOfTheKeyIsUsed() throws IOException {
    CropNotes notes = new CropNotes(text());
    Set<String> used = new HashSet<>();
    for (CropBook.Entry entry : LIST.entries()) {
      List<String> tags = CropNotes.tags(entry.text());
      assertThat(notes.references().keySet()).as(entry.crop().name()).containsAll(tags);
      assertThat(entry.sources()).extracting(CropBook.Source::tag).containsExactlyElementsOf(tags);
      used.addAll(tags);
    }
    assertThat(used).containsExactlyInAnyOrderElementsOf(notes.references().keySet());
    assertThat(notes.references().values()).noneMatch(String::isBlank);
  }

  @Test
  void anEntryIsShownAsItIsWrittenUpToTheNext() {
    List<String> zinnia = LIST.named("zinnia").orElseThrow().text();
    assertThat(zinnia.get(0)).isEqualTo("  zinnia:");
    assertThat(zinnia.get(zinnia.size() - 1)).startsWith("    hardening: {");
  }

  @Test
  void aSourceIsReadOverItsLines() {
    assertThat(LIST.named("zinnia").orElseThrow().sources())
        .contains(
            new CropBook.Source(
                "ISU23",
                "Iowa State University Extension (2023), Germination Requirements for Annuals and"
                    + " Vegetables: temperature, light, days to germination, weeks from sowing to"
                    + " planting"));
  }

  @Test
  void aNameNearlyRightIsGuessed() {
    assertThat(LIST.named("zinia")).isEmpty();
    assertThat(LIST.nearest("zinia")).isEqualTo("did you mean zinnia?");
  }

  @Test
  void aGrowersListWithoutNotesIsReadToo() throws IOException, FaultsException {
    GrowersFolder grower = new GrowersFolder(folder);
    CropBook book = CropBook.read(grower.path("crops.yaml"), d -> {});
    assertThat(book.entries()).isNotEmpty();
    assertThat(book.named("tomato").orElseThrow().sources()).isEmpty();
    assertThat(book.named("tomato").orElseThrow().kind()).isEmpty();
  }

  @Test
  void theFaultsOfAListAreAllShown() throws IOException {
    Path list = folder.resolve("list.yaml");
    Files.writeString(
        list, text().replaceFirst("cells: 200", "cells: many").replaceFirst("78 %", "178 %"));
    FaultsException e =
        catchThrowableOfType(FaultsException.class, () -> CropBook.read(list, d -> {}));
    assertThat(e.faults()).hasSize(2).allMatch(f -> f.file().equals(list) && f.line() > 0);
    Files.writeString(list, "crops: {zinnia: 3}");
    assertThat(
            catchThrowableOfType(FaultsException.class, () -> CropBook.read(list, d -> {}))
                .faults())
        .hasSize(1);
    assertThat(
            catchThrowableOfType(
                    FaultsException.class,
                    () -> CropBook.read(folder.resolve("none.yaml"), d -> {}))
                .faults())
        .hasSize(1);
  }
}
