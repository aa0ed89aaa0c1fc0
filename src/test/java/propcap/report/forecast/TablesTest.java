package propcap.report.forecast;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import propcap.farm.Loss;
import propcap.report.Forecasts;
import propcap.report.kit.ForecastLookup;
import propcap.study.forecast.Forecast;

class TablesTest {
  private final Forecast spring = Forecasts.spring();

  private static List<NamedCsvRecord> read(String csv) {
    return CsvReader.builder().ofNamedCsvRecord(csv).stream().toList();
  }

  @Test
  void aRowStandsForEachPlaceAndDay() {
    List<NamedCsvRecord> rows = read(Tables.places(spring));
    assertThat(rows).hasSize(6 * 175);
    NamedCsvRecord last = rows.get(175 - 1);
    assertThat(last.getField("place")).isEqualTo("Chamber");
    assertThat(last.getField("date")).isEqualTo("2027-07-04");
    NamedCsvRecord full = rows.get(175 + 75);
    assertThat(full.getField("place")).isEqualTo("Mats");
    assertThat(full.getField("p50")).isEqualTo("36");
    assertThat(full.getField("chance-full")).isEqualTo("1");
  }

  @Test
  void aRowStandsForEachSowing() {
    List<NamedCsvRecord> rows = read(Tables.SOWINGS.csv(spring.sowings()));
    assertThat(rows).hasSize(42);
    for (int r = 0; r < rows.size(); r++) {
      Forecast.SowingForecast sowing = spring.sowings().get(r);
      assertThat(rows.get(r).getField("id")).isEqualTo(sowing.sowing().id());
      assertThat(Double.parseDouble(rows.get(r).getField("on-time")))
          .isCloseTo(sowing.onTime().mean(), within(1e-4));
      assertThat(LocalDate.parse(rows.get(r).getField("median-out"))).isEqualTo(sowing.medianOut());
    }
  }

  @Test
  void aRowStandsForEachCropAndCause() {
    List<NamedCsvRecord> rows = read(Tables.losses(spring));
    assertThat(rows).hasSize(14 * Loss.values().length);
    double sown = ForecastLookup.cellsSown(spring, "onion");
    assertThat(rows.get(0).getField("cause")).isEqualTo("no-seedling");
    assertThat(Double.parseDouble(rows.get(0).getField("share-of-cells-sown")))
        .isCloseTo(Double.parseDouble(rows.get(0).getField("mean")) / sown, within(1e-4));
  }

  @Test
  void aRowStandsForEachSeason() {
    List<NamedCsvRecord> rows = read(Tables.seasons(spring));
    assertThat(rows).hasSize(50);
    assertThat(rows.get(49).getField("season")).isEqualTo("49");
    assertThat(rows.get(49).getField("wait-sow")).isEqualTo("449");
  }

  @Test
  void aDateThatThereIsNotIsEmpty() {
    NamedCsvRecord never = read(Tables.SOWINGS.csv(Forecasts.bare().sowings())).get(0);
    assertThat(never.getField("first-out")).isEmpty();
    assertThat(never.getField("ready-by")).isEmpty();
  }

  @Test
  void namesWithCommasAndQuotesComeBackWhole() {
    String crop = "kale, \"red\" & grün";
    List<NamedCsvRecord> rows =
        read(Tables.SOWINGS.csv(Forecasts.spring("x", List.of(crop)).sowings()));
    assertThat(rows.get(0).getField("crop")).isEqualTo(crop);
  }
}
