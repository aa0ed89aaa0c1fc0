package propcap.web;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import propcap.farm.Scenario;
import propcap.files.Drafts;
import propcap.files.Fault;
import propcap.files.FaultsException;
import propcap.files.ScenarioReader;
import propcap.files.Written;

/**
 * A scenario with its drafts, as far as it can be read.
 *
 * @param scenario empty where there is a fault
 * @param warnings what is unlikely and stops nothing; none while there is a fault
 */
record Reading(
    Written written, Optional<Scenario> scenario, List<Fault> faults, List<Fault> warnings) {
  static Reading of(Path file, Drafts drafts) {
    Written written = Written.of(file, drafts);
    try {
      ScenarioReader.Read read = ScenarioReader.readDoubting(file, drafts);
      return new Reading(written, Optional.of(read.scenario()), List.of(), read.warnings());
    } catch (FaultsException e) {
      return new Reading(written, Optional.empty(), e.faults(), List.of());
    }
  }
}
