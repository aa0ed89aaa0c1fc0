package propcap.disk;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What a spreadsheet takes for a formula: OWASP, "CSV Injection", lists {@code = + - @} at the
 * beginning of a cell, and an apostrophe before them as a way to make them text.
 */
class TableCellTest {
  @ParameterizedTest
  @ValueSource(
      strings = {"=1+1", "+1", "-1+1", "@sum(a1)", "-", "=", "-2 weeks", "'=1", "''@x", "-1.5e3"})
  void whatASpreadsheetWouldWorkOutStandsBehindAnApostrophe(String name) {
    String cell = TableCell.harmless(name);
    assertThat(cell).isEqualTo("'" + name);
    assertThat(TableCell.meant(cell)).isEqualTo(name);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "zinnia-1", "0", "-3", "-0.0125", "1.5", "2027-03-01", "'tis", "o'clock", "'"})
  void numbersAndOtherNamesStayAsTheyAre(String text) {
    assertThat(TableCell.harmless(text)).isEqualTo(text);
    assertThat(TableCell.meant(text)).isEqualTo(text);
  }

  /** All texts of up to four of the signs that matter come back as they were. */
  @Test
  void whatIsWrittenIsReadBack() {
    String signs = "'=-1.a";
    for (int length = 0, all = 1; length <= 4; length++, all *= signs.length()) {
      for (int number = 0; number < all; number++) {
        StringBuilder text = new StringBuilder();
        for (int i = 0, rest = number; i < length; i++, rest /= signs.length()) {
          text.append(signs.charAt(rest % signs.length()));
        }
        String written = TableCell.harmless(text.toString());
        assertThat(TableCell.meant(written)).isEqualTo(text.toString());
        assertThat(written.matches("[=+@-].*") && !written.matches("-?[0-9]+(\\.[0-9]+)?"))
            .as(written)
            .isFalse();
      }
    }
  }
}
