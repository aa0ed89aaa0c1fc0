package propcap.study.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import propcap.farm.Crop;
import propcap.farm.Labour;
import propcap.farm.Loss;
import propcap.farm.Materials;
import propcap.farm.RoomWait;
import propcap.farm.Scenario;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;
import propcap.study.RunSettings;
import propcap.study.statistics.Samples;
import propcap.study.statistics.Stat;
import propcap.study.statistics.Strata;

/**
 * The example of 614 trays against a second simulation of the same model: a naive one in another
 * language, cell by cell and plant by plant, written from the model's text by someone who had not
 * seen this code, 4,000 springs. Its figures are in second-simulation.csv, with the measured effect
 * of two sentences that it read otherwise (docs/model.md, "what was chosen") added: leggy seedlings
 * of the whole stand, and no frost on the morning of planting out. What holding has killed in a
 * tray before it is thrown out it counts as thrown out (185 plants a spring against 136): the two
 * causes are held to it together, its 7,379.67 and 184.74 with errors of 22.20 and 7.81.
 */
class SecondSimulationTest {
  private static final Path EXAMPLE = Path.of("src/test/resources/propcap/example");

  /**
   * In standard errors of the difference. 30 figures exceed it by chance in one run of 5,000
   * (normal tail of 4.5: 7e-6 each).
   */
  private static final double TOLERANCE = 4.5;

  @Test
  void bothSimulationsGiveTheSameSpring() throws Exception {
    assertThat(misfits(forecast(example()))).isEmpty();
  }

  @Test
  void oneDayMoreOfHardeningIsNoticed() throws Exception {
    Scenario example = example();
    Map<String, Crop> crops =
        example.crops().values().stream()
            .map(SecondSimulationTest::hardenedADayLonger)
            .collect(Collectors.toMap(Crop::name, c -> c));
    Scenario longer =
        new Scenario(
            example.name(),
            example.season(),
            example.frostAtC(),
            example.rounds(),
            example.places(),
            crops,
            example.sowings(),
            example.weather(),
            null,
            Labour.NOT_LIMITED);
    assertThat(misfits(forecast(longer))).hasSizeGreaterThan(5);
  }

  private static Crop hardenedADayLonger(Crop c) {
    Crop.Hardening h = c.hardening();
    return new Crop(
        c.name(),
        c.cells(),
        c.seedsPerCell(),
        c.germination(),
        c.emergence(),
        c.germinateIn(),
        c.leaveAt(),
        c.pullAfterDays(),
        c.standWindowDays(),
        c.failBelow(),
        c.growingOn(),
        c.pottingOn(),
        new Crop.Hardening(
            h.takesDays() + 1,
            h.fitAboveC(),
            h.killBelowC(),
            h.frostLoss(),
            h.loss(),
            h.frostRisk(),
            h.offsetDays()),
        Materials.NOT_KNOWN);
  }

  private static Scenario example() throws FaultsException {
    return ScenarioReader.read(EXAMPLE.resolve("scenario.yaml"));
  }

  private static Forecast forecast(Scenario scenario) throws InterruptedException {
    RunSettings settings = new RunSettings(11, 504, null, 2);
    return Forecasting.forecast(scenario, settings, share -> {});
  }

  private static List<String> misfits(Forecast forecast) throws IOException {
    try (CsvReader<NamedCsvRecord> second =
        CsvReader.builder().ofNamedCsvRecord(EXAMPLE.resolve("second-simulation.csv"))) {
      return second.stream()
          .filter(row -> misfit(row, ours(forecast, row)) > TOLERANCE)
          .map(row -> row.getFields() + " is here " + ours(forecast, row))
          .toList();
    }
  }

  private static double misfit(NamedCsvRecord row, Stat ours) {
    double mean = Double.parseDouble(row.getField("mean"));
    double se = Double.parseDouble(row.getField("se"));
    return Math.abs(ours.mean() - mean) / Math.hypot(se, ours.se());
  }

  private static Stat ours(Forecast forecast, NamedCsvRecord row) {
    String name = row.getField("name");
    return switch (row.getField("what")) {
      case "total" -> name.equals("late") ? forecast.late() : forecast.onTime();
      case "loss" -> named(forecast.losses(), name, Loss::word);
      case "held-or-dumped" -> heldOrDumped(forecast);
      case "waiting" -> named(forecast.waiting(), name, RoomWait::word);
      default ->
          forecast.sowings().stream()
              .filter(s -> s.sowing().id().equals(name))
              .findFirst()
              .orElseThrow()
              .onTime();
    };
  }

  private static Stat heldOrDumped(Forecast forecast) {
    return Samples.of(
            forecast.rows(),
            Strata.of(forecast.scenario(), forecast.settings().seed(), forecast.seasons()),
            row ->
                row.losses().getOrDefault(Loss.OVERHELD, 0L)
                    + row.losses().getOrDefault(Loss.DUMPED, 0L))
        .stat();
  }

  private static <K> Stat named(Map<K, Stat> stats, String name, Function<K, String> word) {
    return stats.entrySet().stream()
        .filter(e -> word.apply(e.getKey()).equals(name))
        .findFirst()
        .orElseThrow()
        .getValue();
  }
}
