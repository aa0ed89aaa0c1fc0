package propcap.evidence;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import propcap.farm.Crop;
import propcap.files.scenario.CropBook;

/** The classes of hardiness of the crop list, and when each goes out. */
class HardinessTest {
  /**
   * How the last frost of spring varies, days: the median over 5,178 stations of what the NOAA
   * normals of 1981-2010 imply.
   */
  private static final double LAST_FROST_VARIES_DAYS = 11.7;

  /** The words above "hardening" are the class that its numbers are of, and its source lists it. */
  @Test
  void theClassIsSaidAsItIsAndOfASourceThatListsTheKind() {
    Map<String, String> bySource =
        PublishedRow.of("hardiness.csv").stream()
            .collect(
                Collectors.toMap(r -> r.name() + "," + r.text("source"), r -> r.text("class")));
    for (CropBook.Entry entry : PublishedRow.LIST.entries()) {
      String name = entry.crop().name();
      HardinessClass listed = HardinessClass.of(entry.crop());
      List<String> text = entry.text();
      String said = text.get(text.size() - 2).strip();
      assertThat(said).as(name).startsWith("# " + listed.words() + " [");
      String source = said.substring(said.indexOf('[') + 1, said.indexOf(']'));
      if (!source.equals("CP")) {
        String key = name + "," + source;
        assertThat(bySource).as(name).containsKey(key);
        assertThat(HardinessClass.meantBy(bySource.getOrDefault(key, "")))
            .as(name)
            .contains(listed);
      }
    }
  }

  /**
   * Purdue University Extension HO-203: very hardy kinds go out 4 to 6 weeks before the average
   * frost-free date, frost-tolerant ones 2 to 3 before, tender ones on it or after, warm-loving
   * ones 1 to 2 weeks after. Planted after 6 to 8 days of hardening off from the release date.
   * Warm-loving kinds are a week later than it says: until no more than a fifth of the springs have
   * a frost to come, their trays stay in.
   */
  @ParameterizedTest
  @CsvSource({
    "VERY_HARDY, -42, -28",
    "FROST_TOLERANT, -21, -14",
    "TENDER, 0, 28",
    "WARM_LOVING, 14, 28"
  })
  void aClassIsPlantedInTheWeeksOfItsSource(HardinessClass hardiness, int from, int to) {
    NormalDistribution lastFrost = new NormalDistribution(0, LAST_FROST_VARIES_DAYS);
    assertThat(PublishedRow.LIST.entries())
        .filteredOn(e -> HardinessClass.of(e.crop()) == hardiness)
        .isNotEmpty()
        .allSatisfy(
            e -> {
              Crop.Hardening hardening = e.crop().hardening();
              double released =
                  lastFrost.inverseCumulativeProbability(1 - hardening.frostRisk())
                      + hardening.offsetDays();
              assertThat(released + hardening.takesDays())
                  .as(e.crop().name())
                  .isBetween((double) from, (double) to);
            });
  }
}
