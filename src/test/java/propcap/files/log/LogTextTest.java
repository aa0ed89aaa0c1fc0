package propcap.files.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import propcap.farm.RandomScenarios;
import propcap.farm.Scenario;
import propcap.farm.TrayPast;
import propcap.files.text.CsvFile;
import propcap.files.text.Faults;
import propcap.files.text.SourceText;
import propcap.past.LogWalk;
import propcap.past.WrittenTray;
import propcap.season.PretendedLog.Counting;
import propcap.study.BadQuestionException;
import propcap.study.pretend.Pretending;

/** A pretended log, written and read again. */
class LogTextTest {
  private static final int FARMS = 70;

  private record Read(List<TrayPast> trays, String text) {}

  private static List<WrittenTray> pretended(
      Scenario scenario, int season, LocalDate today, Counting counting) {
    try {
      return Pretending.pretend(scenario, 1, season, null, today, counting).trays();
    } catch (BadQuestionException e) {
      throw new IllegalArgumentException(e);
    }
  }

  private static Read readBack(Scenario scenario, LocalDate today, List<WrittenTray> log) {
    String text = LogText.of(log, List.of("to practise on"));
    Faults faults = new Faults();
    CsvFile table = LogRow.table(new SourceText(Path.of("log.csv"), text), faults);
    List<WrittenTray> read =
        new SeasonLog(table, Optional.of(scenario), Set.of(), Optional.of(today), true, faults)
            .read();
    assertThat(faults.sorted()).as(text).isEmpty();
    assertThat(faults.warnings()).as(text).isEmpty();
    return new Read(walked(scenario, today, read), text);
  }

  /** In the order of the plan, whatever that of the rows. */
  private static List<TrayPast> walked(Scenario scenario, LocalDate today, List<WrittenTray> log) {
    return LogWalk.walk(scenario, today, log).trays().stream()
        .sorted(
            Comparator.comparing(TrayPast::sowing)
                .thenComparingInt(t -> Integer.parseInt(t.name())))
        .toList();
  }

  /** All but this: of trays sown again, a log does not tell in whose place each was. */
  private static List<TrayPast> told(List<TrayPast> trays) {
    return trays.stream()
        .map(
            t ->
                t.attempt() == 0
                    ? t
                    : new TrayPast(
                        t.sowing(),
                        t.name(),
                        0,
                        1,
                        t.moves(),
                        t.notDueInHeat(),
                        t.readyAfter(),
                        t.readyBy()))
        .toList();
  }

  @ParameterizedTest
  @EnumSource
  void whatIsWrittenReadsBackAsTheSameSeason(Counting counting) {
    int trays = 0;
    int again = 0;
    for (int seed = 0; seed < FARMS; seed++) {
      Scenario scenario = RandomScenarios.from(seed);
      int days = scenario.season().days();
      LocalDate today = scenario.season().date(1 + (7 * seed) % days);
      List<WrittenTray> log = pretended(scenario, seed % 3, today, counting);
      assertThat(told(readBack(scenario, today, log).trays()))
          .as("farm " + seed)
          .isEqualTo(told(walked(scenario, today, log)));
      trays += log.size();
      again += (int) log.stream().filter(t -> t.attempt() > 0).count();
    }
    assertThat(trays).isGreaterThan(500);
    assertThat(again).as("trays sown again").isGreaterThan(20);
  }

  @Test
  void aTrayUnderAnotherNameIsAnotherTray() {
    Scenario scenario = RandomScenarios.from(3);
    LocalDate today = scenario.season().end();
    List<WrittenTray> log = pretended(scenario, 0, today, Counting.STANDS);
    List<WrittenTray> less = log.subList(1, log.size());
    assertThat(readBack(scenario, today, less).trays()).isNotEqualTo(walked(scenario, today, log));
  }

  @Test
  void traysToWhichTheSameWasDoneShareARow() {
    Scenario scenario =
        IntStream.range(0, FARMS)
            .mapToObj(RandomScenarios::from)
            .max(Comparator.comparingInt(Scenario::trays))
            .orElseThrow();
    List<WrittenTray> log = pretended(scenario, 0, scenario.season().end(), Counting.NOTHING);
    String text = LogText.of(log, List.of());
    assertThat(text).startsWith("sowing,tray,event,date,plants,place,trays\n").contains(" to ");
    assertThat(text.lines().count())
        .isLessThan(log.stream().mapToInt(t -> t.entries().size()).sum());
  }
}
