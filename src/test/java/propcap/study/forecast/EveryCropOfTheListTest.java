package propcap.study.forecast;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.evidence.stages.StageDays;
import propcap.farm.Crop;
import propcap.farm.Scenario;
import propcap.files.edit.Starter;
import propcap.files.scenario.CropBook;
import propcap.files.scenario.ScenarioReader;
import propcap.files.text.FaultsException;
import propcap.study.RunSettings;

/** The crop list in the starter's places and weather. */
class EveryCropOfTheListTest {
  /** Planted while nights are cold, or after them; sown as many weeks before as it takes. */
  private static final LocalDate HARDY_OUT = LocalDate.of(2027, 4, 20);

  private static final LocalDate FIRST_SOWN = LocalDate.of(2027, 2, 1);
  private static final LocalDate TENDER_OUT = LocalDate.of(2027, 5, 25);

  private static String sowing(Crop crop) {
    LocalDate out = crop.hardening().killBelowC() < 0 ? HARDY_OUT : TENDER_OUT;
    LocalDate sow = out.minusDays(Math.round(7 * StageDays.asGiven(crop).weeksToBed()));
    LocalDate first = sow.isBefore(FIRST_SOWN) ? FIRST_SOWN : sow;
    return crop.name() + "-1," + crop.name() + ",," + first + ",3,10,2027-03-01,2027-07-04,,";
  }

  @Test
  void everyCropSownOnceIsPlantedOutWhereThereIsRoom(@TempDir Path folder)
      throws IOException, FaultsException, InterruptedException {
    Path file = Starter.write(folder).get(0);
    try (InputStream list = CropBook.class.getResourceAsStream("/propcap/files/crop-list.yaml")) {
      Files.copy(list, folder.resolve("crops.yaml"), StandardCopyOption.REPLACE_EXISTING);
    }
    StringBuilder plan =
        new StringBuilder(
            "id,crop,lot,sow,trays,plants-needed,bed-from,bed-by,bed-until,resow-until\n");
    CropBook.ofPropcap().entries().forEach(e -> plan.append(sowing(e.crop())).append('\n'));
    Files.writeString(folder.resolve("sowings.csv"), plan);

    Scenario scenario = ScenarioReader.read(file).withEndlessRoom();
    Forecast forecast =
        Forecasting.forecast(scenario, new RunSettings(1, 20, null, 1), share -> {});

    assertThat(forecast.sowings())
        .hasSize(CropBook.ofPropcap().entries().size())
        .allSatisfy(
            s ->
                assertThat(s.onTime().mean() / s.cellsSown().mean())
                    .as("share out, %s", s.sowing().id())
                    .isGreaterThan(0.3));
  }
}
