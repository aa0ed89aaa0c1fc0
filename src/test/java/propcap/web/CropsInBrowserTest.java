package propcap.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The crops in a real browser; skipped where there is none. */
class CropsInBrowserTest extends InBrowser {
  @Test
  void aFaultThatHasNoFieldIsToldInWords() throws Exception {
    Path crops = folder.resolve("crops.yaml");
    Files.writeString(
        crops, Files.readString(crops).replaceFirst("(?m)^  cabbage:.*$", "$0\n    colour: red"));
    Chromium page = openAnew(WIDE);
    page.tab("crops");
    page.choose("#crop", "cabbage");
    page.awaitText("#panel", "colour");
    assertThat(page.text("#panel")).doesNotContain("[object");
  }
}
