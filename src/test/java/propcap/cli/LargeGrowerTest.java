package propcap.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import propcap.files.Nursery;

/** A nursery's forecast is as whole as a small farm's; the bench runs one of 1,000,000 trays. */
class LargeGrowerTest {
  private static final int SOWINGS = 160;
  private static final int PLACES = 20;

  @TempDir Path folder;

  @Test
  void everySowingAndEveryPlaceOfANurseryIsInItsAnswer() throws Exception {
    Path scenario = Nursery.write(folder, SOWINGS, 320, PLACES);
    Path out = folder.resolve("out");
    Run run =
        Run.of("run", scenario.toString(), "--seasons", "2", "--exactly", "--out", out.toString());
    assertThat(run.exitCode()).as(run.err()).isZero();
    List<String> sowings = Files.readAllLines(out.resolve("sowings.csv"));
    assertThat(sowings).hasSize(1 + SOWINGS);
    String report = Files.readString(out.resolve("report.html"));
    for (String sowing : sowings.subList(1, sowings.size())) {
      assertThat(report).contains(sowing.substring(0, sowing.indexOf(',')));
    }
    String places = Files.readString(out.resolve("places.csv"));
    for (String place : List.of("Chamber no 2", "Mats no 4", "House 1 no 10", "Yard no 4")) {
      assertThat(places).contains(place);
      assertThat(report).contains(place);
    }
    assertThat(Files.readAllLines(out.resolve("seasons.csv"))).hasSize(3);
  }
}
