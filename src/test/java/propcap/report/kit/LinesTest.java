package propcap.report.kit;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import org.junit.jupiter.api.Test;

/** Where a sentence is broken into lines, and what of it stays together. */
class LinesTest {
  @Test
  void aNumberStaysWithItsErrorAndItsPercent() {
    String start = "x".repeat(Lines.COLUMNS - 3);
    assertThat(new Lines().add(start + " 5 % of it").endingWith("end").lines())
        .containsExactly(start, "  5 % of it", "end");
    assertThat(new Lines().add(start + " 5 ± 2 plants").endingWith("end").lines())
        .containsExactly(start, "  5 ± 2 plants", "end");
    assertThat(new Lines().add(start + " 5 plants").endingWith("end").lines())
        .containsExactly(start + " 5", "  plants", "end");
    assertThat(Templates.withoutLooseErrors("<p id=\"zinnia-2\">zinnia-2, 2027-03-01, A4-</p>"))
        .isEqualTo("<p id=\"zinnia-2\"><span class=\"kept\">zinnia-2,</span> 2027-03-01, A4-</p>");
    assertThat(Templates.withoutLooseErrors("<svg><text>zinnia-2</text></svg>"))
        .isEqualTo("<svg><text>zinnia-2</text></svg>");
    assertThat(Templates.withoutLooseErrors("<p>5 ± 2 plants, 90 % of a % b</p>"))
        .isEqualTo("<p>5\u00a0±\u00a02 plants, 90\u00a0% of a % b</p>");
  }

  /** What is left out is whole sentences: half of one tells nothing, or something else. */
  @Test
  void noSentenceIsCutInTheMiddle() {
    String two = "x".repeat(Lines.COLUMNS - 3) + " second";
    Lines lines = new Lines();
    for (int i = 0; i < 3; i++) {
      lines.add("one").add(two);
    }
    assertThat(lines.endingWith("end").lines())
        .hasSize(Lines.MOST)
        .doesNotContain("… more is in the report");
    lines.add(two);
    assertThat(lines.endingWith("end").lines())
        .hasSize(9)
        .endsWith("one", "… more is in the report", "end");
    String long1 = String.join(" ", Collections.nCopies(12, "x".repeat(Lines.COLUMNS - 2)));
    assertThat(new Lines().add(long1).endingWith("end").lines()).hasSize(Lines.MOST);
  }
}
