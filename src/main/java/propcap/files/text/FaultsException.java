package propcap.files.text;

import java.util.List;
import java.util.stream.Collectors;

/** All that is wrong in a grower's files; nothing was made of them. */
public final class FaultsException extends Exception {
  private final transient List<Fault> faults;

  public FaultsException(List<Fault> faults) {
    super(faults.stream().map(Fault::toString).collect(Collectors.joining("\n")));
    this.faults = List.copyOf(faults);
  }

  /** Sorted by file, line and column, none twice; at least one. */
  public List<Fault> faults() {
    return faults;
  }
}
