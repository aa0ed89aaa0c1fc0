package propcap.files.edit;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.files.scenario.CropBook;
import propcap.files.text.Faults;
import propcap.files.text.SourceText;

/** An entry that is copied is the list's own, with its sources, and leaves all else as it was. */
class CopiedCropTest {
  private static final CropBook BOOK = CropBook.ofPropcap();
  private static final String OWN =
      """
      # Ours.
      #   [CP]     common practice
      #   [PD]     what our neighbour
      #            planned by

      crops:
          onion:                   # the long one
              cells: 200           # [PD]
      # The end.
      """;

  private static CropBook.Entry entry(String name) {
    return BOOK.named(name).orElseThrow();
  }

  private static CropBook read(String text) {
    Faults faults = new Faults();
    CropBook book = CropBook.read(new SourceText(Path.of("crops.yaml"), text), faults);
    assertThat(faults.sorted()).isEmpty();
    return book;
  }

  @Test
  void eachEntryReadsBackAsItIsInTheListWithAllItsSources() {
    for (CropBook.Entry entry : BOOK.entries()) {
      for (String list : List.of("crops: {}\n", "crops:\n", "# None yet.\r\ncrops:   # none\r\n")) {
        String text = CopiedCrop.into(list, entry, List.of());
        CropBook.Entry copy = read(text).named(entry.crop().name()).orElseThrow();
        assertThat(copy.crop()).as(text).isEqualTo(entry.crop());
        assertThat(copy.sources()).isEqualTo(entry.sources());
        assertThat(copy.text()).isEqualTo(entry.text());
      }
    }
  }

  @Test
  void allEntriesOneAfterTheOtherMakeTheListAgain() {
    String list = "crops: {}\n";
    for (CropBook.Entry entry : BOOK.entries()) {
      list = CopiedCrop.into(list, entry, List.of());
    }
    assertThat(read(list).crops()).isEqualTo(BOOK.crops());
    assertThat(list.split("common practice", -1)).as("each source once").hasSize(2);
  }

  @Test
  void aTagThatStandsForAnotherSourceIsNotTaken() {
    String text = CopiedCrop.into(OWN, entry("zinnia"), List.of("Mats, new", "House"));
    assertThat(text)
        .contains("        cells: 200           # [PD]\n\n    zinnia:\n      cells: 128 ")
        .contains("germinate-in: [\"Mats, new\", House]\n")
        .contains("#            planned by\n#   [PDX]    planning default, not measured\n")
        .contains("base, optimum and ceiling [PDX]")
        .endsWith("# The end.\n");
    assertThat(text.split("common practice", -1)).hasSize(2);
    assertThat(text.lines()).containsAll(OWN.lines().toList());
  }

  @Test
  void inBracesItsSourcesStandAtTheHead() {
    String text =
        CopiedCrop.into(
            "extends: plan.yaml\ncrops: {onion: {cells: 128}}\n", entry("zinnia"), List.of("A"));
    assertThat(text)
        .startsWith("# Where the numbers come from:\n#   [CP]")
        .contains("#   zinnia: [CP] [PD] [GA] [ISU23] [CHONG] [ISU17] [HO203] [USU]\nextends: plan")
        .contains("crops: {onion: {cells: 128}, zinnia: {cells: 128,")
        .contains("germinate-in: [A]");
  }
}
