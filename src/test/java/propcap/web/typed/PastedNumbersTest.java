package propcap.web.typed;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Numbers as spreadsheets show them; the forms are common practice. */
class PastedNumbersTest {
  private static List<String> read(String column, String cells) {
    List<String> all = Stream.of(cells.split(";")).map(String::strip).toList();
    PastedNumbers numbers = PastedNumbers.of(column, all);
    return all.stream().map(numbers::read).toList();
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          1.250,5; 2.000  | 1250.5;2000
          1,250.5; 2,000  | 1250.5;2000
          1,250           | 1250
          1.250           | 1250
          1.250.000       | 1250000
          1,250,000; 2,5  | 1250000;2,5
          12,5; 1,250     | 12.5;1.25
          12.0; 3.00      | 12;3
          0,250           | 0.25
          1 250; 12 000   | 1250;12000
          1'250; 1’250,5  | 1250;1250.5
          1250            | 1250
          007             | 7
          0               | 0
          """)
  void theColumnTellsHowDecimalsAreWritten(String cells, String numbers) {
    assertThat(read("plants-needed", cells)).containsExactly(numbers.split(";"));
  }

  @ParameterizedTest
  @CsvSource({
    "trays, 12 trays, 12",
    "trays, 1 Tray, 1",
    "trays, 12flats, 12",
    "plants-needed, '1,250 plants', 1250",
    "goal, '92,5 %', 92.5 %",
    "goal, 90%, 90 %",
    "goal, 92.125 %, 92.125 %",
    "goal, 0.9, 0.9",
  })
  void aUnitIsReadWhereItIsTheColumns(String column, String cell, String number) {
    assertThat(read(column, cell)).containsExactly(number);
  }

  @ParameterizedTest
  @CsvSource({
    "trays, 12 %",
    "trays, 12 boxes",
    "trays, 3 4",
    "trays, -5",
    "trays, (5)",
    "trays, =SUM(A1)",
    "trays, 1.2.3",
    "trays, '1,2,3'",
    "trays, '1.25,300,4'",
    "trays, about 12",
    "trays, 1e5",
    "trays, ''",
    "trays, '12,'",
  })
  void whatIsNoNumberOfTheColumnStaysAsItIs(String column, String cell) {
    assertThat(read(column, cell)).containsExactly(cell);
  }
}
