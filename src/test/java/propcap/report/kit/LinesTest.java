package propcap.report.kit;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Where a sentence is broken into lines, and what of it stays together. */
class LinesTest {
  @Test
  void aNumberStaysWithItsErrorAndItsPercent() {
    String start = "x".repeat(Lines.COLUMNS - 3);
    assertThat(new Lines().add(start + " 5 % of it").endingWith("end"))
        .containsExactly(start, "  5 % of it", "end");
    assertThat(new Lines().add(start + " 5 ± 2 plants").endingWith("end"))
        .containsExactly(start, "  5 ± 2 plants", "end");
    assertThat(new Lines().add(start + " 5 plants").endingWith("end"))
        .containsExactly(start + " 5", "  plants", "end");
    assertThat(Templates.withoutLooseErrors("<p>5 ± 2 plants, 90 % of a % b</p>"))
        .isEqualTo("<p>5\u00a0±\u00a02 plants, 90\u00a0% of a % b</p>");
  }
}
