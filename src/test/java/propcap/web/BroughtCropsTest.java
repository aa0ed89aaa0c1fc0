package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.gson.JsonArray;
import com.google.gson.JsonParser;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import propcap.files.scenario.CropBook;
import propcap.files.scenario.ScenarioReader;

/** A crop of the list that the program brings, taken into a farm's own by the page. */
class BroughtCropsTest extends Served {
  @Test
  void theListIsTheProgramsOwnWithItsSources() {
    JsonArray all = JsonParser.parseString(browser.get("/api/crops").body()).getAsJsonArray();
    assertThat(all.size()).isEqualTo(CropBook.ofPropcap().entries().size());
    assertThat(all.toString()).contains("Iowa State University Extension (2023)");
  }

  @Test
  void oneIsCopiedWithItsSourcesAndGerminatesInPlacesAlike() throws Exception {
    for (String name : new String[] {"celosia", "ageratum"}) {
      assertThat(browser.edit(Map.of("do", "copy-crop", "name", name)).statusCode()).isEqualTo(200);
    }
    assertThat(browser.state().getAsJsonArray("faults")).isEmpty();
    assertThat(browser.post("/api/save", Map.of()).statusCode()).isEqualTo(200);
    var crops = ScenarioReader.read(scenario).crops();
    assertThat(Objects.requireNonNull(crops.get("celosia")).germinateIn())
        .containsExactly("Chamber");
    // It needs light, so never in the chamber; the farm has no mats.
    assertThat(Objects.requireNonNull(crops.get("ageratum")).germinateIn())
        .containsExactly("House");
    Path list = folder.resolve("crops.yaml");
    CropBook.Entry copy = CropBook.read(list, d -> {}).named("celosia").orElseThrow();
    assertThat(copy.sources())
        .isEqualTo(CropBook.ofPropcap().named("celosia").orElseThrow().sources());
    assertThat(Files.readString(list)).contains("# 70-75 F, dark, 7-10 days [ISU23], 6-10 [MU]");
  }

  /** A farm that closes its chamber has the table left. */
  @Test
  void oneGerminatesInNoPlaceThatIsClosed() throws Exception {
    browser.spaces("Chamber", 0);
    browser.edit(Map.of("do", "copy-crop", "name", "celosia"));
    browser.post("/api/save", Map.of());
    CropBook.Entry copy =
        CropBook.read(folder.resolve("crops.yaml"), d -> {}).named("celosia").orElseThrow();
    assertThat(copy.crop().germinateIn()).containsExactly("House");
  }

  @Test
  void whatIsThereOrUnknownIsRefusedInWords() {
    browser.edit(Map.of("do", "copy-crop", "name", "celosia"));
    var again = browser.edit(Map.of("do", "copy-crop", "name", "celosia"));
    assertThat(again.statusCode()).isEqualTo(400);
    assertThat(again.body()).contains("a crop celosia already");
    var unknown = browser.edit(Map.of("do", "copy-crop", "name", "celosa"));
    assertThat(unknown.statusCode()).isEqualTo(400);
    assertThat(unknown.body()).contains("did you mean celosia?");
  }
}
