package propcap.cli.kit;

import java.nio.file.Path;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import propcap.farm.PlanNeeds;
import propcap.farm.Scenario;
import propcap.farm.SoFar;
import propcap.files.scenario.ScenarioReader;
import propcap.files.scenario.SoFarAsked;
import propcap.files.text.Fault;
import propcap.files.text.FaultsException;
import propcap.files.text.UnsavedTexts;
import propcap.report.PageWords;
import propcap.study.now.CheckingLog;

/**
 * The scenarios of one command, as it reads them; those of one log go on from the first's house.
 */
public final class Scenarios {
  private final CommandSpec spec;
  private SoFarAsked asked;
  private @Nullable SoFar doubted;

  Scenarios(CommandSpec spec, SoFarAsked asked) {
    this.spec = spec;
    this.asked = asked;
  }

  /** Reads a scenario; what in it is unlikely is printed, and stops nothing. */
  public Scenario read(Path file) throws FaultsException {
    ScenarioReader.Reading reading = reading(file);
    asked = asked.beside(reading);
    return reading.sound();
  }

  /** Reads a scenario of whose sowing plan dates and trays may be left to be found. */
  PlanNeeds readNeeds(Path file) throws FaultsException {
    return reading(file).soundNeeds();
  }

  /** Reads a scenario, with its faults and where its log is. */
  public ScenarioReader.Reading reading(Path file) {
    ScenarioReader.Reading reading = ScenarioReader.read(file, UnsavedTexts.none(), asked);
    reading.warnings().forEach(doubted(spec));
    reading.scenario().ifPresent(this::doubtLog);
    return reading;
  }

  /** Scenarios that go on from one log are asked of it once. */
  private void doubtLog(Scenario scenario) {
    SoFar soFar = scenario.soFar();
    if (soFar != null && !soFar.equals(doubted)) {
      doubted = soFar;
      PageWords.doubts(CheckingLog.unlikely(scenario)).forEach(doubt -> doubt(spec, doubt));
    }
  }

  private static void doubt(CommandSpec spec, Object doubt) {
    spec.commandLine().getErr().println("Worth another look: " + doubt);
  }

  /** Prints what is unlikely in a grower's file. */
  public static Consumer<Fault> doubted(CommandSpec spec) {
    return fault -> doubt(spec, fault);
  }
}
