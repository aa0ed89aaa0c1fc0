package propcap.files.edit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** One row is changed; every other line stays. */
class CsvTextTest {
  private static final String PLAN = "id,crop,note\na-1, tomato ,\"two\nlines\"\n\nb-1,pepper,\n";

  @Test
  void aFieldIsReplacedAndNoOtherRow() {
    assertThat(CsvText.set(PLAN, Map.of(5, Map.of("crop", "leek, early"))))
        .isEqualTo(PLAN.replace("b-1,pepper,", "b-1,\"leek, early\","));
    assertThat(CsvText.set(PLAN, Map.of(2, Map.of("note", ""))))
        .isEqualTo("id,crop,note\na-1, tomato ,\n\nb-1,pepper,\n");
  }

  @Test
  void aRowIsAddedAtTheEnd() {
    assertThat(CsvText.add(PLAN, Map.of("id", "c-1", "note", "a \"b\"")))
        .isEqualTo(PLAN + "c-1,,\"a \"\"b\"\"\"\n");
    assertThat(CsvText.add("id,crop\r\na,b", Map.of("id", "c")))
        .isEqualTo("id,crop\r\na,b\r\nc,\r\n");
  }

  @Test
  void aRowIsTakenOut() {
    assertThat(CsvText.remove(PLAN, 2)).isEqualTo("id,crop,note\n\nb-1,pepper,\n");
    assertThat(CsvText.remove("id\na\nb", 3)).isEqualTo("id\na\n");
  }

  @Test
  void linesMayEndInALoneCarriageReturn() {
    String plan = PLAN.replace('\n', '\r');

    assertThat(CsvText.set(plan, Map.of(2, Map.of("note", ""))))
        .isEqualTo(CsvText.set(PLAN, Map.of(2, Map.of("note", ""))).replace('\n', '\r'));
    assertThat(CsvText.add(plan, Map.of("id", "c-1")))
        .isEqualTo(CsvText.add(PLAN, Map.of("id", "c-1")).replace('\n', '\r'));
    assertThat(CsvText.remove(plan, 2)).isEqualTo(CsvText.remove(PLAN, 2).replace('\n', '\r'));
  }

  @Test
  void aByteOrderMarkStays() {
    assertThat(CsvText.set("\uFEFFid,crop\na,b\n", Map.of(2, Map.of("crop", "c"))))
        .isEqualTo("\uFEFFid,crop\na,c\n");
  }

  @Test
  void theHeaderAndLinesWithoutARowAreRefused() {
    assertThatThrownBy(() -> CsvText.set(PLAN, Map.of(1, Map.of("id", "x"))))
        .hasMessageContaining("no row starts on line 1");
    assertThatThrownBy(() -> CsvText.remove(PLAN, 3)).hasMessageContaining("line 3");
  }
}
