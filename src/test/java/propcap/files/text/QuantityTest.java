package propcap.files.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {

  @ParameterizedTest
  @CsvSource({
    "TEMPERATURE, 21 C, 21",
    "TEMPERATURE, 21C, 21",
    "TEMPERATURE, 21 °C, 21",
    "TEMPERATURE, 70 F, 21.111111",
    "TEMPERATURE, 32°F, 0",
    "TEMPERATURE, -40 F, -40",
    "TEMPERATURE, \u22125 C, -5",
    "TEMPERATURE, 21\u00A0C, 21",
    "DAYS, 8 days, 8",
    "DAYS, 1 day, 1",
    "DAYS, 6.5days, 6.5",
    "YEARS, 12 years, 12",
    "YEARS, 1 year, 1",
    "SHIFT, -7 days, -7",
    "SHIFT, +1 day, 1",
    "PERCENT, 85 %, 0.85",
    "PERCENT, 85%, 0.85",
    "PERCENT, .5 %, 0.005",
    "PERCENT, 100 %, 1",
    "PERCENT_PER_DAY, 3 %/day, 0.03",
    "PERCENT_PER_DAY, 3%/day, 0.03",
    "PERCENT_PER_DAY, 3 % / day, 0.03",
    "GRAMS_PER_1000, 2.9 g/1000, 2.9",
    "LITRES_PER_TRAY, 3.2 l/tray, 3.2",
    "LITRES_PER_POT, 0.35l/pot, 0.35",
    "AIR, -5, -5",
    "CORRELATION, 0.02, 0.02",
  })
  void quantitiesAreReadAsPeopleWriteThem(Quantity quantity, String text, double value) {
    assertThat(quantity.read(text).value()).isCloseTo(value, within(1e-6));
    assertThat(quantity.read(text).right()).isNull();
  }

  @ParameterizedTest
  @CsvSource({
    "TEMPERATURE, 21",
    "TEMPERATURE, 21 K",
    "TEMPERATURE, 2 1 C",
    "TEMPERATURE, C",
    "TEMPERATURE, -300 C",
    "TEMPERATURE, 0x15 C",
    "TEMPERATURE, ٣ C",
    "TEMPERATURE, 1e999 F",
    "DAYS, -1 days",
    "DAYS, '6,5 days'",
    "DAYS, 5 to 6 days",
    "DAYS, .inf days",
    "YEARS, 12",
    "YEARS, 12 days",
    "YEARS, -1 years",
    "SHIFT, 0.5 days",
    "PERCENT, 0.85",
    "PERCENT, 100.1 %",
    "PERCENT, 3 %/day",
    "PERCENT_PER_DAY, 3 %",
    "AIR, 5 C",
    "CORRELATION, 1",
    "CORRELATION, 2 %",
  })
  void nothingElseIsGuessedAt(Quantity quantity, String text) {
    assertThat(quantity.read(text).value()).isNaN();
    assertThat(quantity.read(text).right()).isNotBlank();
  }
}
