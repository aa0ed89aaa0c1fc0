package propcap.cli;

import java.nio.file.Path;
import java.util.function.Consumer;
import picocli.CommandLine.Model.CommandSpec;
import propcap.farm.PlanNeeds;
import propcap.farm.Scenario;
import propcap.files.Fault;
import propcap.files.FaultsException;
import propcap.files.ScenarioReader;
import propcap.files.UnsavedTexts;

/** Scenarios as commands read them. */
final class Scenarios {
  private Scenarios() {}

  /** Reads a scenario; what in it is unlikely is printed, and stops nothing. */
  static Scenario read(CommandSpec spec, Path file) throws FaultsException {
    ScenarioReader.Reading reading = ScenarioReader.read(file, UnsavedTexts.none());
    reading.warnings().forEach(doubted(spec));
    return reading.sound();
  }

  /** Reads a scenario of whose sowing plan dates and trays may be left to be found. */
  static PlanNeeds readNeeds(CommandSpec spec, Path file) throws FaultsException {
    ScenarioReader.Reading reading = ScenarioReader.read(file, UnsavedTexts.none());
    reading.warnings().forEach(doubted(spec));
    return reading.soundNeeds();
  }

  /** Prints what is unlikely in a grower's file. */
  static Consumer<Fault> doubted(CommandSpec spec) {
    return fault -> spec.commandLine().getErr().println("Worth another look: " + fault);
  }
}
