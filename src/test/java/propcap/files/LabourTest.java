package propcap.files;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.farm.Labour;
import propcap.farm.Labour.Extra;
import propcap.farm.Labour.Minutes;
import propcap.files.text.FaultsException;

/** People's hours are read as they are written. */
class LabourTest {
  private GrowersFolder folder;

  @BeforeEach
  void aWholeSet(@TempDir Path path) {
    folder = new GrowersFolder(path);
  }

  private void write(String labour) {
    folder.change("scenario.yaml", "frost-at: 0 C", "labour: " + labour + "\nfrost-at: 0 C");
  }

  @Test
  void withoutTheBlockHoursAreOnlyCounted() throws FaultsException {
    assertThat(folder.read().labour()).isEqualTo(Labour.NOT_LIMITED);
  }

  @Test
  void everyKeyIsRead() throws FaultsException {
    write(
        "{hours: 12/day, minutes: {sow: 4/tray, move: 1/tray, thin: 5 min/tray, pot-on: 0.35/plant,"
            + " plant-out: 0.3/plant}, extra: [{from: 2027-04-05, until: 2027-04-17, hours: 8"
            + " h/day}]}");

    assertThat(folder.read().labour())
        .isEqualTo(
            new Labour(
                12,
                new Minutes(4, 1, 5, 0.35, 0.3),
                List.of(new Extra(LocalDate.of(2027, 4, 5), LocalDate.of(2027, 4, 17), 8))));
  }

  @Test
  void minutesThatAreNotGivenTakeTheirDefaults() throws FaultsException {
    write("{minutes: {thin: 2/tray}}");

    Labour labour = folder.read().labour();

    assertThat(labour.isLimited()).isFalse();
    assertThat(labour.minutes()).isEqualTo(new Minutes(3, 0.67, 2, 0.21, 0.25));
  }

  @Test
  void aScenarioThatChangesAnotherChangesLabourKeyByKey() throws FaultsException {
    write("{hours: 12/day, minutes: {sow: 4/tray}}");
    folder.write(
        "more.yaml", "extends: scenario.yaml\nlabour: {hours: 20/day, minutes: {thin: 1/tray}}\n");

    assertThat(folder.read("more.yaml").labour())
        .isEqualTo(new Labour(20, new Minutes(4, 0.67, 1, 0.21, 0.25), List.of()));
  }
}
